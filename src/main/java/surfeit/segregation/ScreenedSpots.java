package surfeit.segregation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import surfeit.composition.Basis;
import surfeit.element.Element;
import surfeit.spot.ReportedValue;
import surfeit.spot.Sample;
import surfeit.spot.Spot;
import surfeit.statistics.RandomPart;

/** Reads single spots against the groups of a screening; not thread-safe, so that each reader has its own. */
public final class ScreenedSpots {
    private static final double[] NOT_TESTED = new double[0];

    private final SpotScreening screening;
    private final Map<GroupData, SpotParts> parts = new IdentityHashMap<>();
    private final Map<GroupData, Set<Element>> notForeign = new IdentityHashMap<>();

    ScreenedSpots(SpotScreening screening) {
        this.screening = screening;
    }

    /** What a spot of the screened sample shows. */
    public SpotReading read(Spot spot) {
        GroupData group = screening.groupOf(spot);
        NominalTest[] tests = tests(spot);
        double[] adjusted = new double[tests.length];
        Arrays.fill(adjusted, Double.NaN);
        double[] family = family(tests);
        for (int i = 0; i < adjusted.length && family.length > 0; i++) {
            adjusted[i] = screening.adjustment().of(family[family.length == 1 ? 0 : i]);
        }
        List<SpotReading.ElementReading> elements = new ArrayList<>();
        for (int i = 0; i < tests.length; i++) {
            elements.add(reading(group, tests[i], adjusted[i], i));
        }
        return new SpotReading(spot, group.name(), elements, foreign(spot, group));
    }

    /** The p values a spot adds to the family: one for two elements, none where nothing tells its scatter. */
    double[] family(Spot spot) {
        return family(tests(spot));
    }

    private static double[] family(NominalTest[] tests) {
        double[] family = new double[tests.length];
        for (int i = 0; i < tests.length; i++) {
            if (tests[i].parts().isEmpty() || Double.isNaN(tests[i].p())) {
                return NOT_TESTED;
            }
            family[i] = tests[i].p();
        }
        return tests.length == 2 ? new double[] {Math.max(family[0], family[1])} : family;
    }

    private SpotParts parts(GroupData group) {
        return parts.computeIfAbsent(group, data ->
            new SpotParts(data.elements(), screening.defaultLimit(), data.zeroIsNumber()));
    }

    /**
     * Leaves the parts of the group filled with this spot. Empty where the spot cannot be closed. A screening asks for no
     * equivalence, so no margin is given.
     */
    private NominalTest[] tests(Spot spot) {
        GroupData group = screening.groupOf(spot);
        if (!screening.isTested(group)) {
            return new NominalTest[0];
        }
        SpotParts own = parts(group);
        own.read(spot);
        if (!own.isClosable()) {
            return new NominalTest[0];
        }
        GroupAnalysis analysis = screening.analysis(group);
        double[] closed = new double[own.values.length];
        own.close(false, closed);
        double[] fractions = analysis.comparison().reference().map(reference -> reference.corrected(closed))
            .orElse(closed);
        SharedError shared = analysis.comparison().shared(fractions);
        NominalTest[] tests = new NominalTest[fractions.length];
        for (int i = 0; i < tests.length; i++) {
            tests[i] = NominalTest.withoutInterval(fractions[i], random(own, closed, fractions, analysis, i), shared, i,
                analysis.comparison().limits(i), Double.NaN, DecisionLevel.EVERY_VALUE);
        }
        return tests;
    }

    private static List<RandomPart> random(SpotParts parts, double[] closed, double[] fractions, GroupAnalysis analysis,
                                           int element) {
        double floor = analysis.units().first().roundingStep()[element] / Math.sqrt(12);
        if (parts.hasUncertainty) {
            double sum = parts.sum();
            double total = 0;
            for (int j = 0; j < closed.length; j++) {
                int other = j;
                double scale = analysis.comparison().reference().map(correction -> correction.scale(closed, other)).orElse(1.0);
                double term = ((element == j ? 1 : 0) - fractions[element]) * parts.uncertainties[j] / sum * scale;
                total += term * term;
            }
            return List.of(RandomPart.known(Math.sqrt(total)).atLeast(floor));
        }
        GroupSums particles = analysis.particles().first();
        return particles.withinMeanSquare(element)
            .map(square -> List.of(new RandomPart(Math.sqrt(square), particles.withinDegreesOfFreedom())
            .atLeast(floor)))
            .orElse(List.of());
    }

    private SpotReading.ElementReading reading(GroupData group, NominalTest test, double adjusted, int i) {
        SpotParts own = parts(group);
        NominalTest.Limits limits = screening.analysis(group).comparison().limits(i);
        OptionalDouble nearest = test.nearestLimit(limits);
        boolean flagged = adjusted <= screening.sample().judgement().alpha() && test.direction() != 0 && !own.below[i];
        Verdict verdict = !flagged ? Verdict.INCONCLUSIVE : test.direction() > 0 ? Verdict.ENRICHED : Verdict.DEPLETED;
        return new SpotReading.ElementReading(group.elements().get(i), test.mean(),
            test.parts().isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(test.parts().get(0).standardError()),
            own.below[i], own.below[i] ? OptionalDouble.of(own.limits[i] / own.sum()) : OptionalDouble.empty(),
            limits.low(), limits.high(),
            nearest.isPresent() && nearest.getAsDouble() > 0 ? OptionalDouble.of(test.mean() / nearest.getAsDouble())
            : OptionalDouble.empty(),
            test.parts().isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(test.p()),
            Contrasts.optional(adjusted), verdict);
    }

    private List<SpotReading.ForeignReading> foreign(Spot spot, GroupData group) {
        Sample sample = screening.sample();
        Set<Element> nominal = notForeign.computeIfAbsent(group, this::notForeign);
        if (nominal.containsAll(spot.values().keySet())) {
            return List.of();
        }
        double sum = 0;
        for (Map.Entry<Element, ReportedValue> entry : spot.values().entrySet()) {
            sum += sample.excludedElements().contains(entry.getKey()) ? 0
                : part(entry.getKey(), entry.getValue(), spot.basis());
        }
        List<SpotReading.ForeignReading> found = new ArrayList<>();
        for (Map.Entry<Element, ReportedValue> entry : spot.values().entrySet()) {
            if (!nominal.contains(entry.getKey()) && entry.getValue() instanceof ReportedValue.Measured && sum > 0) {
                found.add(new SpotReading.ForeignReading(entry.getKey(),
                    part(entry.getKey(), entry.getValue(), spot.basis()) / sum));
            }
        }
        return found;
    }

    private Set<Element> notForeign(GroupData group) {
        Set<Element> nominal = new TreeSet<>(group.elements());
        nominal.addAll(group.notMeasured());
        nominal.addAll(screening.sample().excludedElements());
        return nominal;
    }

    private static double part(Element element, ReportedValue value, Basis basis) {
        if (!(value instanceof ReportedValue.Measured measured)) {
            return 0;
        }
        return basis == Basis.MASS ? measured.fraction() / element.atomicWeight() : measured.fraction();
    }
}
