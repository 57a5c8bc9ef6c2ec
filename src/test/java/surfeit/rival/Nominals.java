package surfeit.rival;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import surfeit.composition.Basis;
import surfeit.composition.NominalFractions;
import surfeit.composition.NominalText;
import surfeit.element.Element;
import surfeit.xray.ProfileCache;

/** Physics and shifts of nominal alloys, for tests. */
final class Nominals {
    private Nominals() {
    }

    static GroupPhysics physics(String atomicPercent, double beamEnergyKev) {
        NominalFractions fractions = NominalText.parse(atomicPercent, Basis.ATOMIC).resolve();
        return new GroupPhysics(new AlloyInputs(fractions.elements(), fractions.middles(), beamEnergyKev, 35, 130,
            Map.of()),
            new ProfileCache());
    }

    /** A shift of an element by so many percent of its nominal, without scatter. */
    static Shift shift(GroupPhysics physics, String symbol, double factor) {
        int i = physics.elements().indexOf(Element.of(symbol));
        double nominal = physics.nominal()[i];
        double size = LogOdds.of(nominal * factor) - LogOdds.of(nominal);
        return new Shift(i, physics.elements().get(i), size > 0 ? 1 : -1, nominal, Math.abs(size), 0, 0,
            Optional.empty(),
            Optional.empty());
    }

    static List<Element> elements(String... symbols) {
        return List.of(symbols).stream().map(Element::of).toList();
    }
}
