package surfeit.segregation;

import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/** What keeps spots together while they are read: group name, beam energy and session, as far as stated. */
record GroupKey(String name, Optional<Double> beamEnergyKev, Optional<String> session) {
    static final String UNLABELLED = "unlabelled";
    static final String UNNAMED_PARTICLE = "unnamed particle";
    private static final String ALL_SPOTS = "all spots";

    static GroupKey of(Spot spot, Sample sample, GroupBy by) {
        String name = by == GroupBy.FEATURE ? spot.feature().orElse(UNLABELLED)
            : by == GroupBy.PARTICLE ? particle(spot, sample) : ALL_SPOTS;
        OptionalDouble own = spot.conditions().beamEnergyKev();
        OptionalDouble energy = own.isPresent() ? own : sample.geometry().beamEnergyKev();
        return new GroupKey(name, energy.isPresent() ? Optional.of(energy.getAsDouble()) : Optional.empty(), spot.session());
    }

    /** The particle a spot counts for. */
    static String particle(Spot spot, Sample sample) {
        return spot.particle().orElse(sample.spotsIndependent() ? spot.label() : UNNAMED_PARTICLE);
    }
}
