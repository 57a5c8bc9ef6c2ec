package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.element.Element;

/** Stoichiometry with standard atomic weights (IUPAC/CIAAW 2021), worked out separately. */
class ResidueTest {

    private static Residue residue(String id) {
        return ResidueTable.standard().byId(id).orElseThrow();
    }

    private static double percent(Map<Element, Double> fractions, String symbol) {
        return 100 * fractions.get(Element.of(symbol));
    }

    @ParameterizedTest
    @CsvSource({"cuprous-oxide,Cu,88.819", "cupric-oxide,Cu,79.887", "tin-dioxide,Sn,78.768",
        "tin-monoxide,Sn,88.123", "germania,Ge,69.417", "gallium-oxide,Ga,74.394", "indium-oxide,In,82.712",
        "lead-oxide,Pb,92.832", "bismuth-oxide,Bi,89.699", "titania,Ti,59.935", "chromia,Cr,68.421",
        "hematite,Fe,69.943", "zinc-oxide,Zn,80.340", "silver-sulphide,Ag,87.062", "silica,Si,46.744",
        "silicon-carbide,Si,70.044", "alumina,Al,52.926", "silicone-oil,C,32.395", "silicone-oil,H,8.156",
        "silicone-oil,O,21.575", "silicone-oil,Si,37.874"})
    void mass_percent_of_residues(String id, String symbol, double expected) {
        assertThat(percent(residue(id).massFractions(), symbol)).isCloseTo(expected, within(2e-3));
    }

    @Test
    void a_residue_not_packaged_is_not_found() {
        assertThat(ResidueTable.standard().byId("ketchup")).isEmpty();
    }

    @Test
    void every_residue_is_a_material_with_a_source() {
        assertThat(ResidueTable.standard().all()).hasSizeGreaterThan(20).allSatisfy(residue -> {
            assertThat(residue.material().densityGramPerCm3()).isBetween(0.5, 10.0);
            assertThat(residue.source()).isNotBlank();
            assertThat(residue.kind()).isNotBlank();
        });
    }

    @ParameterizedTest
    @ValueSource(strings = {"SiO2!", "2SiO2", "Si-O2", "Si O2", "si", ""})
    void a_formula_that_cannot_be_read_is_refused(String formula) {
        assertThatThrownBy(() -> Residue.ofFormula("x", "x", "oxide", formula, 2, "invented"))
            .hasMessageContaining("such as Al2O3, got \"" + formula + "\"");
    }
}
