package surfeit.segregation.sums;

import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.segregation.answer.GroupBy;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/** What keeps spots together while they are read: group name, beam energy and session, as far as stated. */
public record GroupKey(String name, Optional<Double> beamEnergyKev, Optional<String> session) {
    public static final String UNLABELLED = "unlabelled";
    public static final String UNNAMED_PARTICLE = "unnamed particle";
    private static final String ALL_SPOTS = "all spots";

    public static GroupKey of(Spot spot, Sample sample, GroupBy by) {
        OptionalDouble energy = energyKev(spot, sample);
        return new GroupKey(name(spot, sample, by),
            energy.isPresent() ? Optional.of(energy.getAsDouble()) : Optional.empty(), spot.session());
    }

    private static String name(Spot spot, Sample sample, GroupBy by) {
        return by == GroupBy.FEATURE ? spot.feature().orElse(UNLABELLED)
            : by == GroupBy.PARTICLE ? particle(spot, sample) : ALL_SPOTS;
    }

    private static OptionalDouble energyKev(Spot spot, Sample sample) {
        OptionalDouble own = spot.conditions().beamEnergyKev();
        return own.isPresent() ? own : sample.geometry().beamEnergyKev();
    }

    @Override
    public int hashCode() {
        return hash(name, beamEnergyKev.isPresent() ? beamEnergyKev.get() : Double.NaN, session);
    }

    private static int hash(String name, double energyKev, Optional<String> session) {
        return 31 * (31 * name.hashCode() + Double.hashCode(energyKev)) + session.hashCode();
    }

    /**
     * Finds the key of a spot among others without making one: equal to the key that {@link GroupKey#of} would make, in
     * this direction only, which is the one in which maps ask. Not thread-safe.
     */
    public static final class Sought {
        private final Sample sample;
        private final GroupBy by;
        private String name = "";
        private double energyKev = Double.NaN;
        private Optional<String> session = Optional.empty();

        public Sought(Sample sample, GroupBy by) {
            this.sample = sample;
            this.by = by;
        }

        /** Seeks the key of the spot; false where it is the one sought before. */
        public boolean moveTo(Spot spot) {
            String before = name;
            double energyBefore = energyKev;
            Optional<String> sessionBefore = session;
            of(spot);
            return !name.equals(before) || Double.compare(energyKev, energyBefore) != 0 || !session.equals(sessionBefore);
        }

        /** This, now seeking the key of the spot. */
        public Sought of(Spot spot) {
            name = GroupKey.name(spot, sample, by);
            energyKev = energyKev(spot, sample).orElse(Double.NaN);
            session = spot.session();
            return this;
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof GroupKey key && name.equals(key.name) && session.equals(key.session)
                && (key.beamEnergyKev.isPresent() ? key.beamEnergyKev.get() == energyKev : Double.isNaN(energyKev));
        }

        @Override
        public int hashCode() {
            return hash(name, energyKev, session);
        }
    }

    /** The particle a spot counts for. */
    public static String particle(Spot spot, Sample sample) {
        return spot.particle().orElse(sample.spotsIndependent() ? spot.label() : UNNAMED_PARTICLE);
    }
}
