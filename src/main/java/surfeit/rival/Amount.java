package surfeit.rival;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import surfeit.element.Element;

/**
 * How much of a compound there can be on a group's spots, given what else of it was found or looked for.
 *
 * @param deposit the compound
 * @param units   its formula units beside each closed atom, at most; no number where nothing bounds it
 * @param known   what the spectrum says of it
 * @param stated  true where the lab names it
 * @param medium  true where it is a polishing medium, by kind or by what the lab used it for
 */
record Amount(Deposit deposit, double units, Known known, boolean stated, boolean medium) {
    private static final int LIGHT_BELOW_ATOMIC_NUMBER = 11;
    /** A light element may be understated by so many standard uncertainties of the accuracy class. */
    private static final double LIGHT_ELEMENT_SIGMAS = 4;

    /** What the spectrum says of a compound's other elements. */
    enum Known {
        /** All were found. */
        FOUND,
        /** Some were looked for, and bound it. */
        BOUNDED,
        /** None was looked for. */
        UNKNOWN,
        /** It has no other element that X-rays show. */
        NOTHING_TELLS
    }

    static List<Amount> of(List<Deposit> deposits, Situation situation) {
        Set<String> left = situation.handling().residues();
        Set<String> media = situation.handling().polishingResidues();
        double understatement =
            1 / (1 - LIGHT_ELEMENT_SIGMAS * situation.sample().accuracyClass().relativeUncertainty());
        List<Amount> amounts = new ArrayList<>(deposits.size());
        for (Deposit deposit : deposits) {
            String id = deposit.residue().id();
            amounts.add(of(deposit, situation.evidence().beside(), understatement, left.contains(id),
                deposit.isMedium() || media.contains(id)));
        }
        return amounts;
    }

    private static Amount of(Deposit deposit, Map<Element, Evidence.Found> beside, double understatement,
                             boolean stated, boolean medium) {
        if (deposit.markers().isEmpty()) {
            return new Amount(deposit, Double.NaN, Known.NOTHING_TELLS, stated, medium);
        }
        double units = Double.POSITIVE_INFINITY;
        boolean allFound = true;
        for (Map.Entry<Element, Integer> marker : deposit.markers().entrySet()) {
            Evidence.Found found = beside.getOrDefault(marker.getKey(), Evidence.Found.NOT_LOOKED_FOR);
            allFound &= found.perClosedAtom() > 0;
            if (found.most() > 0) {
                double light = marker.getKey().atomicNumber() < LIGHT_BELOW_ATOMIC_NUMBER ? understatement : 1;
                units = Math.min(units, found.most() * light / marker.getValue());
            }
        }
        return Double.isInfinite(units) ? new Amount(deposit, Double.NaN, Known.UNKNOWN, stated, medium)
            : new Amount(deposit, units, allFound ? Known.FOUND : Known.BOUNDED, stated, medium);
    }

    /** Whether it may explain a shift alone: it was found, or named and not ruled out, or nothing could tell. */
    boolean mayStandAlone() {
        return known == Known.FOUND || known == Known.NOTHING_TELLS || stated && known == Known.BOUNDED;
    }
}
