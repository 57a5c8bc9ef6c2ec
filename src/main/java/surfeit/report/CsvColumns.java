package surfeit.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.stream.Collectors;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.ForeignElement;
import surfeit.segregation.answer.Outcome;
import surfeit.segregation.answer.PhaseReading;
import surfeit.spot.FormulaGuard;

/**
 * The columns of the CSV: name with unit, and where the cell comes from. Absent and unbounded numbers are empty cells.
 */
final class CsvColumns {
    /** A column; its cells are ready to write. */
    record Column(String name, Function<CsvRow, String> cell) {
    }

    /** Every column, in order. */
    static final List<Column> ALL = List.copyOf(new CsvColumns().columns);

    private final List<Column> columns = new ArrayList<>();

    private CsvColumns() {
        addGroup();
        addSizes("", CsvColumns::outcome);
        addTest("", CsvColumns::outcome);
        addFinding();
        text("these_particles_verdict", row -> these(row).map(o -> o.verdict().word()));
        addSizes("these_particles_", CsvColumns::these);
        addTest("these_particles_", CsvColumns::these);
        addForeign();
        text("explanation_set", row -> row.group().explanationSet()
            .map(set -> set.stream().map(Object::toString).collect(Collectors.joining(" "))));
        text("could_alone_be_explained_by", row -> Optional.of(row.ableRivals().collect(Collectors.joining("; "))));
        addPhases();
    }

    private void addGroup() {
        text("sample", row -> row.provenance().sample());
        column("revision", row -> row.provenance().revision().stream().mapToObj(Long::toString).findFirst().orElse(""));
        text("by", row -> Optional.of(row.group().by().word()));
        text("group", row -> Optional.of(row.group().name()));
        text("scope", row -> Optional.of(row.group().scope().word()));
        column("weak_two_particles", row -> Boolean.toString(row.group().weakTwoParticles()));
        column("spot_count", row -> Long.toString(row.group().spotCount()));
        column("particle_count", row -> Integer.toString(row.group().particles().size()));
        number("beam_energy_kev", row -> row.group().beamEnergyKev());
        text("element", row -> Optional.of(row.element().symbol()));
        text("verdict", row -> Optional.of(row.verdict()));
        number("nominal_atomic_percent",
            row -> ofFinding(row, f -> f.nominalLow() == f.nominalHigh() ? Percent.of(f.nominalLow()) : Double.NaN));
        number("nominal_atomic_percent_low", row -> ofFinding(row, f -> Percent.of(f.nominalLow())));
        number("nominal_atomic_percent_high", row -> ofFinding(row, f -> Percent.of(f.nominalHigh())));
        number("mean_mass_percent", row -> ofFinding(row, f -> Percent.of(f.meanMassFraction())));
    }

    private void addSizes(String prefix, Function<CsvRow, Optional<Outcome>> scope) {
        number(prefix + "mean_atomic_percent", row -> of(scope.apply(row), o -> Percent.of(o.mean())));
        number(prefix + "mean_atomic_percent_low", row -> of(scope.apply(row), o -> Percent.of(o.low())));
        number(prefix + "mean_atomic_percent_high", row -> of(scope.apply(row), o -> Percent.of(o.high())));
        number(prefix + "mean_atomic_percent_u", row -> of(scope.apply(row), o -> Percent.of(o.uncertainty())));
        number(prefix + "mean_atomic_percent_u_random",
            row -> of(scope.apply(row), o -> Percent.of(o.uncertaintyRandom())));
        number(prefix + "mean_atomic_percent_u_shared",
            row -> of(scope.apply(row), o -> Percent.of(o.uncertaintyShared())));
        estimate(prefix + "enrichment_factor", row -> scope.apply(row).flatMap(Outcome::enrichmentFactor),
            DoubleUnaryOperator.identity());
        estimate(prefix + "difference_atomic_percent", row -> scope.apply(row).map(Outcome::difference), Percent::of);
        estimate(prefix + "odds_ratio", row -> scope.apply(row).flatMap(Outcome::oddsRatio),
            DoubleUnaryOperator.identity());
    }

    private void addTest(String prefix, Function<CsvRow, Optional<Outcome>> scope) {
        number(prefix + "degrees_of_freedom", row -> inner(scope.apply(row), Outcome::degreesOfFreedom));
        number(prefix + "p_value", row -> inner(scope.apply(row), Outcome::pValue));
        number(prefix + "p_value_adjusted", row -> inner(scope.apply(row), Outcome::pAdjusted));
        number(prefix + "p_value_equivalence", row -> inner(scope.apply(row), Outcome::pEquivalence));
        number(prefix + "confidence", row -> inner(scope.apply(row), Outcome::confidence));
        number(prefix + "not_more_than_factor", row -> inner(scope.apply(row), Outcome::notMoreThanFactor));
        flag(prefix + "beyond_margin", row -> scope.apply(row).map(Outcome::beyondMargin));
        flag(prefix + "small_shift_detected", row -> scope.apply(row).map(Outcome::smallShiftDetected));
        flag(prefix + "spots_agree_on_shift", row -> scope.apply(row).map(Outcome::spotsAgreeOnShift));
        text(prefix + "reason", row -> scope.apply(row).flatMap(Outcome::reason).map(reason -> reason.word()));
        text(prefix + "lean", row -> scope.apply(row).flatMap(Outcome::lean).map(lean -> lean.word()));
        text(prefix + "scale", row -> scope.apply(row).map(Outcome::scale));
        text(prefix + "random_uncertainty", row -> scope.apply(row).map(Outcome::randomUncertainty));
    }

