package surfeit.segregation.sums;

import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import surfeit.composition.CompositionException;
import surfeit.composition.Nominal;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.spot.Sample;

/**
 * The nominal a sample's spots are compared with: closed atomic fractions, less the excluded elements and those it says
 * there are none of. These are foreign where they are found.
 */
public final class ClosedNominal {
    private ClosedNominal() {
    }

    /** @throws CompositionException where fewer than two elements are left, or one of them is all of it */
    public static NominalFractions of(Nominal nominal, Sample sample) {
        NominalFractions stated = nominal.resolve();
        Set<Element> left = new TreeSet<>(sample.excludedElements());
        for (int i = 0; i < stated.size(); i++) {
            if (stated.high(i) == 0) {
                left.add(stated.elements().get(i));
            }
        }
        NominalFractions fractions = stated.without(left);
        if (fractions.size() < 2) {
            throw new CompositionException(CompositionException.Kind.TOO_FEW_ELEMENTS, String.format(Locale.ROOT,
                "The nominal less the excluded elements and those of 0 has %d element(s); at least two are needed.",
                fractions.size()));
        }
        return fractions.requireComparable();
    }
}
