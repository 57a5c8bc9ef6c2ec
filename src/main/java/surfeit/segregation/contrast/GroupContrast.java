package surfeit.segregation.contrast;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import surfeit.element.Element;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Scope;
import surfeit.segregation.sums.GroupKey;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.segregation.uncertainty.ParticleSums;
import surfeit.segregation.uncertainty.SharedDifference;
import surfeit.spot.Judgement;
import surfeit.statistics.NormalDistribution;
import surfeit.statistics.StudentT;

/**
 * Two groups tested against each other, before the adjustment over all contrasts.
 *
 * @param common  particles compared pair by pair; empty where the groups were compared as groups
 * @param leftOut particles only one side has, where pairs were compared
 */
public record GroupContrast(ContrastSide a, ContrastSide b, List<Element> elements, List<String> common,
                            List<String> leftOut, double correlation, List<ContrastTest> tests, Scope scope) {
    /** Correlation of the calibration error within one session and beam energy. Judgement. */
    public static final double SAME_RUN_CORRELATION = 0.9;
    private static final int PAIRS_FROM = 3;
    /**
     * Particles of one side that are few against more than {@value #MANY_TIMES} times as many on the other: of samples in
     * which nothing differs, Welch's test at 5 % then flags up to 12 (two against 30) for one test, 24 for three, and up to
     * 5 elsewhere. Source: simulation of normal means of equal scatter, 40 000 draws each.
     */
    private static final int FEW = 4;
    private static final int MANY_TIMES = 2;
    private static final double ONE_SIDED_95 = NormalDistribution.quantile(0.95);

    /**
     * The contrast, or empty where the groups share fewer than two elements or a particle holds none of the shared ones.
     *
     * @param byParticle whether particles of the same name are the same and compared pair by pair, from three on
     * @param sameRun    whether both were measured under one calibration, so that most of its error cancels
     */
    public static Optional<GroupContrast> of(ContrastSide first, ContrastSide second, boolean byParticle, boolean sameRun,
                                             Judgement judgement) {
        List<Element> elements = first.elements().stream().filter(second.elements()::contains).toList();
        if (elements.size() < 2 || !first.holds(elements) || !second.holds(elements)) {
            return Optional.empty();
        }
        ContrastSide a = first.over(elements);
        ContrastSide b = second.over(elements);
        double correlation = sameRun ? SAME_RUN_CORRELATION : 0;
        List<String> common = byParticle ? commonParticles(a, b) : List.of();
        boolean paired = common.size() >= PAIRS_FROM;
        List<ContrastTest> tests = new ArrayList<>();
        for (int i = 0; i < elements.size(); i++) {
            tests.add(test(a, b, i, paired ? common : List.of(), correlation, judgement));
        }
        int fewest = Math.min(a.particleCount(), b.particleCount());
        return Optional.of(new GroupContrast(a, b, elements, paired ? common : List.of(),
            paired ? leftOut(a, b, common) : List.of(), correlation, tests,
            fewest >= 2 ? Scope.PARTICLES : Scope.THESE_PARTICLES));
    }

    /** Every filling of values below limits on one side with every one on the other, all with equal weight. */
    private static ContrastTest test(ContrastSide a, ContrastSide b, int element, List<String> common,
                                     double correlation, Judgement judgement) {
        return a.runs().runs().stream().map(runA -> b.runs().runs().stream()
                .map(runB -> test(a, runA, b, runB, element, common, correlation, judgement))
                .reduce(ContrastTest::join).orElseThrow())
            .reduce(ContrastTest::join).orElseThrow();
    }

    private static ContrastTest test(ContrastSide a, GroupSums runA, ContrastSide b, GroupSums runB, int element,
                                     List<String> common, double correlation, Judgement judgement) {
        GroupSums sumsA = common.isEmpty() ? runA : runA.only(common);
        GroupSums sumsB = common.isEmpty() ? runB : runB.only(common);
        SharedDifference shared =
            SharedDifference.of(sumsA.mean(), a.calibration(), sumsB.mean(), b.calibration(), correlation);
        return ContrastTest.of(new ContrastTest.Side(sumsA, a.calibration().reference()),
            new ContrastTest.Side(sumsB, b.calibration().reference()), element, !common.isEmpty(), shared,
            Math.log(judgement.marginOddsRatio()));
    }

    private static List<String> commonParticles(ContrastSide a, ContrastSide b) {
        if (!a.unitsAreNamed() || !b.unitsAreNamed()) {
            return List.of();
        }
        Set<String> names = new LinkedHashSet<>(names(a));
        names.retainAll(Set.copyOf(names(b)));
        names.remove(GroupKey.UNNAMED_PARTICLE);
        return List.copyOf(names);
    }

    private static List<String> leftOut(ContrastSide a, ContrastSide b, List<String> common) {
        Set<String> names = new LinkedHashSet<>(names(a));
        names.addAll(names(b));
        names.removeAll(Set.copyOf(common));
        return List.copyOf(names);
    }

    private static List<String> names(ContrastSide side) {
        return side.runs().first().particles().stream().map(ParticleSums::name).toList();
    }

    /** The p values that enter the adjustment: one for two elements, else one per element that has one. */
    List<Double> family() {
        if (tests.stream().anyMatch(test -> Double.isNaN(test.p()))) {
            return List.of();
        }
        if (tests.size() == 2) {
            return List.of(Math.max(tests.get(0).p(), tests.get(1).p()));
        }
        return tests.stream().map(ContrastTest::p).toList();
    }

    /** What a reader is told, once the p values are adjusted; as many of these as {@link #family} has. */
    Contrast finding(double[] adjusted, Judgement judgement) {
        List<Contrast.ElementContrast> findings = new ArrayList<>();
        for (int i = 0; i < tests.size(); i++) {
            double own = adjusted.length == 0 ? Double.NaN : adjusted[tests.size() == 2 ? 0 : i];
            findings.add(element(elements.get(i), tests.get(i), own, judgement));
        }
        return new Contrast(a.name(), b.name(), !common.isEmpty(), common, leftOut, scope, correlation,
            note(findings), findings);
    }

    private Optional<String> note(List<Contrast.ElementContrast> findings) {
        List<String> notes = Stream.of(calibrationNote(), unequalNote(findings)).flatMap(Optional::stream).toList();
        return notes.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", notes));
    }

    /** That a flag is less sure than its p says, as few particles were compared with many. */
    private Optional<String> unequalNote(List<Contrast.ElementContrast> findings) {
        int fewest = Math.min(a.particleCount(), b.particleCount());
        int most = Math.max(a.particleCount(), b.particleCount());
        if (!isFlagged(findings) || !common.isEmpty() || fewest < 2 || fewest > FEW || most <= MANY_TIMES * fewest) {
            return Optional.empty();
        }
        return Optional.of(fewest + " particles against " + most + ": where nothing differs, such a pair is flagged more often "
            + "than its confidence says, with two particles up to five times. Measure about as many on either side.");
    }

    /**
     * Elements each of which alone could have changed, so that the rest follows because parts are closed to one: once
     * it is removed from both sides, nothing is flagged any more. Empty list: more than one changed. Not asked (empty)
     * for two elements and where nothing is flagged; see {@code ExplanationSet}.
     */
    Optional<List<Element>> explanationSet(Contrast finding, Judgement judgement) {
        if (elements.size() < 3 || !isFlagged(finding)) {
            return Optional.empty();
        }
        List<Element> set = new ArrayList<>();
        for (Element element : elements) {
            List<Element> rest = elements.stream().filter(other -> !other.equals(element)).toList();
            if (!a.holds(rest) || !b.holds(rest)) {
                continue;
            }
            GroupContrast without =
                of(a.over(rest), b.over(rest), !common.isEmpty(), correlation > 0, judgement).orElseThrow();
            if (!isFlagged(Contrasts.adjusted(List.of(without), judgement).get(0))) {
                set.add(element);
            }
        }
        return Optional.of(List.copyOf(set));
    }

    static boolean isFlagged(Contrast finding) {
        return isFlagged(finding.elements());
    }

    private static boolean isFlagged(List<Contrast.ElementContrast> findings) {
        return findings.stream().map(Contrast.ElementContrast::verdict)
            .anyMatch(word -> word == Contrast.Word.HIGHER || word == Contrast.Word.LOWER);
    }

    private Optional<String> calibrationNote() {
        if (!a.beamEnergyKev().equals(b.beamEnergyKev())) {
            boolean unstated = a.beamEnergyKev().isEmpty() || b.beamEnergyKev().isEmpty();
            return Optional.of(unstated
                ? "The beam energy of one is not stated, so it is not known to be the same; the calibration error does "
                    + "not cancel."
                : "Different beam energies: other lines, other depth; the calibration error does not cancel.");
        }
        if (correlation > 0) {
            return Optional.empty();
        }
        if (a.isCorrected() && b.isCorrected()) {
            return Optional.of("Different sessions, each corrected by its own reference spots; what is left of the "
                + "calibration error does not cancel.");
        }
        boolean sameSession = !a.severalSessions() && !b.severalSessions() && a.session().equals(b.session());
        return Optional.of(!sameSession ? "Different sessions: the calibration error does not cancel."
            : a.session().isPresent() ? "Quantified in different ways: the calibration error does not cancel."
            : "No session is stated: not known to be the same; the calibration error does not cancel.");
    }

    private static Contrast.ElementContrast element(Element element, ContrastTest test, double adjusted,
                                                    Judgement judgement) {
        Contrast.Word word = word(test, adjusted, judgement.alpha());
        double difference = test.meanA() - test.meanB();
        Estimate differenceEstimate =
            new Estimate(difference, difference - test.linearHalfWidth(), difference + test.linearHalfWidth());
        Optional<Estimate> odds = Double.isNaN(test.theta()) ? Optional.empty()
            : Optional.of(new Estimate(Math.exp(test.theta()), Math.exp(test.theta() - test.halfWidth()),
                Math.exp(test.theta() + test.halfWidth())));
        OptionalDouble confidence = word == Contrast.Word.INCONCLUSIVE ? OptionalDouble.empty()
            : OptionalDouble.of(1 - (word == Contrast.Word.EQUIVALENT ? test.pEquivalence() : adjusted));
        return new Contrast.ElementContrast(element, word, test.meanA(), test.meanB(), odds, differenceEstimate,
            Contrasts.optional(test.p()), Contrasts.optional(adjusted),
            Double.isNaN(test.p()) ? OptionalDouble.empty() : OptionalDouble.of(test.pEquivalence()), confidence,
            test.s(), test.u(), Contrasts.optional(test.df()), reason(test, word, judgement), test.scale());
    }

    private static Contrast.Word word(ContrastTest test, double adjusted, double alpha) {
        if (test.reason().isPresent() || Double.isNaN(adjusted)) {
            return Contrast.Word.INCONCLUSIVE;
        }
        if (test.pEquivalence() <= alpha) {
            return Contrast.Word.EQUIVALENT;
        }
        return adjusted <= alpha && test.direction() != 0
            ? test.direction() > 0 ? Contrast.Word.HIGHER : Contrast.Word.LOWER : Contrast.Word.INCONCLUSIVE;
    }

    private static Optional<Reason> reason(ContrastTest test, Contrast.Word word, Judgement judgement) {
        if (word != Contrast.Word.INCONCLUSIVE || test.reason().isPresent()) {
            return test.reason();
        }
        double margin = Math.log(judgement.marginOddsRatio());
        boolean calibration = ONE_SIDED_95 * test.u() >= margin;
        boolean scatter = Double.isNaN(test.theta()) || StudentT.quantile(0.95, test.df()) * test.s() >= margin;
        return Optional.of(calibration && scatter ? Reason.CALIBRATION_AND_SCATTER
            : calibration ? Reason.CALIBRATION : scatter ? Reason.SCATTER : Reason.BETWEEN);
    }
}
