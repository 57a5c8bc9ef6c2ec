package surfeit.rival;

import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import surfeit.element.Element;

/**
 * The correction was made for another material: an element of the alloy was left out before normalising, or the raw
 * total says that something is missing, or was forced to 100 and says nothing.
 *
 * <p>Leaving an element out scales the others alike; what changes their ratio is that absorption and backscatter were
 * computed without it. That is weighed with the depth model: emission of each line from the material with the element,
 * over that from the material without. An element that the spots do report was known to the correction.
 */
final class TotalCause {
    /** Beyond these a raw total counts as low or high. Common practice, no source. */
    private static final double LOW = 0.98;
    private static final double HIGH = 1.02;
    /** Mass fraction of oxygen that may hide behind totals forced to 100 (judgement). */
    private static final double HIDDEN = 0.10;
    private static final double MOST_MISSING = 0.5;
    private static final Question LEFT_OUT = new Question(Cause.LEFT_OUT_ELEMENT,
        "Put every element of the spectrum on the workstation's list and quantify again before normalising.",
        Sources.ABSORPTION);
    private static final Question TOTAL = new Question(Cause.RAW_TOTAL,
        "Quantify with carbon and oxygen on the list, against a current standard, without normalising, on a level "
            + "place.", Sources.ABSORPTION + "; limits of the total: common practice, no source");

    private TotalCause() {
    }

    static void weigh(Inquiry inquiry, Shift leading) {
        leftOut(inquiry, leading);
        total(inquiry, leading);
    }

    private static void leftOut(Inquiry inquiry, Shift leading) {
        if (inquiry.situation().missing().isEmpty()) {
            return;
        }
        Map<Element, Double> missing = new TreeMap<>(inquiry.situation().missing());
        missing.keySet().removeIf(element ->
            inquiry.evidence().beside().getOrDefault(element, Evidence.Found.NOT_LOOKED_FOR).perClosedAtom() > 0);
        double gone = missing.values().stream().mapToDouble(Double::doubleValue).sum();
        if (missing.isEmpty() || !(gone > 0 && gone < 1)) {
            return;
        }
        double reach = inquiry.furthest(physics -> physics.leftOutReach(missing, leading));
        String symbols = missing.keySet().stream().sorted().map(Element::symbol).collect(Collectors.joining(", "));
        if (Inquiry.worthwhile(leading, reach)) {
            inquiry.weigh(LEFT_OUT, leading, reach, new Draft("elements left out before normalising: " + symbols,
                "The correction was made as if the alloy held none of it, at its nominal amount.").ofGroup()
                .fromPhysics()
                .evident(true));
        }
    }

    private static void total(Inquiry inquiry, Shift leading) {
        Evidence.Totals totals = inquiry.evidence().totals();
        Element oxygen = Element.of("O");
        boolean held = inquiry.situation().elements().contains(oxygen)
            || inquiry.evidence().beside().containsKey(oxygen);
        if (totals.allNormalised()) {
            double reach =
                held ? 0 : inquiry.furthest(physics -> physics.leftOutReach(Map.of(oxygen, HIDDEN), leading));
            if (Inquiry.worthwhile(leading, reach)) {
                Draft draft = new Draft("raw totals forced to 100 %: a missing element would not show",
                    "Oxygen of 10 % of the mass is there and was left out (judgement).");
                inquiry.weigh(TOTAL, leading, reach,
                    draft.ofGroup().fromPhysics().atMostInPart().needing("total_percent"));
            }
        } else if (totals.lowest() < LOW) {
            double gone = Math.min(1 - totals.lowest(), MOST_MISSING);
            double reach = inquiry.furthest(physics -> physics.leftOutReach(Map.of(oxygen, gone), leading));
            inquiry.weigh(TOTAL, leading, reach, new Draft(
                "raw totals as low as " + Words.percent(totals.lowest()) + " %",
                "What is missing absorbs like oxygen, and the correction did not know of it; a rough or tilted surface "
                    + "or a hole shows alike, see tilt.").ofGroup().fromPhysics().keptAnyway().evident(true));
        } else if (totals.highest() > HIGH) {
            inquiry.weigh(TOTAL, leading, 0, new Draft(
                "raw totals as high as " + Words.percent(totals.highest()) + " %",
                "Beam current or standard off: all elements are scaled alike, their ratio is not.").ofGroup()
                .keptAnyway().evident(true));
        }
    }
}
