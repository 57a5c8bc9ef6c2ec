package surfeit.composition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class LeverRuleTest {

    /**
     * NIST solder phase diagrams, Pb-Sn at 182.2 °C: liquid 62.13, (Pb) 18.91 and (Sn) 96.59 wt% tin. By hand:
     * (96.59 - 62.13) / (96.59 - 18.91) = 0.44361 of the mass is (Pb).
     */
    @Test
    void the_tin_lead_eutectic_is_44_percent_lead_rich_by_mass() {
        LeverRule line = LeverRule.between(new double[] {0.8109, 0.1891}, new double[] {0.0341, 0.9659});
        assertThat(1 - line.fractionOfBeta(new double[] {0.3787, 0.6213})).isCloseTo(0.44361, within(5e-6));
    }

    /** NIST Ag-Cu at 779.1 °C: liquid 28.41, (Ag) 8.27, (Cu) 92.53 wt% copper. By hand: 20.14 / 84.26 = 0.23902. */
    @Test
    void the_silver_copper_eutectic_is_24_percent_copper_rich_by_mass() {
        LeverRule line = LeverRule.between(new double[] {0.9173, 0.0827}, new double[] {0.0747, 0.9253});
        assertThat(line.fractionOfBeta(new double[] {0.7159, 0.2841})).isCloseTo(0.23902, within(5e-6));
    }

    @Test
    void the_atomic_rule_turned_to_mass_agrees_with_the_rule_in_mass() {
        assertThat(eutecticShare("ag-cu-eutectic").ofMass()).isCloseTo(0.23902, within(5e-6));
        assertThat(1 - eutecticShare("sn-pb-eutectic").ofMass()).isCloseTo(0.44361, within(5e-6));
    }

    /** 18.6 at% silicon beside pure gold: 3.155 wt% and, at 19.3 and 2.329 g/cm³, 21.26 vol% of silicon. */
    @Test
    void a_light_phase_takes_far_more_volume_than_mass() {
        PhaseShare silicon = eutecticShare("au-si-eutectic");
        assertThat(silicon.ofAtoms()).isCloseTo(0.186, within(1e-12));
        assertThat(silicon.ofMass()).isCloseTo(0.03155, within(5e-6));
        assertThat(silicon.ofVolume().orElseThrow()).isCloseTo(0.2126, within(5e-5));
    }

    @Test
    void without_a_density_there_is_no_volume_share() {
        Phase known = phase("(Ag)", "Ag:100,Cu:0", OptionalDouble.of(10.49));
        Phase unknown = phase("(Cu)", "Ag:0,Cu:100", OptionalDouble.empty());
        assertThat(PhaseShare.ofAtoms(known, unknown, 0.4).ofVolume()).isEmpty();
        assertThat(PhaseShare.ofAtoms(unknown, known, 0.4).ofVolume()).isEmpty();
    }

    @Test
    void a_composition_beyond_an_end_is_told() {
        LeverRule line = LeverRule.between(new double[] {0.9, 0.1}, new double[] {0.1, 0.9});
        assertThat(line.fractionOfBeta(new double[] {0.98, 0.02})).isCloseTo(-0.1, within(1e-12));
        assertThat(line.fractionOfBeta(new double[] {0.02, 0.98})).isCloseTo(1.1, within(1e-12));
    }

    @Test
    void every_binary_lies_on_the_line() {
        LeverRule line = LeverRule.between(new double[] {0.9, 0.1}, new double[] {0.2, 0.8});
        assertThat(line.distance(new double[] {0.37, 0.63})).isCloseTo(0, within(1e-15));
    }

    /** By hand: on the line from (1,0,0) to (0,1,0), (0.4,0.4,0.2) lies beside the middle by 0.1 (-1,-1,2). */
    @Test
    void with_three_elements_the_nearest_point_of_the_line_counts_and_the_distance_beside_it_is_told() {
        LeverRule line = LeverRule.between(new double[] {1, 0, 0}, new double[] {0, 1, 0});
        double[] composition = {0.4, 0.4, 0.2};
        assertThat(line.fractionOfBeta(composition)).isCloseTo(0.5, within(1e-15));
        assertThat(line.distance(composition)).isCloseTo(Math.sqrt(0.06), within(1e-15));
        assertThat(line.compositionAt(0.25)).containsExactly(new double[] {0.75, 0.25, 0}, within(1e-15));
    }

    @Test
    void a_line_needs_two_different_compositions_of_the_same_elements() {
        assertThatThrownBy(() -> LeverRule.between(new double[] {0.5, 0.5}, new double[] {0.5, 0.5}))
            .hasMessage("A tie line joins two different compositions, got the same one twice.");
        assertThatThrownBy(() -> LeverRule.between(new double[] {0.5, 0.5}, new double[] {1, 0, 0}))
            .hasMessage("Expected a composition of 2 elements, got 3.");
    }

    private static PhaseShare eutecticShare(String id) {
        Alloy alloy = AlloyCatalogue.packaged().require(id);
        NominalFractions nominal = alloy.nominal().resolve();
        Phase alpha = alloy.phases().get(0);
        Phase beta = alloy.phases().get(1);
        LeverRule line = LeverRule.between(alpha.over(nominal.elements()).orElseThrow(),
            beta.over(nominal.elements()).orElseThrow());
        return PhaseShare.ofAtoms(alpha, beta, line.fractionOfBeta(nominal.middles()));
    }

    private static Phase phase(String name, String composition, OptionalDouble density) {
        return Phase.of("Ag-Cu", name, NominalText.parse(composition, Basis.ATOMIC), density, "terminal",
            OptionalDouble.empty(), "invented", SourceRead.NO);
    }
}
