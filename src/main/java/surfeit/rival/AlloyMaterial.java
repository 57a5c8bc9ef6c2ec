package surfeit.rival;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import surfeit.composition.Basis;
import surfeit.composition.Closure;
import surfeit.element.Element;
import surfeit.xray.Material;

/** Closed atomic fractions as a material for the depth models. Stateless. */
final class AlloyMaterial {

    private AlloyMaterial() {
    }

    static double[] massFractions(List<Element> elements, double[] atomic) {
        return Closure.close(atomic, Closure.divisors(elements, Basis.ATOMIC, Basis.MASS));
    }

    /** A mean may hold a slightly negative minor element; a material cannot. */
    static double[] positive(double[] atomic) {
        double[] cut = atomic.clone();
        for (int i = 0; i < cut.length; i++) {
            cut[i] = Math.max(cut[i], 0);
        }
        return cut;
    }

    /** The material; its density is only a stand-in where the elements' volumes do not give one. */
    static Material of(List<Element> elements, double[] massFractions) {
        Map<Element, Double> parts = new TreeMap<>();
        for (int i = 0; i < massFractions.length; i++) {
            parts.put(elements.get(i), massFractions[i]);
        }
        return Material.of(parts, density(elements, massFractions).orElse(1));
    }

    /** Density by volumes, g/cm³; empty with gases among the elements or an element of unknown density. */
    static OptionalDouble density(List<Element> elements, double[] massFractions) {
        double gases = 0;
        double volume = 0;
        for (int i = 0; i < massFractions.length; i++) {
            Element element = elements.get(i);
            if (element.gasAtRoomTemperature() || element.density().isEmpty()) {
                gases += massFractions[i];
            } else {
                volume += massFractions[i] / element.density().getAsDouble();
            }
        }
        return gases > Material.MOST_GAS_FORMERS ? OptionalDouble.empty() : OptionalDouble.of(1 / volume);
    }
}
