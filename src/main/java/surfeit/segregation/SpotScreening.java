package surfeit.segregation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.spot.ReportedValue;
import surfeit.spot.Sample;
import surfeit.spot.Spot;
import surfeit.statistics.ManyTests;
import surfeit.statistics.RandomPart;

/**
 * Screens the spots of a sample one by one against nominal.
 *
 * <p>The standard uncertainty of a spot is the stated one, the one from its counts, or the root of the mean square within
 * particles of its group (N - k degrees of freedom); without any of these it gets no p. The p values over all spots and
 * elements are adjusted after Benjamini and Hochberg (J. R. Stat. Soc. B 57 (1995) 289, from memory); a binary spot is
 * one test. All flags share one calibration error, so they come and go together: a screening, not a verdict.
 */
public final class SpotScreening {
    private final Sample sample;
    private final double defaultLimit;
    private final Grouping grouping;
    private final Map<GroupData, GroupAnalysis> analyses = new HashMap<>();
    private final Map<GroupData, SpotParts> readers = new HashMap<>();
    private final SpotSource source;

    /** Reads the groups of the sample; the spots are read again when {@link #forEach} is called. */
    public SpotScreening(Sample sample, Nominal nominal, SpotSource source, double detectionLimitMassFraction) {
        this.sample = sample;
        this.defaultLimit = detectionLimitMassFraction;
        this.source = source;
        MethodSettings settings = MethodSettings.of(sample.judgement(), sample.accuracyClass(), detectionLimitMassFraction);
        NominalFractions fractions = Interpreter.closedNominal(nominal, sample);
        References references = new References(source.references(), sample, settings.floorMassFraction(), detectionLimitMassFraction);
        grouping = new Grouping(sample, fractions, GroupBy.FEATURE, detectionLimitMassFraction, references);
        for (GroupData group : grouping.read(source)) {
            if (group.elements().size() >= 2 && !group.units().runs().isEmpty()) {
                analyses.put(group, GroupAnalysis.of(group, fractions, settings));
                readers.put(group, new SpotParts(group.elements(), defaultLimit, group.zeroIsNumber()));
            }
        }
    }

    /** Hands a reading of every spot of the specimen to the consumer, in the order they were recorded. */
    public void forEach(Consumer<SpotReading> consumer) {
        double[] adjusted = ManyTests.benjaminiHochberg(family());
        int[] at = {0};
        source.forEachSpecimen(spot -> {
            GroupData group = grouping.groupOf(spot);
            GroupAnalysis analysis = analyses.get(group);
            NominalTest[] tests = tests(spot, group);
            double[] own = new double[tests.length];
            Arrays.fill(own, Double.NaN);
            if (tests.length > 0 && entersFamily(tests)) {
                for (int i = 0; i < tests.length; i++) {
                    own[i] = adjusted[tests.length == 2 ? at[0] : at[0] + i];
                }
                at[0] += tests.length == 2 ? 1 : tests.length;
            }
            List<SpotReading.ElementReading> elements = new ArrayList<>();
            for (int i = 0; i < tests.length; i++) {
                elements.add(reading(analysis, tests[i], own[i], i));
            }
            consumer.accept(new SpotReading(spot, group.name(), elements, foreign(spot, group)));
        });
    }

    private double[] family() {
        PValues values = new PValues();
        source.forEachSpecimen(spot -> {
            NominalTest[] tests = tests(spot, grouping.groupOf(spot));
            if (tests.length == 0 || !entersFamily(tests)) {
                return;
            }
            if (tests.length == 2) {
                values.add(Math.max(tests[0].p(), tests[1].p()));
            } else {
                for (NominalTest test : tests) {
                    values.add(test.p());
                }
            }
        });
        return values.toArray();
    }

    private static boolean entersFamily(NominalTest[] tests) {
        return Arrays.stream(tests).noneMatch(test -> test.parts().isEmpty() || Double.isNaN(test.p()));
    }

