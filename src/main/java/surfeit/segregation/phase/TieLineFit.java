package surfeit.segregation.phase;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import surfeit.composition.PhaseShare;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.PhaseReading;
import surfeit.segregation.answer.SpotSpread;
import surfeit.segregation.nominal.Comparison;
import surfeit.segregation.nominal.NominalTest;
import surfeit.segregation.sums.TieLine;
import surfeit.segregation.uncertainty.GroupRuns;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.segregation.uncertainty.LinearForm;
import surfeit.segregation.uncertainty.ReferenceCorrection;
import surfeit.segregation.uncertainty.ReferenceScatter;
import surfeit.statistics.CombinedError;
import surfeit.statistics.NormalDistribution;
import surfeit.statistics.RandomPart;

/**
 * A group mean on one tie line: its position with its interval, and whether it lies beside the line.
 *
 * <p>In a binary the interval is that of the element, turned by the lever rule. With more elements position and
 * deviation are {@link LinearForm}s of the mean; the deviation of every element counts (smallest p times their number;
 * with three elements, which have one way to lie beside a line, that of the one it shows most in). It is not asked of
 * what lies beyond an end. The compositions of both phases carry {@link PhaseFits#UNCERTAINTY} each. The
 * interval is worked out when first asked for: most lines of an alloy are not those its group lies on. Not thread-safe.
 */
final class TieLineFit {
    private static final double TWO_SIDED_95 = NormalDistribution.quantile(0.975);

    private final TieLine line;
    private final GroupRuns runs;
    private final double[] mean;
    private final Comparison comparison;
    private final NominalTest[] tests;
    private final boolean ofKind;
    private final double position;
    private Optional<Interval> interval = Optional.empty();

    private TieLineFit(TieLine line, GroupRuns runs, double[] mean, Comparison comparison, NominalTest[] tests,
                       boolean ofKind) {
        this.line = line;
        this.runs = runs;
        this.mean = mean;
        this.comparison = comparison;
        this.tests = tests;
        this.ofKind = ofKind;
        this.position = line.position(mean);
    }

    static TieLineFit of(TieLine line, GroupRuns runs, Comparison comparison, NominalTest[] tests) {
        return of(line, runs, runs.mean(), comparison, tests);
    }

    /** The same for a mean worked out already; it is read only. */
    static TieLineFit of(TieLine line, GroupRuns runs, double[] mean, Comparison comparison, NominalTest[] tests) {
        return new TieLineFit(line, runs, mean, comparison, tests, false);
    }

    /**
     * The same with the interval for particles of the kind.
     *
     * @param units three particles or more, or as many sessions
     * @param tests of these units
     */
    static TieLineFit ofKind(TieLine line, GroupRuns units, Comparison comparison, NominalTest[] tests) {
        return new TieLineFit(line, units, units.mean(), comparison, tests, true);
    }

    /** Ends of the 95 % interval of the position. */
    private record Interval(double low, double high) {
    }

    TieLine line() {
        return line;
    }

    double low() {
        return interval().low();
    }

    double high() {
        return interval().high();
    }

    /** Whether the mean lies between the ends and is not excluded from the line at this risk; a binary never is. */
    boolean liesOn(double risk) {
        boolean lies = isBetween() && line.isBinary();
        for (int run = 0; run < runs.runs().size() && isBetween() && !lies; run++) {
            GroupSums own = runs.runs().get(run);
            lies = isNotBeside(own, own.mean(), risk);
        }
        return lies;
    }

    /** Asks first where the mean lies furthest beside the line, and no more once an element excludes it. */
    private boolean isNotBeside(GroupSums run, double[] own, double risk) {
        double[] errors = comparison.calibration().errors(own);
        if (own.length == 3) {
            return beside(line, freest(line), run, own, errors, comparison) > risk;
        }
        double[] foot = line.rule().compositionAt(line.position(own));
        int furthest = 0;
        for (int i = 1; i < own.length; i++) {
            furthest = Math.abs(own[i] - foot[i]) > Math.abs(own[furthest] - foot[furthest]) ? i : furthest;
        }
        for (int i = 0; i < own.length; i++) {
            int element = i == 0 ? furthest : i == furthest ? 0 : i;
            if (own.length * beside(line, element, run, own, errors, comparison) <= risk) {
                return false;
            }
        }
        return true;
    }

    private Interval interval() {
        if (interval.isEmpty()) {
            interval = Optional.of(line.isBinary() ? binary() : general());
        }
        return interval.get();
    }

    private Interval binary() {
        int element = runs.allBelow()[0] ? 1 : 0;
        double one = at(line, element, known(tests[element].low(), mean[element]));
        double other = at(line, element, known(tests[element].high(), mean[element]));
        return withPhases(position - Math.min(one, other), Math.max(one, other) - position);
    }

    /** Where nothing is uncertain there is no interval but the mean. */
    private static double known(double end, double mean) {
        return Double.isNaN(end) ? mean : end;
    }

    private static double at(TieLine line, int element, double fraction) {
        return (fraction - line.start()[element]) / (line.end()[element] - line.start()[element]);
    }

