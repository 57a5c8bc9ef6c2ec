package surfeit.segregation.verdict;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import surfeit.composition.Basis;
import surfeit.composition.Closure;
import surfeit.composition.Nominal;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.preparation.Handling;
import surfeit.rival.Evidence;
import surfeit.rival.Shift;
import surfeit.rival.Situation;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.Outcome;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.nominal.BelowLimit;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.segregation.nominal.NominalTest;
import surfeit.segregation.nominal.SampleReading;
import surfeit.segregation.sums.GroupData;
import surfeit.segregation.sums.GroupFacts;
import surfeit.segregation.sums.GroupKey;
import surfeit.segregation.uncertainty.ParticleSums;
import surfeit.statistics.CombinedError;

/**
 * Puts a group before the weighing of other causes: which of its shifts ask for one, and what is known beside.
 *
 * <p>Asked are the flagged elements, be it for the measured particles alone; and of the inconclusive ones those worth
 * chasing: the shift is at least half the margin (judgement) and leans to one side, or the spots agree on it; a spot
 * without anything to tell its scatter lies beyond the margin; or the limit lies above nominal. A binary has one shift:
 * that of its enriched element, or of the one that was not found.
 */
record RivalSituations(Nominal nominal, Handling handling, SampleReading reading) {
    /** Where a mean is not inside 0 to 1 its log odds are taken at this distance from the edge. Judgement: 1 ppm. */
    private static final double EDGE = 1e-6;
    private static final double WORTH_CHASING = 0.5;
    private static final double SMALLEST_SHIFT = 1e-9;

    Situation of(GroupAnalysis analysis, List<ElementFinding> findings, GroupBy by) {
        GroupData data = analysis.data();
        List<Shift> shifts = shifts(analysis, findings);
        NominalFractions compared = analysis.comparison().nominal();
        double[] mean = analysis.units().mean();
        boolean labelled = by == GroupBy.FEATURE && !data.baseName().equals(GroupKey.UNLABELLED);
        return new Situation(data.name(), labelled, data.elements(), compared.middles(), mean, shifts,
            data.beamEnergyKev(), analysis.units().first().particleCount(), shifts.isEmpty() ? GroupFacts.NO_EVIDENCE
            : evidence(data, mean),
            shifts.isEmpty() ? List.of() : others(analysis), missing(data), reading.sample(),
            handling, nominal.basis());
    }

    private Evidence evidence(GroupData data, double[] mean) {
        double weight = 0;
        for (int i = 0; i < mean.length; i++) {
            weight += mean[i] * data.elements().get(i).atomicWeight();
        }
        return data.facts().evidence(reading.sample().form(), reading.settings().detectionLimitMassFraction(), weight);
    }

    private List<Situation.Other> others(GroupAnalysis analysis) {
        List<Situation.Other> others = new ArrayList<>();
        for (GroupAnalysis other : reading.analyses()) {
            GroupData data = other.data();
            if (other != analysis && data.elements().equals(analysis.data().elements())) {
                others.add(new Situation.Other(data.name(), data.baseName().equals(analysis.data().baseName()),
                    other.units().mean(), data.beamEnergyKev(), data.facts().sessions(),
                    data.facts().positions().keySet()));
            }
        }
        return others;
    }

    /** Elements of the nominal, with a share in it, that this group was not closed over; as nominal mass fractions. */
    private Map<Element, Double> missing(GroupData data) {
        if (data.elements().size() == nominal.parts().size()) {
            return Map.of();
        }
        NominalFractions whole = nominal.resolve();
        double[] mass = Closure.convert(whole.middles(), whole.elements(), Basis.ATOMIC, Basis.MASS);
        Map<Element, Double> missing = new LinkedHashMap<>();
        for (int i = 0; i < mass.length; i++) {
            if (mass[i] > 0 && !data.elements().contains(whole.elements().get(i))) {
                missing.put(whole.elements().get(i), mass[i]);
            }
        }
        return missing;
    }

    private List<Shift> shifts(GroupAnalysis analysis, List<ElementFinding> findings) {
        List<Shift> shifts = new ArrayList<>(findings.size());
        for (int i = 0; i < findings.size(); i++) {
            if (asks(findings.get(i))) {
                shift(analysis, findings.get(i), i).ifPresent(shifts::add);
            }
        }
        return findings.size() == 2 ? one(shifts) : shifts;
    }

    /** The one shift of a binary. */
    private static List<Shift> one(List<Shift> both) {
        List<Shift> leading = both;
        for (Shift shift : both) {
            if (shift.limit().isPresent()) {
                return List.of(shift);
            }
            leading = leading == both && shift.direction() > 0 ? List.of(shift) : leading;
        }
        return leading;
    }

