package surfeit.xray;

import java.util.Comparator;

/**
 * An analytical line and a peak of another element, how far apart they lie, and whether that peak can be seen at all.
 *
 * <p>{@code separationEv} from the {@code energies} table, {@code fwhmEv} the detector's width at the mean energy,
 * {@code ratio} of the two. {@code borderline}: the class would change if the separation moved by the tables' own
 * uncertainty. {@code relativeStrength}: counts of the disturbing peak over counts of the analytical line, at equal
 * mass fractions or, where mass fractions were given, at those; good to a factor of about three, infinite where the
 * beam does not excite the analytical line.
 * Immutable, thread-safe.
 */
public record Overlap(Line line, Peak disturber, double separationEv, double fwhmEv, double ratio,
                      OverlapSeverity severity, boolean borderline, double relativeStrength, EnergySource energies) {

    /** The disturber that adds most to an unresolved reading first. */
    public static final Comparator<Overlap> WORST_FIRST =
        Comparator.comparingDouble(Overlap::unresolvedShare).reversed();

    /** Where the two line energies came from, and what uncertainty their separation carries. */
    public enum EnergySource {
        /** X-Ray Data Booklet table 1-3: 1 eV (judgement). */
        BOOKLET,
        /** The full line list: 4 eV for Ka, La and Lb1, 10 eV where an M line or a minor L line is involved. */
        LINE_LIST
    }

    /**
     * What the disturber adds to the line where the line's peak alone is fitted, as a share of the line's own counts.
     *
     * <pre>   relative strength * 4^(-r²) </pre>
     *
     * The least-squares height of one Gaussian fitted to another of the same width, r widths away. Fitting both peaks
     * leaves much less; it is the most an overlap can do. As good as the strength: a factor of about three.
     */
    public double unresolvedShare() {
        return relativeStrength * Math.pow(4, -ratio * ratio);
    }

    /** The other element and its peak, as in {@code Au Ma}. */
    public String with() {
        return disturber.label();
    }
}
