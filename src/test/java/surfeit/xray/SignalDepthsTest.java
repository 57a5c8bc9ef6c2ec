package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import surfeit.element.Element;

class SignalDepthsTest {
    private final ProfileCache profiles = new ProfileCache();

    private SignalDepths of(Material material, Double... beams) {
        return SignalDepths.of(SignalDepthQuery.of(material, List.of(beams)), profiles);
    }

    private static SignalDepth line(SignalDepths.AtBeamEnergy at, String label) {
        return at.lines().stream().filter(depth -> depth.line().label().equals(label)).findFirst().orElseThrow();
    }

    @Test
    void every_selectable_line_is_answered_and_the_line_of_choice_marked() {
        SignalDepths.AtBeamEnergy at15 = of(Samples.silverCopper(), 15.0).byBeamEnergy().get(0);
        assertThat(at15.lines()).extracting(depth -> depth.line().label()).containsExactly("Cu Ka", "Cu La", "Ag La");
        assertThat(at15.lines()).filteredOn(SignalDepth::lineOfChoice).extracting(depth -> depth.line().label())
            .containsExactly("Cu Ka", "Ag La");
        assertThat(at15.withoutLine()).isEmpty();
    }

    @Test
    void an_element_no_line_of_which_is_excited_is_named_not_dropped() {
        SignalDepths.AtBeamEnergy at3 = of(Samples.silverCopper(), 3.0).byBeamEnergy().get(0);
        assertThat(at3.lines()).extracting(depth -> depth.line().label()).containsExactly("Cu La");
        assertThat(at3.withoutLine()).extracting(LineChoice::element).containsExactly(Samples.AG);
    }

    // Pure elements at 15 kV and take-off 35 degrees, XPP worked out separately: Sn L 200/515 nm.
    @Test
    void figures_are_those_of_the_depth_model() {
        SignalDepth tin = line(of(Samples.pure("Sn"), 15.0).byBeamEnergy().get(0), "Sn La");
        assertThat(tin.emitted().depth50Nm().value()).isCloseTo(200, within(2.0));
        assertThat(tin.emitted().depth90Nm().value()).isCloseTo(515, within(5.0));
        assertThat(tin.overvoltage()).isCloseTo(3.82, within(0.01));
        assertThat(tin.emitted().shareOfTop()).extracting(DepthFigures.TopShare::depthNm)
            .containsExactly(1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0);
    }

    @Test
    void emitted_x_rays_come_from_less_deep_than_generated_ones() {
        for (SignalDepths.AtBeamEnergy at : of(Samples.silverCopper(), 5.0, 15.0, 30.0).byBeamEnergy()) {
            assertThat(at.lines()).isNotEmpty().allSatisfy(depth -> {
                assertThat(depth.emitted().meanNm().value()).isLessThan(depth.generated().meanNm().value());
                assertThat(depth.emitted().depth50Nm().value()).isLessThan(depth.generated().depth50Nm().value());
                assertThat(depth.absorptionFactor().value()).isBetween(0.0, 1.0);
            });
        }
    }

    @Test
    void low_overvoltage_widens_the_bounds_and_says_so() {
        SignalDepths.AtBeamEnergy at = of(Samples.silverCopper(), 15.0).byBeamEnergy().get(0);
        SignalDepth weak = line(at, "Cu Ka");
        assertThat(weak.caveats()).contains(DepthCaveat.LOW_OVERVOLTAGE, DepthCaveat.POORLY_EXCITED);
        assertThat(weak.emitted().depth90Nm().low()).isCloseTo(weak.emitted().depth90Nm().value() / 1.31, within(1e-9));
        assertThat(line(at, "Ag La").caveats()).doesNotContain(DepthCaveat.LOW_OVERVOLTAGE);
        assertThat(line(at, "Cu La").caveats()).contains(DepthCaveat.SOFT_LINE, DepthCaveat.DENSITY_FROM_ELEMENTS);
        assertThat(Stream.of(DepthCaveat.values()).map(DepthCaveat::detail))
            .allSatisfy(text -> assertThat(text).endsWith("."));
    }

    @Test
    void a_tilt_away_from_the_detector_brings_the_signal_nearer_to_the_surface() {
        SignalDepthQuery level = SignalDepthQuery.of(Samples.pure("Sn"), List.of(15.0));
        SignalDepthQuery away = new SignalDepthQuery(level.material(), level.beamEnergiesKev(), 35, -20, 0,
            Resolution.USUAL, 0,
            new TreeSet<>());
        SignalDepth tilted = line(SignalDepths.of(away, profiles).byBeamEnergy().get(0), "Sn La");
        assertThat(away.effectiveTakeOffDeg()).isCloseTo(15, within(1e-9));
        assertThat(tilted.emitted().depth50Nm().value()).isLessThan(200);
        assertThat(tilted.caveats()).contains(DepthCaveat.TILTED);
    }

