package surfeit.segregation;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import surfeit.composition.Basis;
import surfeit.element.Element;
import surfeit.spot.ReportedValue;
import surfeit.spot.ReportedValues;
import surfeit.spot.Spot;

/**
 * Adds up the share of every element in everything a spot reports and does not exclude. Not thread-safe.
 *
 * <p>Atomic fractions. A spot that does not list an element, or has it below its limit, counts zero for it.
 */
final class ForeignTally {
    private final Set<Element> excluded;
    private final Map<String, long[]> spotsOfParticle = new LinkedHashMap<>();
    private final Map<Element, Shares> shares = new TreeMap<>();

    ForeignTally(Set<Element> excluded) {
        this.excluded = excluded;
    }

    /** Shares of one element: sums per particle, and how many spots report a number for it. */
    static final class Shares {
        private final Map<String, double[]> sumsOfParticle = new LinkedHashMap<>();
        private double highestLimit;
        private long spots;
        private String lastParticle = "";
        private double[] lastSums = new double[0];

        /** Spots of one particle mostly come one after the other. */
        private double[] sumsOf(String particle) {
            if (lastSums.length == 0 || !lastParticle.equals(particle)) {
                lastParticle = particle;
                lastSums = sumsOfParticle.computeIfAbsent(particle, name -> new double[2]);
            }
            return lastSums;
        }

        long spots() {
            return spots;
        }

        /** Largest stated limit as a share, like the means; empty where none was stated. */
        OptionalDouble highestLimit() {
            return highestLimit > 0 ? OptionalDouble.of(highestLimit) : OptionalDouble.empty();
        }
    }

    void add(String particle, Spot spot) {
        spotsOfParticle.computeIfAbsent(particle, name -> new long[1])[0]++;
        double sum = 0;
        ReportedValues values = ReportedValues.of(spot.values());
        for (int i = 0; i < values.size(); i++) {
            sum += part(values.element(i), values.value(i), spot.basis());
        }
        if (!(sum > 0)) {
            return;
        }
        for (int i = 0; i < values.size(); i++) {
            if (values.value(i) instanceof ReportedValue.Measured measured && !excluded.contains(values.element(i))) {
                Shares own = shares.computeIfAbsent(values.element(i), element -> new Shares());
                double share = part(values.element(i), measured, spot.basis()) / sum;
                double[] sums = own.sumsOf(particle);
                sums[0] += share;
                sums[1] += share * share;
                own.spots++;
                own.highestLimit = Math.max(own.highestLimit,
                    atomic(values.element(i), measured.limit().orElse(0), spot.basis()) / sum);
            }
        }
    }

    private double part(Element element, ReportedValue value, Basis basis) {
        if (!(value instanceof ReportedValue.Measured measured) || excluded.contains(element)) {
            return 0;
        }
        return atomic(element, measured.fraction(), basis);
    }

    private static double atomic(Element element, double fraction, Basis basis) {
        return basis == Basis.MASS ? fraction / element.atomicWeight() : fraction;
    }

    void writeTo(SumsOut out) {
        out.count("particles with any element", spotsOfParticle.size());
        spotsOfParticle.forEach((particle, spots) -> {
            out.text("particle", particle);
            out.count("spots", spots[0]);
        });
        out.count("elements reported", shares.size());
        shares.forEach((element, own) -> {
            out.element(element);
            out.count("spots with the element", own.spots);
            out.real("highest limit", own.highestLimit);
            out.count("particles with the element", own.sumsOfParticle.size());
            own.sumsOfParticle.forEach((particle, sums) -> {
                out.text("particle", particle);
                out.reals("sums of shares", sums);
            });
        });
    }

    void readFrom(SumsIn in) {
        for (long left = in.count(); left > 0; left--) {
            spotsOfParticle.put(in.text(), new long[] {in.count()});
        }
        for (long left = in.count(); left > 0; left--) {
            Shares own = new Shares();
            shares.put(in.element(), own);
            own.spots = in.count();
            own.highestLimit = in.real();
            for (long particles = in.count(); particles > 0; particles--) {
                double[] sums = new double[2];
                own.sumsOfParticle.put(in.text(), sums);
                in.reals(sums);
            }
        }
    }

    void merge(ForeignTally other) {
        other.spotsOfParticle.forEach((particle, count) ->
            spotsOfParticle.computeIfAbsent(particle, name -> new long[1])[0] += count[0]);
        other.shares.forEach((element, theirs) -> {
            Shares own = shares.computeIfAbsent(element, e -> new Shares());
            theirs.sumsOfParticle.forEach((particle, sums) -> {
                double[] mine = own.sumsOfParticle.computeIfAbsent(particle, name -> new double[2]);
                mine[0] += sums[0];
                mine[1] += sums[1];
            });
            own.spots += theirs.spots;
            own.highestLimit = Math.max(own.highestLimit, theirs.highestLimit);
        });
    }

    /** Elements that at least one spot reports as a number. */
    Set<Element> elements() {
        return shares.keySet();
    }

    Shares shares(Element element) {
        return shares.get(element);
    }

    /** The group's particles with one element's shares as the only closed element. */
    GroupSums sums(Element element) {
        double[][] within = new double[1][1];
        Shares own = shares.get(element);
        List<ParticleSums> particles = spotsOfParticle.entrySet().stream().map(entry -> {
            double[] sums = own.sumsOfParticle.getOrDefault(entry.getKey(), new double[2]);
            double n = entry.getValue()[0];
            double squares = Math.max(sums[1] - sums[0] * sums[0] / n, 0);
            within[0][0] += squares;
            return new ParticleSums(entry.getKey(), (int) entry.getValue()[0], new double[] {sums[0] / n},
                new double[] {squares}, Optional.empty());
        }).toList();
        return new GroupSums(particles, within, new double[1]);
    }
}
