package surfeit.xray;

import java.util.Map;
import surfeit.element.Element;

/** Lines and materials used all over these tests. */
final class Samples {
    static final Element SI = Element.of("Si");
    static final Element CU = Element.of("Cu");
    static final Element AG = Element.of("Ag");
    static final Element AU = Element.of("Au");
    static final Element O = Element.of("O");
    static final Element C = Element.of("C");

    private Samples() {
    }

    static Line line(String symbol, String name) {
        return LineTable.standard().line(Element.of(symbol), name).orElseThrow();
    }

    static Material pure(String symbol) {
        return Material.pure(Element.of(symbol));
    }

    /** Ag-Cu brazing alloy, 71.9 wt% Ag. */
    static Material silverCopper() {
        return Material.byVolumes(Map.of(AG, 0.719, CU, 0.281));
    }

    /** The alloy of the Monte Carlo cases: Au with 18.6 at% (3.1553 wt%) Si, density by volumes 15.692 g/cm³. */
    static Material goldSilicon() {
        return Material.byVolumes(Map.of(AU, 0.968447, SI, 0.031553));
    }
}
