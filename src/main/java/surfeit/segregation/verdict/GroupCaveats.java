package surfeit.segregation.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import surfeit.element.Element;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.Figures;
import surfeit.segregation.answer.ForeignElement;
import surfeit.segregation.answer.PhaseReading;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.ReferenceUse;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.segregation.sums.GroupFacts;
import surfeit.segregation.sums.GroupKey;
import surfeit.segregation.uncertainty.RandomLadder;
import surfeit.spot.Sample;
import surfeit.statistics.Power;

/** What a reader must know about one group beside its numbers. */
final class GroupCaveats {
    /** Raw totals outside these are noted or warned of. Common practice, no source. */
    private static final double NOTE_BELOW = 0.98;
    private static final double NOTE_ABOVE = 1.02;
    private static final double WARN_BELOW = 0.95;
    private static final double WARN_ABOVE = 1.05;

    private GroupCaveats() {
    }

    static List<Caveat> of(GroupAnalysis analysis, List<ElementFinding> findings, List<ForeignElement> foreign,
                           Sample sample, VerdictRule rule, Optional<PhaseReading> phases) {
        List<Caveat> caveats = new ArrayList<>();
        names(analysis, caveats);
        units(analysis, caveats);
        belowLimit(findings, caveats);
        beyondRange(findings, caveats);
        totals(analysis.data().facts(), caveats);
        foreign(foreign, sample, caveats);
        scatter(analysis, caveats);
        margin(analysis, findings, rule, caveats);
        twoPhases(phases, caveats);
        reference(analysis, caveats);
        if (!analysis.data().notMeasured().isEmpty()) {
            caveats.add(Caveat.note("not-measured", "No spot lists " + symbols(analysis.data().notMeasured())
                + "; left out of data and nominal, and both closed again."));
        }
        if (!analysis.data().facts().unusable().isEmpty()) {
            caveats.add(Caveat.warning("spot-not-closable", "Left out because none of their nominal elements is above zero: "
                + String.join(", ", analysis.data().facts().unusable()) + "."));
        }
        return caveats;
    }

    /** What was taken for one because nobody said otherwise. */
    private static void names(GroupAnalysis analysis, List<Caveat> caveats) {
        if (analysis.data().facts().spots() < 2) {
            return;
        }
        String name = analysis.data().name();
        if (name.equals(GroupKey.UNLABELLED) || name.startsWith(GroupKey.UNLABELLED + " @ ")) {
            caveats.add(Caveat.note("feature-not-stated", "These spots do not say what they lie on, so all are one group; with "
                + "a column \"feature\" (matrix, dark patch, ...) each kind is judged by itself."));
        }
        if (analysis.particles().first().particles().stream().anyMatch(p -> p.name().equals(GroupKey.UNNAMED_PARTICLE))) {
            caveats.add(Caveat.note("particle-not-stated", "Spots that do not name their particle count as spots of one; with a "
                + "column \"particle\" (of a casting, joint or film: the piece or field) the answer can speak of others too."));
        }
    }

    private static void units(GroupAnalysis analysis, List<Caveat> caveats) {
        int k = analysis.units().first().particleCount();
        if (analysis.data().sessionsAreUnits()) {
            caveats.add(Caveat.note("sessions-are-units", k + " sessions are put together; the session, not the particle, "
                + "is the unit that repeats, and the calibration error counts in full."));
            return;
        }
        if (k == 1) {
            caveats.add(Caveat.note("one-particle", "One particle says nothing about the others."));
            if (analysis.units().first().spotCount() == 1) {
                caveats.add(Caveat.note("one-spot", "One spot says nothing about the rest of the particle."));
            }
        }
        if (k == 2) {
            caveats.add(Caveat.note("weak-two-particles", "Two particles say much about these two and little about others."));
        }
    }

    private static void belowLimit(List<ElementFinding> findings, List<Caveat> caveats) {
        for (ElementFinding finding : findings) {
            if (finding.belowLimitCount() == 0) {
                continue;
            }
            double limit = finding.detectionLimit().orElse(0);
            String words = String.format(Locale.ROOT, "%s is below its limit of about %.2g at%%%s on %d spot%s; computed once "
                + "with zero and once with the limit there, and a shift counts only where both agree.",
                finding.element(), limit * 100, finding.limitAssumed() ? " (assumed)" : "", finding.belowLimitCount(),
                finding.belowLimitCount() == 1 ? "" : "s");
            caveats.add(Caveat.note("below-limit", words));
            if (finding.outcome().reason().filter(reason -> reason == Reason.LIMIT_ABOVE_NOMINAL).isPresent()) {
                caveats.add(Caveat.warning("limit-above-nominal", String.format(Locale.ROOT,
                    "The limit of %s, about %.2g at%%, lies above %s at%%.", finding.element(), limit * 100,
                    nominalWords(finding))));
            }
        }
    }

    private static String nominalWords(ElementFinding finding) {
        String form = finding.nominalLow() == finding.nominalHigh() ? "its nominal of %.2g"
            : finding.nominalLow() > 0 ? "the lower limit of its nominal, %.2g" : "its nominal of at most %.2g";
        double shown = finding.nominalLow() > 0 ? finding.nominalLow() : finding.nominalHigh();
        return String.format(Locale.ROOT, form, shown * 100);
    }

