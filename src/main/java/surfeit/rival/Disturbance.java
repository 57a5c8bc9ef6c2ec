package surfeit.rival;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import surfeit.element.Element;
import surfeit.xray.Overlap;
import surfeit.xray.OverlapSeverity;

/**
 * All peaks of one element on a line of another, taken together.
 *
 * @param by       the disturbing element
 * @param words    its worst peak and the line, {@code Cr Kb on Mn Ka}
 * @param share    counts it adds to the line where the fit does not part them, over the line's own counts
 * @param blur     overlap of the nearest pair of peaks, 4^(-r²): the share of the line's counts a fit may give away
 * @param severity of the nearest pair
 */
record Disturbance(Element by, String words, double share, double blur, OverlapSeverity severity) {

    /** Overlaps of one line, put together by disturbing element. */
    static List<Disturbance> of(List<Overlap> overlaps) {
        Map<Element, Disturbance> byElement = new TreeMap<>();
        for (Overlap overlap : overlaps) {
            byElement.merge(overlap.disturber().element(), one(overlap), Disturbance::with);
        }
        return List.copyOf(new ArrayList<>(byElement.values()));
    }

    private static Disturbance one(Overlap overlap) {
        return new Disturbance(overlap.disturber().element(), overlap.with() + " on " + overlap.line(),
            overlap.unresolvedShare(), Math.pow(4, -overlap.ratio() * overlap.ratio()), overlap.severity());
    }

    private Disturbance with(Disturbance other) {
        Disturbance stronger = other.share > share ? other : this;
        Disturbance nearer = other.blur > blur ? other : this;
        return new Disturbance(by, stronger.words, share + other.share, nearer.blur, nearer.severity);
    }

    /** Fitting both peaks leaves much to chance: the pair lies within half a width of the detector. */
    boolean hardToFit() {
        return severity == OverlapSeverity.SEVERE || severity == OverlapSeverity.STRONG;
    }
}