    /** Leaves the reader of the group filled with this spot. Empty where the spot cannot be closed. */
    private NominalTest[] tests(Spot spot, GroupData group) {
        GroupAnalysis analysis = analyses.get(group);
        SpotParts parts = readers.get(group);
        if (!analyses.containsKey(group)) {
            return new NominalTest[0];
        }
        parts.read(spot);
        if (!parts.isClosable()) {
            return new NominalTest[0];
        }
        double[] closed = new double[parts.values.length];
        parts.close(false, closed);
        double[] fractions = analysis.comparison().reference().map(reference -> reference.corrected(closed)).orElse(closed);
        SharedError shared = analysis.comparison().shared(fractions);
        NominalTest[] tests = new NominalTest[fractions.length];
        for (int i = 0; i < tests.length; i++) {
            tests[i] = NominalTest.withoutInterval(fractions[i], random(parts, closed, analysis, i), shared, i,
                analysis.comparison().limits(i), analysis.comparison().margin(), DecisionLevel.EVERY_VALUE);
        }
        return tests;
    }

    private static List<RandomPart> random(SpotParts parts, double[] closed, GroupAnalysis analysis, int element) {
        double floor = analysis.units().first().roundingStep()[element] / Math.sqrt(12);
        if (parts.hasUncertainty) {
            double sum = parts.sum();
            double total = 0;
            for (int j = 0; j < closed.length; j++) {
                double term = ((element == j ? 1 : 0) - closed[element]) * parts.uncertainties[j] / sum;
                total += term * term;
            }
            return List.of(RandomPart.known(Math.sqrt(total)).atLeast(floor));
        }
        GroupSums particles = analysis.particles().first();
        return particles.withinMeanSquare(element)
            .map(square -> List.of(new RandomPart(Math.sqrt(square), particles.withinDegreesOfFreedom()).atLeast(floor)))
            .orElse(List.of());
    }

    private SpotReading.ElementReading reading(GroupAnalysis analysis, NominalTest test, double adjusted, int i) {
        SpotParts parts = readers.get(analysis.data());
        NominalTest.Limits limits = analysis.comparison().limits(i);
        OptionalDouble nearest = test.nearestLimit(limits);
        boolean flagged = adjusted <= sample.judgement().alpha() && test.direction() != 0 && !parts.below[i];
        Verdict verdict = !flagged ? Verdict.INCONCLUSIVE : test.direction() > 0 ? Verdict.ENRICHED : Verdict.DEPLETED;
        return new SpotReading.ElementReading(analysis.data().elements().get(i), test.mean(),
            test.parts().isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(test.parts().get(0).standardError()),
            parts.below[i], parts.below[i] ? OptionalDouble.of(parts.limits[i] / parts.sum()) : OptionalDouble.empty(),
            limits.low(), limits.high(),
            nearest.isPresent() && nearest.getAsDouble() > 0 ? OptionalDouble.of(test.mean() / nearest.getAsDouble()) : OptionalDouble.empty(),
            test.parts().isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(test.p()), Contrasts.optional(adjusted), verdict);
    }

    private List<SpotReading.ForeignReading> foreign(Spot spot, GroupData group) {
        Set<Element> nominal = new TreeSet<>(group.elements());
        nominal.addAll(group.notMeasured());
        nominal.addAll(sample.excludedElements());
        double sum = 0;
        for (Map.Entry<Element, ReportedValue> entry : spot.values().entrySet()) {
            sum += sample.excludedElements().contains(entry.getKey()) ? 0 : part(entry.getKey(), entry.getValue(), spot.basis());
        }
        List<SpotReading.ForeignReading> found = new ArrayList<>();
        for (Map.Entry<Element, ReportedValue> entry : spot.values().entrySet()) {
            if (!nominal.contains(entry.getKey()) && entry.getValue() instanceof ReportedValue.Measured && sum > 0) {
                found.add(new SpotReading.ForeignReading(entry.getKey(), part(entry.getKey(), entry.getValue(), spot.basis()) / sum));
            }
        }
        return found;
    }

    private static double part(Element element, ReportedValue value, Basis basis) {
        if (!(value instanceof ReportedValue.Measured measured)) {
            return 0;
        }
        return basis == Basis.MASS ? measured.fraction() / element.atomicWeight() : measured.fraction();
    }

    /** A growing list of p values without boxing. */
    private static final class PValues {
        private double[] values = new double[64];
        private int size;

        void add(double value) {
            values = size == values.length ? Arrays.copyOf(values, 2 * size) : values;
            values[size++] = value;
        }

        double[] toArray() {
            return Arrays.copyOf(values, size);
        }
    }
}
