package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
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
    void silicone_oil_as_eds_sees_it_has_no_hydrogen() {
        Map<Element, Double> visible = residue("silicone-oil").visibleMassFractions();
        assertThat(percent(visible, "C")).isCloseTo(35.272, within(2e-3));
        assertThat(percent(visible, "O")).isCloseTo(23.491, within(2e-3));
        assertThat(percent(visible, "Si")).isCloseTo(41.237, within(2e-3));
        assertThat(percent(residue("silicone-oil").visibleAtomicFractions(), "C")).isCloseTo(50, within(1e-9));
        assertThat(percent(residue("silicone-oil").visibleAtomicFractions(), "Si")).isCloseTo(25, within(1e-9));
    }

    @Test
    void silicon_per_oxygen_and_per_carbon() {
        assertThat(residue("silica").atomicRatio(Samples.SI, Samples.O)).isEqualTo(0.5);
        assertThat(residue("silica").massRatio(Samples.SI, Samples.O)).isCloseTo(0.8777, within(1e-4));
        assertThat(residue("silicone-oil").atomicRatio(Samples.SI, Samples.O)).isEqualTo(1);
        assertThat(residue("silicone-oil").massRatio(Samples.SI, Samples.O)).isCloseTo(1.7554, within(1e-4));
        assertThat(residue("silicone-oil").massRatio(Samples.SI, Samples.C)).isCloseTo(1.1691, within(1e-4));
    }

    @Test
    void the_scarcest_marker_limits_what_a_residue_can_explain() {
        Map<Element, Double> found = Map.of(Samples.C, 0.10, Samples.O, 0.02, Samples.SI, 0.08);
        assertThat(residue("silicone-oil").mostAtomic(Samples.SI, found)).hasValue(0.02);
        assertThat(residue("silica").mostAtomic(Samples.SI, found)).hasValue(0.01);
        assertThat(residue("silica").mostAtomic(Samples.SI, Map.of(Samples.C, 0.3))).hasValue(0);
        assertThat(residue("carbon").mostAtomic(Samples.C, found)).isEmpty();
    }

    @Test
    void residues_are_found_by_the_element_they_hold() {
        assertThat(ResidueTable.standard().holding(Samples.SI)).extracting(Residue::id)
            .containsExactlyInAnyOrder("silicone-oil", "silica", "silicon-carbide");
        assertThat(ResidueTable.standard().byId("ketchup")).isEmpty();
    }

    @Test
    void every_residue_is_a_material_with_a_source() {
        assertThat(ResidueTable.standard().all()).hasSizeGreaterThan(20).allSatisfy(residue -> {
            assertThat(residue.material().densityGramPerCm3()).isBetween(0.5, 10.0);
            assertThat(residue.source()).isNotBlank();
            assertThat(residue.kind()).isNotBlank();
        });
        assertThat(ResidueTable.standard().sha256()).hasSize(64);
    }

    @Test
    void a_formula_that_cannot_be_read_is_refused() {
        assertThatThrownBy(() -> Residue.ofFormula("x", "x", "oxide", "SiO2!", 2, "invented"))
            .hasMessageContaining("SiO2!");
        assertThatThrownBy(() -> residue("silica").atomicRatio(Samples.C, Samples.O))
            .hasMessageContaining("holds no C");
    }
}
