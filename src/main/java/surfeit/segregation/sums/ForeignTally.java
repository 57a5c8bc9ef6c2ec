package surfeit.segregation.sums;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import surfeit.element.Element;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.segregation.uncertainty.ParticleSums;
import surfeit.spot.ReportedValue;
import surfeit.spot.ReportedValues;

/**
 * Adds up the share of every element in everything a spot reports and does not exclude. Not thread-safe.
 *
 * <p>Atomic fractions. A spot that does not list an element, or has it below its limit, counts zero for it.
 */
public final class ForeignTally {
    private final Map<String, Particle> particles = new LinkedHashMap<>();
    private final Map<Element, Shares> shares = new TreeMap<>();
    private final Function<Element, Shares> newShares = element -> new Shares(shares.size());

    /** How many spots of a particle there are, and for each element their sum of shares and of squared shares. */
    private static final class Particle {
        private long spots;
        private double[] sums = new double[0];

        void add(int place, double sum, double square) {
            if (sums.length <= 2 * place) {
                sums = Arrays.copyOf(sums, 2 * (place + 1));
            }
            sums[2 * place] += sum;
            sums[2 * place + 1] += square;
        }

        double[] sums(int place) {
            return sums.length <= 2 * place ? new double[2] : Arrays.copyOfRange(sums, 2 * place, 2 * place + 2);
        }
    }

    /** How many spots report a number for one element; its sums stand in one place in every particle. */
    public static final class Shares {
        private final int place;
        private double highestLimit;
        private long spots;

        private Shares(int place) {
            this.place = place;
        }

        public long spots() {
            return spots;
        }

        /** Largest limit, stated or {@linkplain Counting from counts}, as a share, like the means; empty where none is known. */
        public OptionalDouble highestLimit() {
            return highestLimit > 0 ? OptionalDouble.of(highestLimit) : OptionalDouble.empty();
        }
    }

    void add(String particle, SpotInHand spot) {
        Particle own = particles.computeIfAbsent(particle, name -> new Particle());
        own.spots++;
        ReportedValues values = spot.values();
        for (int i = 0; i < values.size(); i++) {
            if (spot.isCounted(i) && values.value(i) instanceof ReportedValue.Measured measured) {
                Shares of = shares.computeIfAbsent(values.element(i), newShares);
                double share = spot.share(i);
                own.add(of.place, share, share * share);
                of.spots++;
                double limit = Counting.limit(measured);
                of.highestLimit = Double.isNaN(limit) ? of.highestLimit : Math.max(of.highestLimit, spot.shareOf(i, limit));
            }
        }
    }

    void writeTo(SumsOut out) {
        out.count("elements reported", shares.size());
        shares.forEach((element, own) -> {
            out.element(element);
            out.count("spots with the element", own.spots);
            out.real("highest limit", own.highestLimit);
        });
        out.count("particles with any element", particles.size());
        particles.forEach((name, particle) -> {
            out.text("particle", name);
            out.count("spots", particle.spots);
            shares.values().forEach(own -> out.reals("sums of shares", particle.sums(own.place)));
        });
    }

    void readFrom(SumsIn in) {
        for (long left = in.count(); left > 0; left--) {
            Shares own = shares.computeIfAbsent(in.element(), newShares);
            own.spots = in.count();
            own.highestLimit = in.real();
        }
        double[] sums = new double[2];
        for (long left = in.count(); left > 0; left--) {
            Particle particle = new Particle();
            particles.put(in.text(), particle);
            particle.spots = in.count();
            for (Shares own : shares.values()) {
                in.reals(sums);
                particle.add(own.place, sums[0], sums[1]);
            }
        }
    }

    void merge(ForeignTally other) {
        other.shares.forEach((element, theirs) -> {
            Shares own = shares.computeIfAbsent(element, newShares);
            own.spots += theirs.spots;
            own.highestLimit = Math.max(own.highestLimit, theirs.highestLimit);
        });
        other.particles.forEach((name, theirs) -> {
            Particle own = particles.computeIfAbsent(name, unseen -> new Particle());
            own.spots += theirs.spots;
            other.shares.forEach((element, of) -> {
                double[] sums = theirs.sums(of.place);
                own.add(shares.get(element).place, sums[0], sums[1]);
            });
        });
    }

    /** Elements that at least one spot reports as a number. */
    public Set<Element> elements() {
        return shares.keySet();
    }

    public Shares shares(Element element) {
        return shares.get(element);
    }

    /** The group's particles with one element's shares as the only closed element. */
    public GroupSums sums(Element element) {
        double[][] within = new double[1][1];
        Shares own = shares.get(element);
        List<ParticleSums> all = particles.entrySet().stream().map(entry -> {
            double[] sums = entry.getValue().sums(own.place);
            double n = entry.getValue().spots;
            double squares = Math.max(sums[1] - sums[0] * sums[0] / n, 0);
            within[0][0] += squares;
            return new ParticleSums(entry.getKey(), (int) entry.getValue().spots, new double[] {sums[0] / n},
                new double[] {squares}, Optional.empty());
        }).toList();
        return new GroupSums(all, within, new double[1]);
    }
}
