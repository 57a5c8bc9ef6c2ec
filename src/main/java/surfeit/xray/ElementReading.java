package surfeit.xray;

import java.util.List;
import surfeit.composition.Basis;
import surfeit.composition.Closure;
import surfeit.element.Element;

/**
 * What a spot reads of one element where something is not as the workstation takes it: by mass and by atoms, each with
 * its bounds.
 *
 * <p>Bounds by atoms are those by mass with the other elements in unchanged proportions. Immutable, thread-safe.
 */
public record ElementReading(Estimate massFraction, Estimate atomicFraction) {

    /**
     * The reading of one element beside the others.
     *
     * @param others mass of every element in the order of the list, in any unit; that of the element itself is not used
     */
    static ElementReading of(Estimate massFraction, List<Element> elements, double[] others, int index) {
        return new ElementReading(massFraction, new Estimate(
            atomic(massFraction.value(), elements, others, index), atomic(massFraction.low(), elements, others, index),
            atomic(massFraction.high(), elements, others, index)));
    }

    private static double atomic(double fraction, List<Element> elements, double[] others, int index) {
        double sum = 0;
        for (int j = 0; j < others.length; j++) {
            sum += j == index ? 0 : others[j];
        }
        if (fraction >= 1 || sum == 0) {
            return fraction;
        }
        double[] mass = new double[others.length];
        for (int j = 0; j < mass.length; j++) {
            mass[j] = j == index ? fraction : others[j] / sum * (1 - fraction);
        }
        return Closure.convert(mass, elements, Basis.MASS, Basis.ATOMIC)[index];
    }
}
