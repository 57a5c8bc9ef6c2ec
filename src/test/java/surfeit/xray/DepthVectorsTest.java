package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import surfeit.element.Element;

/** The depth model against an independent Monte Carlo; tolerances stand in shared/vectors/physics-depth.json. */
class DepthVectorsTest {
    private Material host;
    private DepthProfile profile;
    private double chi;
    private JsonNode truth;
    private JsonNode tolerance;

    static List<JsonNode> cases() {
        return PhysicsVectors.cases("depth");
    }

    private void read(JsonNode vector) {
        host = Material.of(PhysicsVectors.massFractions(vector.get("host_mass_fractions")),
            vector.get("density_g_cm3").asDouble());
        profile = DepthProfile.of(host, Element.of(vector.get("emitter").asText()).atomicNumber(),
            Family.valueOf(vector.get("shell").asText()), vector.get("edge_keV").asDouble(),
                vector.get("E0_keV").asDouble());
        chi = Absorption.chi(vector.get("mu_cm2_g").asDouble(), vector.get("takeoff_deg").asDouble());
        truth = vector.get("mc");
        tolerance = vector.get("suggested_rel_tolerance");
    }

    private void close(double ours, double expected, String kind) {
        assertThat(ours).as(kind).isCloseTo(expected, within(tolerance.get(kind).asDouble() * expected));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void generation_absorption_and_depths_agree_with_monte_carlo(JsonNode vector) {
        read(vector);
        close(profile.surfaceIonisation(), truth.get("phi0").asDouble(), "phi0");
        close(profile.generated(), truth.get("F_g_cm2").asDouble(), "F");
        close(profile.meanMassDepth(), truth.get("Rbar_g_cm2").asDouble(), "Rbar");
        close(profile.absorptionFactor(chi), truth.get("f35").asDouble(), "f35");
        close(1 - profile.absorptionFactor(chi), 1 - truth.get("f35").asDouble(), "one_minus_f35");
        close(host.depthNm(profile.massDepthOfShare(0.5, chi)), truth.get("d50_nm").asDouble(), "d50");
        close(host.depthNm(profile.massDepthOfShare(0.9, chi)), truth.get("d90_nm").asDouble(), "d90");
        truth.get("share_top_nm").properties().forEach(top -> close(
            profile.shareOfTop(host.massDepth(Double.parseDouble(top.getKey())), chi), top.getValue().asDouble(),
            top.getKey().equals("200") ? "share_top_200" : "share_top_10_50_100"));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void stated_bounds_hold_the_monte_carlo_value(JsonNode vector) {
        read(vector);
        DepthFigures emitted = DepthFigures.of(profile, host, chi, SignalDepthQuery.USUAL_TOP_DEPTHS_NM);
        holds(emitted.depth50Nm(), truth.get("d50_nm").asDouble());
        holds(emitted.depth90Nm(), truth.get("d90_nm").asDouble());
        holds(DepthFigures.of(profile, host, 0, SignalDepthQuery.USUAL_TOP_DEPTHS_NM).meanNm(),
            host.depthNm(truth.get("Rbar_g_cm2").asDouble()));
        JsonNode shares = truth.get("share_top_nm");
        emitted.shareOfTop().stream().filter(top -> shares.has(Integer.toString((int) top.depthNm())))
            .forEach(top -> holds(top.share(), shares.get(Integer.toString((int) top.depthNm())).asDouble()));
        double lost = 1 - profile.absorptionFactor(chi);
        holds(ModelBounds.absorption(profile, lost, lost, lost), truth.get("f35").asDouble());
    }

    @ParameterizedTest
    @MethodSource("cases")
    void lateral_radii_lie_where_the_docs_say(JsonNode vector) {
        read(vector);
        double diameter = LateralSpread.reedDiameterNm(host, vector.get("edge_keV").asDouble(),
            vector.get("E0_keV").asDouble());
        assertThat(truth.get("lateral_r50_nm").asDouble() / diameter).isBetween(0.25, 0.375);
        assertThat(truth.get("lateral_r90_nm").asDouble() / diameter).isBetween(0.655, 0.955);
    }

    private static void holds(Estimate estimate, double value) {
        assertThat(value).as(estimate.toString()).isBetween(estimate.low(), estimate.high());
    }
}