    private Interval general() {
        double below = 0;
        double above = 0;
        for (GroupSums run : runs.runs()) {
            double[] own = run.mean();
            double half = halfWidth(new LinearForm(line.weights()), run, own, comparison.calibration().errors(own),
                comparison);
            below = Math.max(below, position - line.position(own) + half);
            above = Math.max(above, line.position(own) - position + half);
        }
        return withPhases(below, above);
    }

    private double halfWidth(LinearForm form, GroupSums run, double[] mean, double[] errors,
                                    Comparison comparison) {
        double half = 0;
        double u = form.shared(mean, errors);
        for (RandomPart part : withReference(ofKind ? form.ofKind(run) : form.parts(run), form, run, mean, comparison)) {
            half = Math.max(half, part.standardError() + u == 0 ? 0 : CombinedError.halfWidth(part, u, 0.95));
        }
        return half;
    }

    /** The element that changes least along the line, and so most beside it. */
    private static int freest(TieLine line) {
        double[] along = line.weights();
        int freest = 0;
        for (int i = 1; i < along.length; i++) {
            freest = Math.abs(along[i]) < Math.abs(along[freest]) ? i : freest;
        }
        return freest;
    }

    /** p of one element having the fraction it has at the nearest point of the line. */
    private static double beside(TieLine line, int element, GroupSums run, double[] mean, double[] errors,
                                 Comparison comparison) {
        double foot = line.rule().compositionAt(line.position(mean))[element];
        LinearForm beside = new LinearForm(line.besideWeights(element));
        double u = Math.hypot(beside.shared(mean, errors), PhaseFits.UNCERTAINTY);
        double p = 0;
        for (RandomPart part : withReference(beside.parts(run), beside, run, mean, comparison)) {
            p = Math.max(p, CombinedError.twoSidedP(mean[element] - foot, part, u));
        }
        return p;
    }

    /**
     * The scatter of reference spots adds in full, as if it moved all elements together: it is seldom the larger part.
     */
    private static List<RandomPart> withReference(List<RandomPart> own, LinearForm form, GroupSums run, double[] mean,
                                                  Comparison comparison) {
        List<RandomPart> parts = own.isEmpty() ? List.of(RandomPart.known(0)) : own;
        Optional<ReferenceCorrection> reference = comparison.reference();
        if (reference.isEmpty()) {
            return parts;
        }
        double fewest = Double.POSITIVE_INFINITY;
        double sum = 0;
        for (int i = 0; i < mean.length; i++) {
            Optional<RandomPart> ofElement = ReferenceScatter.of(reference.get(), run, mean, i);
            double slope = Math.abs(form.weights()[i] * mean[i] * (1 - mean[i]));
            sum += ofElement.map(part -> slope * part.standardError()).orElse(0.0);
            fewest = Math.min(fewest, ofElement.map(RandomPart::degreesOfFreedom).orElse(fewest));
        }
        RandomPart added = new RandomPart(sum, fewest);
        return parts.stream().map(part -> part.plus(added)).toList();
    }

    private Interval withPhases(double below, double above) {
        double ends = TWO_SIDED_95 * PhaseFits.UNCERTAINTY * Math.hypot(1 - position, position) / perElement(line);
        return new Interval(position - Math.hypot(Math.max(below, 0), ends),
            position + Math.hypot(Math.max(above, 0), ends));
    }

    /** Length of the line in the element that changes most. */
    private static double perElement(TieLine line) {
        double most = 0;
        for (int i = 0; i < line.start().length; i++) {
            most = Math.max(most, Math.abs(line.end()[i] - line.start()[i]));
        }
        return most;
    }

    boolean isBetween() {
        return position > 0 && position < 1;
    }

    /** How far outside the line the position lies; 0 between its ends. */
    double outside() {
        return Math.max(Math.max(-position, position - 1), 0);
    }

    /** Upper bound of the share of the phase that is not this one. */
    double mostOf(boolean second) {
        return Math.min(Math.max(second ? high() : 1 - low(), 0), 1);
    }

    PhaseReading.OnTieLine reading(double[] nominal, SpotSpread spread) {
        PhaseShare value = line.shares(position);
        PhaseShare from = line.shares(low());
        PhaseShare to = line.shares(high());
        Optional<Estimate> volume = value.ofVolume().isEmpty() ? Optional.empty()
            : Optional.of(new Estimate(value.ofVolume().getAsDouble(), from.ofVolume().getAsDouble(),
            to.ofVolume().getAsDouble()));
        return new PhaseReading.OnTieLine(line.from(), line.to(), new Estimate(position, low(), high()),
            new Estimate(value.ofAtoms(), from.ofAtoms(), to.ofAtoms()),
            new Estimate(value.ofMass(), from.ofMass(), to.ofMass()),
            volume, line.isBinary() ? Optional.of(line.shares(line.position(nominal))) : Optional.empty(),
            line.isBinary() ? 0 : line.rule().distance(mean), spread);
    }

    static final Comparator<TieLineFit> NEAREST = Comparator.comparingDouble(TieLineFit::outside)
        .thenComparingDouble(fit -> fit.line().rule().distance(fit.mean))
        .thenComparingDouble(fit -> fit.line().length());
}
