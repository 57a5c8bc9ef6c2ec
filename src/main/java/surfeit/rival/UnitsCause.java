package surfeit.rival;

import surfeit.composition.Basis;
import surfeit.composition.Closure;

/**
 * Mass percent taken for atomic percent, or the reverse, in the spots or in the nominal.
 *
 * <p>A swap moves every element by a known amount, so it is no bound but a prediction: the group must lie near the
 * swapped nominal. Measured is the largest distance of an element in log odds. It explains the shift alone where the
 * group is four times nearer to the swapped nominal than to the stated one, or within its calibration error and twice
 * nearer; in part where it is nearer at all by four tenths (judgement). Another feature that reads nominal in the same
 * table refutes it; one that does not come nearer to nominal by the swap leaves it "in part".
 */
final class UnitsCause {
    private static final Question QUESTION = new Question(Cause.SWAPPED_UNITS,
        "Look up the unit in the export of the workstation and in the nominal's source; the other unit of both must "
            + "fit too.", Sources.STOICHIOMETRY);
    private static final double ALONE = 0.25;
    private static final double WITHIN_CALIBRATION = 0.5;
    private static final double IN_PART = 0.6;
    private static final double EDGE = 1e-6;

    private UnitsCause() {
    }

    static void weigh(Inquiry inquiry, Shift leading) {
        Situation situation = inquiry.situation();
        weigh(inquiry, leading, Basis.ATOMIC, Basis.MASS,
            words(situation, Basis.ATOMIC, "the spots' at% are wt%", Basis.MASS, "the nominal's wt% are at%"));
        weigh(inquiry, leading, Basis.MASS, Basis.ATOMIC,
            words(situation, Basis.MASS, "the spots' wt% are at%", Basis.ATOMIC, "the nominal's at% are wt%"));
    }

    /** Which of the two mix-ups is possible, given what spots and nominal were stated in. */
    private static String words(Situation situation, Basis spots, String spotWords, Basis nominal,
                                String nominalWords) {
        boolean bySpots = situation.evidence().bases().size() == 1 && situation.evidence().bases().contains(spots);
        boolean byNominal = situation.nominalBasis() == nominal;
        if (bySpots && byNominal) {
            return spotWords + ", or " + nominalWords;
        }
        return bySpots ? spotWords : byNominal ? nominalWords : "";
    }

    /** The nominal as it would read were its numbers turned from one basis to the other once more. */
    private static void weigh(Inquiry inquiry, Shift leading, Basis from, Basis to, String mixUp) {
        if (mixUp.isEmpty()) {
            return;
        }
        Situation situation = inquiry.situation();
        double[] swapped = Closure.convert(situation.nominal(), situation.elements(), from, to);
        int i = leading.index();
        double reach =
            leading.direction() * (LogOdds.of(edged(swapped[i])) - LogOdds.of(edged(situation.nominal()[i])));
        double stated = distance(situation.mean(), situation.nominal());
        double other = distance(situation.mean(), swapped);
        if (!(reach > 0) || other > IN_PART * stated || refuted(situation, swapped)) {
            return;
        }
        boolean othersFit = situation.others().stream().filter(one -> !one.sameFeature())
            .allMatch(one -> distance(one.mean(), swapped) <= IN_PART * distance(one.mean(), situation.nominal()));
        boolean alone = othersFit
            && (other <= ALONE * stated || other <= leading.shared() && other <= WITHIN_CALIBRATION * stated);
        Draft draft = new Draft("wt% and at% swapped: " + mixUp,
            "Every value was taken in the wrong unit; the swapped nominal is " + Words.percent(swapped[i]) + " % "
                + leading.element() + ", the group reads " + Words.percent(situation.mean()[i]) + " %.")
            .ofGroup().evident(true);
        // A swap that overshoots within the calibration error still explains the whole shift.
        inquiry.weigh(QUESTION, leading, alone ? Math.max(reach, leading.needed()) : reach,
            alone ? draft : draft.atMostInPart());
    }

    private static boolean refuted(Situation situation, double[] swapped) {
        double apart = distance(situation.nominal(), swapped);
        return situation.others().stream().anyMatch(other -> distance(other.mean(), situation.nominal()) <= apart / 2);
    }

    private static double distance(double[] a, double[] b) {
        double largest = 0;
        for (int i = 0; i < a.length; i++) {
            largest = Math.max(largest, Math.abs(LogOdds.of(edged(a[i])) - LogOdds.of(edged(b[i]))));
        }
        return largest;
    }

    private static double edged(double fraction) {
        return Math.max(EDGE, Math.min(1 - EDGE, fraction));
    }
}
