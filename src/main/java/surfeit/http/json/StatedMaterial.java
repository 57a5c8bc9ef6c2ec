package surfeit.http.json;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import surfeit.composition.Basis;
import surfeit.composition.Closure;
import surfeit.composition.Nominal;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.lab.Problem;
import surfeit.xray.Material;
import surfeit.xray.Residue;
import surfeit.xray.ResidueTable;

/**
 * A material as a request states it: an alloy of the catalogue, a nominal composition (it wins over the alloy) or a
 * residue of the packaged table, and its density in g/cm³ where that is known.
 */
record StatedMaterial(Optional<String> alloy, Optional<Nominal> nominal, Optional<Residue> residue,
                      OptionalDouble densityGPerCm3) {

    /** What has been read of a material so far. */
    static final class Fields {
        private Optional<String> alloy = Optional.empty();
        private Optional<Nominal> nominal = Optional.empty();
        private Optional<Residue> residue = Optional.empty();
        private OptionalDouble density = OptionalDouble.empty();

        void readAlloy(JsonInput in) throws IOException {
            alloy = in.text();
        }

        void readNominal(JsonInput in) throws IOException {
            nominal = NominalJson.read(in);
        }

        void readResidue(JsonInput in) throws IOException {
            Optional<String> id = in.text();
            residue = id.flatMap(ResidueTable.standard()::byId);
            if (id.isPresent() && residue.isEmpty()) {
                in.fault(Problem.VALUE_OUT_OF_RANGE, "Expected an id of residues.csv such as silicone-oil or silica, got \""
                    + id.get() + "\".");
            }
        }

        void readDensity(JsonInput in) throws IOException {
            density = in.number("g/cm3");
        }

        /** How many ways the composition was stated in. */
        int ways() {
            return (alloy.isPresent() ? 1 : 0) + (nominal.isPresent() ? 1 : 0) + (residue.isPresent() ? 1 : 0);
        }

        StatedMaterial stated() {
            return new StatedMaterial(alloy, nominal, residue, density);
        }
    }

    /**
     * The material, of the middles of its nominal; the rule of mixtures gives a density that is not stated.
     *
     * @param alloys finds the nominal of a catalogue name
     * @throws IllegalArgumentException where no density can be worked out
     */
    Material material(Function<String, Nominal> alloys) {
        if (residue.isPresent()) {
            Residue known = residue.get();
            return Material.of(known.massFractions(), densityGPerCm3.orElse(known.densityGramPerCm3()));
        }
        NominalFractions fractions = nominal.orElseGet(() -> alloys.apply(alloy.orElseThrow())).resolve();
        double[] mass = Closure.convert(fractions.middles(), fractions.elements(), Basis.ATOMIC, Basis.MASS);
        Map<Element, Double> byElement = new LinkedHashMap<>();
        for (int i = 0; i < mass.length; i++) {
            if (mass[i] > 0) {
                byElement.put(fractions.elements().get(i), mass[i]);
            }
        }
        return densityGPerCm3.isPresent() ? Material.of(byElement, densityGPerCm3.getAsDouble())
            : Material.byVolumes(byElement);
    }
}