    private boolean asks(ElementFinding finding) {
        Outcome outcome = finding.outcome();
        boolean flagged = flag(outcome) || finding.theseParticles().filter(RivalSituations::flag).isPresent();
        double margins = Math.abs(size(finding)) / Math.log(reading.settings().judgement().marginOddsRatio());
        boolean unrepeated = outcome.reason().filter(reason -> reason == Reason.NO_REPEAT_AND_NO_SIGMA).isPresent()
            && margins > 1;
        boolean limit = outcome.reason().filter(reason -> reason == Reason.LIMIT_ABOVE_NOMINAL).isPresent();
        boolean pointed = outcome.lean().isPresent() || outcome.spotsAgreeOnShift();
        return flagged || pointed && margins >= WORTH_CHASING || unrepeated || limit;
    }

    private static boolean flag(Outcome outcome) {
        return outcome.verdict() == Verdict.ENRICHED || outcome.verdict() == Verdict.DEPLETED;
    }

    private static double at(ElementFinding finding) {
        return finding.outcome().mean() > finding.nominalHigh() ? finding.nominalHigh() : finding.nominalLow();
    }

    /** Signed distance of the mean from the nearest limit in log odds; 0 inside a range. */
    private static double size(ElementFinding finding) {
        double mean = finding.outcome().mean();
        if (mean >= finding.nominalLow() && mean <= finding.nominalHigh()) {
            return 0;
        }
        return NominalTest.logit(inside(bounded(finding.outcome()))) - NominalTest.logit(inside(at(finding)));
    }

    /** The mean, or the bound where every spot has the element below its limit. */
    private static double bounded(Outcome outcome) {
        return outcome.scale().equals(BelowLimit.SCALE) ? outcome.high() : outcome.mean();
    }

    private static double inside(double fraction) {
        return Math.max(EDGE, Math.min(1 - EDGE, fraction));
    }

    private Optional<Shift> shift(GroupAnalysis analysis, ElementFinding finding, int i) {
        double nominalAt = at(finding);
        double size = size(finding);
        Outcome outcome = finding.outcome();
        boolean below = finding.belowLimitCount() > 0;
        if (!(nominalAt > 0 && nominalAt < 1) || Math.abs(size) < SMALLEST_SHIFT) {
            return Optional.empty();
        }
        double mean = inside(bounded(outcome));
        double slope = mean * (1 - mean);
        double random = randomHalfWidth(outcome, slope);
        boolean limitAbove = outcome.reason().filter(reason -> reason == Reason.LIMIT_ABOVE_NOMINAL).isPresent();
        int direction = limitAbove ? -1 : (int) Math.signum(size);
        return Optional.of(new Shift(i, finding.element(), direction, nominalAt, Math.abs(size), random,
            outcome.uncertaintyShared() / slope, carrier(analysis, i, nominalAt, direction), below ? Optional.of(
            new Shift.Limit(finding.belowLimitCount(), finding.detectionLimit().orElse(0), finding.limitAssumed(),
                finding.nominalLow() < finding.nominalHigh()))
            : Optional.empty()));
    }

    /** Half width in log odds of the 95 % interval from the random part alone; 0 where there is none. */
    private static double randomHalfWidth(Outcome outcome, double slope) {
        if (outcome.degreesOfFreedom().isEmpty() || !(outcome.uncertaintyRandom() > 0)) {
            return 0;
        }
        double error = outcome.uncertaintyRandom() / slope;
        return CombinedError.halfWidth(error, outcome.degreesOfFreedom().getAsDouble(), 0, 0.95);
    }

    /** The particle furthest in the shift's direction, and the distance of the mean of the others. */
    private static Optional<Shift.Carrier> carrier(GroupAnalysis analysis, int i, double nominalAt, int direction) {
        List<ParticleSums> particles = analysis.units().first().particles();
        if (particles.size() < 2) {
            return Optional.empty();
        }
        double sum = 0;
        ParticleSums furthest = particles.get(0);
        for (ParticleSums particle : particles) {
            sum += particle.centre()[i];
            furthest = direction * particle.centre()[i] > direction * furthest.centre()[i] ? particle : furthest;
        }
        double rest = (sum - furthest.centre()[i]) / (particles.size() - 1);
        return Optional.of(new Shift.Carrier(furthest.name(), particles.size(),
            NominalTest.logit(inside(rest)) - NominalTest.logit(inside(nominalAt))));
    }
}
