package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Monte Carlo cases at 15 kV of shared/vectors/physics-patch.json, and lateral radii of physics-depth.json. */
class PatchDilutionTest {
    // Terminal solid solutions of Ag-Cu at the eutectic: 92.53 and 8.27 wt% Cu (NIST solder phase diagrams).
    private static final double PATCH_CU = 0.9253;
    private static final double MATRIX_CU = 0.0827;
    private static final Material COPPER_RICH = Material.byVolumes(Map.of(Samples.CU, PATCH_CU, Samples.AG,
        1 - PATCH_CU));

    private static List<JsonNode> cases(String system) {
        return PhysicsVectors.cases("patch").stream().filter(node -> node.get("sys").asText().startsWith(system))
            .toList();
    }

    static List<JsonNode> copperPlugs() {
        return cases("Cu-rich plug");
    }

    static List<JsonNode> siliconPlugs() {
        return cases("Si plug");
    }

    static List<JsonNode> siliconDiscs() {
        return cases("Si disc");
    }

    static List<JsonNode> depthCases() {
        return PhysicsVectors.cases("depth");
    }

    @ParameterizedTest
    @MethodSource("copperPlugs")
    void bounds_hold_what_a_copper_rich_plug_reports_by_either_copper_line(JsonNode vector) {
        double byL = (vector.get("wB_CuL").asDouble() - MATRIX_CU) / (PATCH_CU - MATRIX_CU);
        holds(share(COPPER_RICH, "Cu", "La", vector), byL);
        holds(share(COPPER_RICH, "Cu", "Ka", vector), vector.get("share").asDouble());
        Estimate truth = PatchDilution.trueFraction(vector.get("wB_CuL").asDouble(), MATRIX_CU,
            share(COPPER_RICH, "Cu", "La", vector));
        holds(truth, PATCH_CU);
    }

    @ParameterizedTest
    @MethodSource("siliconPlugs")
    void bounds_hold_what_a_silicon_plug_in_gold_reports(JsonNode vector) {
        Estimate share = share(Samples.pure("Si"), "Si", "Ka", vector);
        holds(share, vector.get("wB").asDouble());
        holds(PatchDilution.trueFraction(vector.get("wB").asDouble(), 0, share), 1);
    }

    @ParameterizedTest
    @MethodSource("siliconDiscs")
    void a_flake_is_diluted_by_depth_however_wide_it_is(JsonNode vector) {
        Material silicon = Samples.pure("Si");
        Line line = Samples.line("Si", "Ka");
        double depthShare = DepthProfile.of(silicon, line, 15)
            .shareOfTop(silicon.massDepth(200), Absorption.chi(line, silicon, 35));
        Estimate share = PatchDilution.flakeShare(share(silicon, "Si", "Ka", vector), depthShare);
        holds(share, vector.get("wB").asDouble());
        assertThat(share.high()).isLessThan(0.2);
    }

    @ParameterizedTest
    @MethodSource("depthCases")
    void bounds_hold_the_radii_of_half_and_nine_tenths_of_the_signal(JsonNode vector) {
        Material host = Material.of(PhysicsVectors.massFractions(vector.get("host_mass_fractions")),
            vector.get("density_g_cm3").asDouble());
        Line line = PhysicsVectors.line(vector.get("line").asText());
        double beam = vector.get("E0_keV").asDouble();
        holds(PatchDilution.share(host, line, beam, vector.get("mc").get("lateral_r50_nm").asDouble(), 0), 0.5);
        holds(PatchDilution.share(host, line, beam, vector.get("mc").get("lateral_r90_nm").asDouble(), 0), 0.9);
    }

    @Test
    void a_radius_of_a_third_of_the_source_holds_half_of_the_signal() {
        Line line = Samples.line("Cu", "La");
        Material copper = Samples.pure("Cu");
        double diameter = LateralSpread.reedDiameterNm(copper, line.edgeEnergyKev(), 15);
        assertThat(PatchDilution.share(copper, line, 15, diameter / 3, 0).value()).isCloseTo(0.5, within(1e-9));
    }

    @Test
    void a_wide_probe_dilutes_more() {
        Line line = Samples.line("Cu", "La");
        assertThat(PatchDilution.share(Samples.pure("Cu"), line, 15, 300, 1000).value())
            .isLessThan(PatchDilution.share(Samples.pure("Cu"), line, 15, 300, 0).value());
    }

    @Test
    void the_true_fraction_is_bounded_within_nothing_and_pure() {
        Estimate wide = PatchDilution.trueFraction(0.5, 0.1, new Estimate(0.5, 0, 0.8));
        assertThat(wide.value()).isCloseTo(0.9, within(1e-12));
        assertThat(wide.low()).isCloseTo(0.6, within(1e-12));
        assertThat(wide.high()).isEqualTo(1);
        Estimate depleted = PatchDilution.trueFraction(0.1, 0.5, new Estimate(0.5, 0, 1));
        assertThat(depleted.low()).isZero();
        assertThat(depleted.high()).isCloseTo(0.1, within(1e-12));
        assertThat(PatchDilution.trueFraction(0.3, 0.3, new Estimate(0.5, 0, 1)).high()).isEqualTo(0.3);
    }

    @Test
    void questions_without_an_answer_are_refused() {
        Line line = Samples.line("Cu", "Ka");
        assertThatThrownBy(() -> PatchDilution.share(COPPER_RICH, line, 15, 0, 0)).hasMessageContaining("0.0 nm");
        assertThatThrownBy(() -> PatchDilution.share(COPPER_RICH, line, 8, 100, 0)).hasMessageContaining("Cu Ka");
        assertThatThrownBy(() -> PatchDilution.flakeShare(new Estimate(1, 1, 1), 1.2)).hasMessageContaining("1.2");
    }

    private static Estimate share(Material patch, String symbol, String line, JsonNode vector) {
        return PatchDilution.share(patch, Samples.line(symbol, line), 15, vector.get("a_nm").asDouble(), 0);
    }

    private static void holds(Estimate estimate, double value) {
        assertThat(value).as(estimate.toString()).isBetween(estimate.low() - 1e-9, estimate.high() + 1e-9);
    }
}