    /** A mean below nothing, and with it one above everything, is no fault: its interval is cut where compositions end. */
    private static void beyondRange(List<ElementFinding> findings, List<Caveat> caveats) {
        List<String> beyond = new ArrayList<>();
        for (ElementFinding finding : findings) {
            double mean = finding.outcome().mean();
            if (mean < 0 || mean > 1) {
                beyond.add("the mean of " + finding.element() + (mean < 0 ? " lies below 0 at%" : " lies above 100 at%"));
            }
        }
        if (!beyond.isEmpty()) {
            String words = String.join(", ", beyond);
            caveats.add(Caveat.note("mean-beyond-range", words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1)
                + ": values below zero are kept as numbers, and noise around nothing makes such values; intervals end at 0 and "
                + "100 at%."));
        }
    }

    private static void totals(GroupFacts facts, List<Caveat> caveats) {
        if (facts.allNormalised()) {
            caveats.add(Caveat.note("already-normalised", "Every spot adds up to 100 %: already normalised, so the total "
                + "carries no information; tilt, a film or a missing element would not show in it."));
            return;
        }
        boolean warn = facts.lowestTotal() < WARN_BELOW || facts.highestTotal() > WARN_ABOVE;
        boolean note = facts.lowestTotal() < NOTE_BELOW || facts.highestTotal() > NOTE_ABOVE;
        if (note) {
            String low = Figures.fixed(facts.lowestTotal() * 100, 1);
            String high = Figures.fixed(facts.highestTotal() * 100, 1);
            String words = (low.equals(high) ? "The raw total is " + low : "Raw totals run from " + low + " to " + high)
                + " %; outside 98 to 102 % an element may be missing, the surface rough or tilted, or the beam current off.";
            caveats.add(warn ? Caveat.warning("raw-total", words) : Caveat.note("raw-total", words));
        }
    }

    private static void foreign(List<ForeignElement> foreign, Sample sample, List<Caveat> caveats) {
        Set<Element> usual = ForeignElements.usual(sample);
        for (ForeignElement found : foreign) {
            if (found.present() && !usual.contains(found.element())) {
                caveats.add(Caveat.warning("foreign-element", String.format(Locale.ROOT,
                    "%s is not in the nominal and was found at %.2g at%% of everything reported.", found.element(),
                    found.mean() * 100)));
            }
        }
        double share = ForeignElements.shareBeyondUsual(foreign, usual);
        if (share > ForeignElements.MUCH) {
            caveats.add(Caveat.warning("nominal-covers-little", String.format(Locale.ROOT,
                "Elements outside the nominal make up %.0f at%% of everything reported.", share * 100)));
        }
    }

    private static void scatter(GroupAnalysis analysis, List<Caveat> caveats) {
        double[] mean = analysis.units().mean();
        boolean small = false;
        for (int i = 0; i < mean.length; i++) {
            small |= RandomLadder.population(analysis.units().first(), i, mean[i]).smallerThanSpotsPredict();
        }
        if (small) {
            caveats.add(Caveat.note("scatter-smaller-than-spots-predict",
                "The particles agree better than their spots allow; luck, or the same spots counted twice."));
        }
    }

    /** Said once per group: a margin that the calibration error of its unsettled elements cannot support. */
    private static void margin(GroupAnalysis analysis, List<ElementFinding> findings, VerdictRule rule, List<Caveat> caveats) {
        double u = 0;
        for (int i = 0; i < findings.size(); i++) {
            double own = analysis.tests()[i].uTheta();
            boolean unsettled = findings.get(i).outcome().verdict() == Verdict.INCONCLUSIVE;
            u = unsettled && !Double.isNaN(own) ? Math.max(u, own) : u;
        }
        double smallest = new Power(rule.alpha(), 0.8).smallestMargin(u);
        if (smallest > rule.margin()) {
            caveats.add(Caveat.note("margin-below-calibration", "The calibration error alone keeps \"consistent\" out of reach "
                + "at the margin of " + Figures.of(Math.exp(rule.margin()), 3) + "; these data could support an odds ratio of "
                + "about " + Figures.fixed(Math.exp(smallest), 2) + "."));
        }
    }

    private static void twoPhases(Optional<PhaseReading> phases, List<Caveat> caveats) {
        if (phases.filter(reading -> reading.kind() == PhaseReading.Kind.ONE_OR_THE_OTHER).isPresent()) {
            caveats.add(Caveat.warning("one-phase-or-the-other",
                "The beam hit one phase or the other, and the mean of such "
                + "spots is the composition of neither; give the two kinds of spots features of their own."));
        }
    }

    private static void reference(GroupAnalysis analysis, List<Caveat> caveats) {
        if (analysis.reference().isEmpty()) {
            return;
        }
        ReferenceUse use = analysis.reference().get();
        if (!use.used()) {
            caveats.add(Caveat.note("reference-not-used", use.explanation()));
        } else if (use.spotCount() == 1) {
            caveats.add(Caveat.note("reference-single-spot", "The correction rests on one reference spot; five are advised."));
        }
    }

    private static String symbols(List<Element> elements) {
        return elements.stream().map(Element::symbol).collect(Collectors.joining(", "));
    }
}
