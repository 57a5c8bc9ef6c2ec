package surfeit.segregation.screening;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.DoubleConsumer;
import surfeit.composition.Basis;
import surfeit.element.Element;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.nominal.NominalTest;
import surfeit.segregation.nominal.NominalTrial;
import surfeit.segregation.sums.GroupData;
import surfeit.segregation.sums.GroupKey;
import surfeit.segregation.sums.SpotParts;
import surfeit.spot.ReportedValue;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/** Reads single spots against the groups of a screening; not thread-safe, so that each reader has its own. */
public final class ScreenedSpots {
    private final SpotScreening screening;
    private final GroupKey.Sought sought;
    private Optional<Own> last = Optional.empty();
    private final Map<GroupData, Optional<SpotTests>> tests = new IdentityHashMap<>();
    private final Map<GroupData, Set<Element>> notForeign = new IdentityHashMap<>();

    ScreenedSpots(SpotScreening screening) {
        this.screening = screening;
        this.sought = new GroupKey.Sought(screening.sample(), GroupBy.FEATURE);
        screening.analyses().forEach(analysis ->
            tests.put(analysis.data(), Optional.of(new SpotTests(analysis, screening.defaultLimit()))));
    }

    /** What a spot of the screened sample shows. */
    public SpotReading read(Spot spot) {
        Own own = of(spot);
        GroupData group = own.group();
        List<SpotReading.ElementReading> elements = new ArrayList<>();
        Optional<SpotTests> tested = own.tests().filter(tests -> tests.test(spot));
        if (tested.isPresent()) {
            for (int i = 0; i < group.elements().size(); i++) {
                elements.add(reading(group.elements().get(i), tested.get(), i));
            }
        }
        return new SpotReading(spot, group.name(), elements, foreign(spot, group));
    }

    /**
     * Hands over the p values a spot adds to the family, before any adjustment: one for every element, one for two
     * elements together, none where nothing tells its scatter.
     */
    public void pValues(Spot spot, DoubleConsumer taken) {
        Optional<SpotTests> own = of(spot).tests();
        if (own.isPresent() && own.get().test(spot)) {
            own.get().pValues(taken);
        }
    }

    /** The group of a spot and its tests; empty where its spots cannot be tested. */
    private record Own(GroupData group, Optional<SpotTests> tests) {
    }

    /** Mostly that of the spot before. */
    private Own of(Spot spot) {
        if (sought.moveTo(spot) || last.isEmpty()) {
            GroupData group = screening.groupOf(sought);
            last = Optional.of(new Own(group, tests.getOrDefault(group, Optional.empty())));
        }
        return last.get();
    }

    private SpotReading.ElementReading reading(Element element, SpotTests tests, int i) {
        NominalTrial trial = tests.trial(i);
        NominalTest.Limits limits = trial.limits();
        SpotParts own = tests.parts();
        OptionalDouble adjusted = tests.isTested() ? OptionalDouble.of(screening.adjustment().of(tests.p(i)))
            : OptionalDouble.empty();
        boolean flagged = adjusted.isPresent() && adjusted.getAsDouble() <= screening.sample().judgement().alpha()
            && trial.direction() != 0 && !own.isBelow(i);
        Verdict verdict = !flagged ? Verdict.INCONCLUSIVE : trial.direction() > 0 ? Verdict.ENRICHED : Verdict.DEPLETED;
        OptionalDouble nearest = limits.nearest(trial.direction());
        return new SpotReading.ElementReading(element, trial.mean(),
            tests.hasStandardErrors() ? OptionalDouble.of(tests.standardError(i)) : OptionalDouble.empty(),
            own.isBelow(i), own.isBelow(i) ? OptionalDouble.of(own.limit(i) / own.sum()) : OptionalDouble.empty(),
            limits.low(), limits.high(),
            nearest.isPresent() && nearest.getAsDouble() > 0 ? OptionalDouble.of(trial.mean() / nearest.getAsDouble())
            : OptionalDouble.empty(),
            tests.hasStandardErrors() ? OptionalDouble.of(trial.p()) : OptionalDouble.empty(), adjusted, verdict);
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