    private void addFinding() {
        text("adjustment", row -> outcome(row).filter(o -> o.pAdjusted().isPresent()).map(o -> "holm"));
        flag("fragile", row -> row.finding().map(ElementFinding::isFragile));
        text("fragile_without", row -> row.finding().map(f -> String.join("; ", f.fragileWithout())));
        text("seen_on_particles", row -> row.finding().flatMap(ElementFinding::seenOn)
            .map(seen -> seen.particles() + " of " + seen.of()));
        column("below_limit_count", row -> row.finding().map(f -> Long.toString(f.belowLimitCount())).orElse(""));
        number("detection_limit_atomic_percent", row -> limit(row));
        flag("detection_limit_assumed", row -> limit(row).isEmpty() ? Optional.empty()
            : row.finding().map(ElementFinding::limitAssumed)
                .or(() -> row.foreign().map(ForeignElement::limitAssumed)));
        text("next_step", row -> row.finding().flatMap(ElementFinding::nextStep));
    }

    private void addForeign() {
        number("share_of_reported_atomic_percent", row -> ofForeign(row, f -> OptionalDouble.of(f.mean())));
        number("share_of_reported_atomic_percent_low", row -> ofForeign(row, ForeignElement::low));
        number("share_of_reported_atomic_percent_high", row -> ofForeign(row, ForeignElement::high));
    }

    /** What the group reads like; the share is that of the second phase of a mixture, by mass. */
    private void addPhases() {
        text("phase_reading", row -> row.group().phaseReading().map(reading -> reading.kind().word()));
        text("phases_not_excluded", row -> row.group().phaseReading().map(r -> String.join("; ", r.fitting())));
        text("mixture_of", row -> mixture(row).map(line -> line.from().name() + "; " + line.to().name()));
        estimate("second_phase_mass_percent", row -> mixture(row).map(PhaseReading.OnTieLine::shareOfMass), Percent::of);
        number("skin_most_nm", row -> row.group().skinLimit().map(limit -> OptionalDouble.of(limit.mostNm()))
            .orElse(OptionalDouble.empty()));
    }

    private static Optional<PhaseReading.OnTieLine> mixture(CsvRow row) {
        return row.group().phaseReading().filter(reading -> reading.kind() == PhaseReading.Kind.MIXTURE)
            .flatMap(PhaseReading::tieLine);
    }

    private static OptionalDouble limit(CsvRow row) {
        OptionalDouble own = row.finding().map(ElementFinding::detectionLimit).orElse(OptionalDouble.empty());
        return own.isPresent() ? OptionalDouble.of(Percent.of(own.getAsDouble()))
            : ofForeign(row, foreign -> OptionalDouble.of(foreign.detectionLimit()));
    }

    private static Optional<Outcome> outcome(CsvRow row) {
        return row.finding().map(ElementFinding::outcome);
    }

    private static Optional<Outcome> these(CsvRow row) {
        return row.finding().flatMap(ElementFinding::theseParticles);
    }

    private static OptionalDouble of(Optional<Outcome> outcome, Function<Outcome, Double> number) {
        return inner(outcome, o -> OptionalDouble.of(number.apply(o)));
    }

    private static OptionalDouble inner(Optional<Outcome> outcome, Function<Outcome, OptionalDouble> number) {
        return outcome.map(number).orElse(OptionalDouble.empty());
    }

    private static OptionalDouble ofFinding(CsvRow row, Function<ElementFinding, Double> number) {
        return row.finding().map(finding -> OptionalDouble.of(number.apply(finding))).orElse(OptionalDouble.empty());
    }

    private static OptionalDouble ofForeign(CsvRow row, Function<ForeignElement, OptionalDouble> fraction) {
        OptionalDouble value = row.foreign().map(fraction).orElse(OptionalDouble.empty());
        return value.isPresent() ? OptionalDouble.of(Percent.of(value.getAsDouble())) : value;
    }

    private void estimate(String name, Function<CsvRow, Optional<Estimate>> estimate, DoubleUnaryOperator unit) {
        number(name, row -> part(estimate.apply(row), Estimate::value, unit));
        number(name + "_low", row -> part(estimate.apply(row), Estimate::low, unit));
        number(name + "_high", row -> part(estimate.apply(row), Estimate::high, unit));
    }

    private static OptionalDouble part(Optional<Estimate> estimate, Function<Estimate, Double> part,
                                       DoubleUnaryOperator unit) {
        return estimate.map(e -> OptionalDouble.of(unit.applyAsDouble(part.apply(e)))).orElse(OptionalDouble.empty());
    }

    private void column(String name, Function<CsvRow, String> cell) {
        columns.add(new Column(name, cell));
    }

    private void text(String name, Function<CsvRow, Optional<String>> text) {
        column(name, row -> text.apply(row).map(FormulaGuard::guarded).orElse(""));
    }

    private void flag(String name, Function<CsvRow, Optional<Boolean>> flag) {
        column(name, row -> flag.apply(row).map(Object::toString).orElse(""));
    }

    private void number(String name, Function<CsvRow, OptionalDouble> number) {
        column(name, row -> number.apply(row).stream().filter(Double::isFinite).mapToObj(Double::toString)
            .findFirst().orElse(""));
    }
}