    @Test
    void overlaps_with_own_and_with_other_elements_are_listed() {
        Material alloy = Material.byVolumes(Map.of(Element.of("Sn"), 0.9, Element.of("Sb"), 0.1));
        SignalDepthQuery query = new SignalDepthQuery(alloy, List.of(15.0), 35, 0, 0, Resolution.USUAL, 0,
            new TreeSet<>(Set.of(Element.of("Ca"))));
        SignalDepths.AtBeamEnergy at = SignalDepths.of(query, profiles).byBeamEnergy().get(0);
        assertThat(line(at, "Sb La").overlaps()).extracting(Overlap::with).contains("Sn Lb1", "Ca Ka");
    }

    @Test
    void the_lateral_diameter_holds_the_probe() {
        SignalDepthQuery query = new SignalDepthQuery(Samples.pure("Cu"), List.of(20.0), 35, 0, 0, Resolution.USUAL,
            400,
            new TreeSet<>());
        assertThat(line(SignalDepths.of(query, profiles).byBeamEnergy().get(0), "Cu Ka").lateralDiameterNm())
            .isCloseTo(Math.hypot(400, LateralSpread.reedDiameterNm(Samples.pure("Cu"), 8.979, 20)), within(1e-6));
    }

    @Test
    void wrong_questions_are_refused_with_the_reason() {
        Material copper = Samples.pure("Cu");
        assertThatThrownBy(() -> SignalDepthQuery.of(copper, List.of())).hasMessageContaining("got 0");
        assertThatThrownBy(() -> SignalDepthQuery.of(copper, List.of(0.5))).hasMessageContaining("0.5 keV");
        assertThatThrownBy(() -> new SignalDepthQuery(copper, List.of(15.0), 35, -40, 0, Resolution.USUAL, 0,
            new TreeSet<>()))
            .hasMessageContaining("-40.0 degrees hides the detector");
        assertThatThrownBy(() -> new SignalDepthQuery(copper, List.of(15.0), 35, 120, 0, Resolution.USUAL, 0,
            new TreeSet<>()))
            .hasMessageContaining("120.0 degrees");
    }

    @Test
    void backscatter_and_electron_range_are_given_for_orientation() {
        SignalDepths depths = of(Samples.pure("Cu"), 20.0);
        assertThat(depths.backscatterCoefficient()).isCloseTo(0.309, within(0.016));
        assertThat(depths.byBeamEnergy().get(0).electronRangeNm()).isCloseTo(1460, within(15.0));
    }

    @Test
    void thicknesses_of_the_top_may_be_chosen_and_come_in_order() {
        SignalDepthQuery usual = SignalDepthQuery.of(Samples.silverCopper(), List.of(15.0));
        SignalDepths own = SignalDepths.of(new SignalDepthQuery(usual.material(), List.of(15.0), 35, 0, 0,
            Resolution.USUAL, 0, usual.others(), List.of(30.0, 3.0, 30.0)), profiles);
        assertThat(line(own.byBeamEnergy().get(0), "Ag La").emitted().shareOfTop())
            .extracting(DepthFigures.TopShare::depthNm).containsExactly(3.0, 30.0);
        assertThatThrownBy(() -> new SignalDepthQuery(usual.material(), List.of(15.0), 35, 0, 0, Resolution.USUAL, 0,
            usual.others(), List.of(-3.0))).hasMessageContaining("-3.0 nm");
    }

    // Fiori and Newbury's width at 130 eV: Cu K 149.3 eV. Elam's coefficient: Ag L in Ag 514.8 cm2/g.
    @Test
    void every_line_comes_with_its_width_and_its_absorption() {
        assertThat(line(of(Samples.pure("Cu"), 15.0).byBeamEnergy().get(0), "Cu Ka").fwhmEv())
            .isCloseTo(149.3, within(0.2));
        Estimate mu = line(of(Samples.pure("Ag"), 15.0).byBeamEnergy().get(0), "Ag La").massAbsorption();
        assertThat(mu.value()).isCloseTo(514.8, within(0.5));
        assertThat(mu.low()).isCloseTo(0.9 * mu.value(), within(1e-9));
        assertThat(mu.high()).isCloseTo(1.1 * mu.value(), within(1e-9));
    }
}
