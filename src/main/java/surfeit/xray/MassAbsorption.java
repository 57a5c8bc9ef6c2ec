package surfeit.xray;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import surfeit.element.Element;
import surfeit.element.ElementTable;
import surfeit.element.ReferenceTable;

/**
 * Mass absorption coefficients at the analytical lines, cm²/g: photoelectric, absorbers H to Cf.
 *
 * <p>Mixtures add by mass fraction: mu = sum C mu_j. Source: Elam, Ravel &amp; Sieber, Radiat. Phys. Chem. 63 (2002)
 * 121-128, through XrayDB 4.4.7. Tables disagree; see {@link #relativeSpread}. Immutable, thread-safe.
 */
public final class MassAbsorption {
    private final Map<String, double[]> byLine = new HashMap<>();
    private final String sha256;

    private MassAbsorption(ReferenceTable table) {
        sha256 = table.sha256();
        table.rows().forEach(row -> byLine.put(row.get("emitter") + " " + row.get("line"), coefficients(row)));
    }

    /** The packaged table, read once. */
    public static MassAbsorption standard() {
        return Holder.STANDARD;
    }

    /** Coefficient of a pure absorber for a line, cm²/g. */
    public double coefficient(Line line, Element absorber) {
        return of(coefficients(line), line, absorber);
    }

    /** Coefficient of a material for a line, cm²/g. */
    public double coefficient(Line line, Material material) {
        double[] byAbsorber = coefficients(line);
        double sum = 0;
        for (Map.Entry<Element, Double> part : material.massFractions().entrySet()) {
            sum += part.getValue() * of(byAbsorber, line, part.getKey());
        }
        return sum;
    }

    /**
     * Relative disagreement to carry for a line's coefficient: 0.10 from 1 keV up, 0.25 for softer lines.
     *
     * <p>Elam against Chantler tables: Si Ka in Si 9 %, Si Ka in Au 8 %, Au Ma in Au 7 %, C Ka in C 10 %, O Ka in O
     * 8 %, O Ka in Au 22 %, Cu La in Cu 27 %. Set from these (judgement).
     */
    public static double relativeSpread(Line line) {
        return LineChoice.soft(line) ? 0.25 : 0.10;
    }

    /** SHA-256 of the packaged table. */
    public String sha256() {
        return sha256;
    }

    private double[] coefficients(Line line) {
        return Optional.ofNullable(byLine.get(line.label())).orElseThrow(() -> new IllegalArgumentException(
            "No mass absorption is tabulated for " + line.label() + "."));
    }

    private static double of(double[] byAbsorber, Line line, Element absorber) {
        double value = absorber.atomicNumber() < byAbsorber.length ? byAbsorber[absorber.atomicNumber()] : 0;
        if (!(value > 0)) {
            throw new IllegalArgumentException("No mass absorption is tabulated for " + line.label() + " in "
                + absorber + ".");
        }
        return value;
    }

    private static double[] coefficients(Map<String, String> row) {
        double[] byAtomicNumber = new double[ElementTable.standard().all().size() + 1];
        for (Element element : ElementTable.standard().all()) {
            String text = row.getOrDefault(element.symbol(), "");
            if (!text.isBlank()) {
                byAtomicNumber[element.atomicNumber()] = Double.parseDouble(text);
            }
        }
        return byAtomicNumber;
    }

    private static final class Holder {
        private static final MassAbsorption STANDARD =
            new MassAbsorption(ReferenceTable.packaged("mass-absorption.csv"));
    }
}
