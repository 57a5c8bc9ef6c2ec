package surfeit.segregation.screening;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;
import surfeit.segregation.answer.Verdict;
import surfeit.spot.Spot;

/**
 * What one spot shows by itself: its closed fractions against nominal, as a screening.
 *
 * @param spot     the spot
 * @param group    the group it belongs to in the answer by feature
 * @param elements one reading per closed element
 * @param foreign  its numbers for elements outside the nominal, as shares of everything reported and not excluded
 */
public record SpotReading(Spot spot, String group, List<ElementReading> elements, List<ForeignReading> foreign) {

    /**
     * One element of one spot.
     *
     * @param atomicFraction closed fraction; values below their limit count as zero
     * @param uncertainty    standard uncertainty of this one spot: stated, from counts, or the scatter of the spots
     * @param belowLimit     true where it is below its limit or not listed
     * @param limit          that limit as a closed fraction
     * @param factor         fraction over nominal; empty inside a range
     * @param pAdjusted      p after Benjamini and Hochberg over spots and elements; empty where nothing tells the scatter
     * @param verdict        enriched, depleted or inconclusive; a screening, all flags share one calibration error
     */
    public record ElementReading(Element element, double atomicFraction, OptionalDouble uncertainty, boolean belowLimit,
                                 OptionalDouble limit, double nominalLow, double nominalHigh, OptionalDouble factor,
                                 OptionalDouble pValue, OptionalDouble pAdjusted, Verdict verdict) {
    }

    /** One element outside the nominal. */
    public record ForeignReading(Element element, double atomicFraction) {
    }

    /** True where any element of this spot has this verdict. */
    public boolean shows(Optional<Verdict> verdict) {
        return verdict.isEmpty() || elements.stream().anyMatch(reading -> reading.verdict() == verdict.get());
    }
}
