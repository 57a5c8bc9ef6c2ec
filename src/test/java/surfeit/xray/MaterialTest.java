package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;

class MaterialTest {

    @Test
    void density_of_an_alloy_follows_from_its_elements_volumes() {
        assertThat(Samples.goldSilicon().densityGramPerCm3()).isCloseTo(15.692, within(0.02));
        assertThat(Samples.silverCopper().densityGramPerCm3()).isCloseTo(10.0, within(0.05));
        assertThat(Samples.silverCopper().densityGiven()).isFalse();
    }

    @Test
    void a_compound_of_gas_forming_elements_needs_a_given_density() {
        Map<surfeit.element.Element, Double> silica = Map.of(Samples.SI, 0.46744, Samples.O, 0.53256);
        assertThatThrownBy(() -> Material.byVolumes(silica)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("0.53256").hasMessageContaining("density of the material must be given");
        assertThat(Material.of(silica, 2.2).densityGiven()).isTrue();
    }

    @Test
    void a_trace_of_oxygen_is_left_out_of_the_volume() {
        assertThat(Material.byVolumes(Map.of(Samples.CU, 0.995, Samples.O, 0.005)).densityGramPerCm3())
            .isCloseTo(8.96, within(0.1));
    }

    @Test
    void fractions_that_do_not_add_up_to_one_are_refused() {
        assertThatThrownBy(() -> Material.of(Map.of(Samples.CU, 0.5), 8.9)).hasMessageContaining("0.5");
        assertThatThrownBy(() -> Material.of(Map.of(Samples.CU, 1.5, Samples.AG, -0.5), 8.9))
            .hasMessageContaining("0 to 1");
        assertThatThrownBy(() -> Material.of(Map.of(Samples.CU, 50.0, Samples.AG, 50.0), 8.9))
            .hasMessageContaining("50.0");
        assertThatThrownBy(() -> Material.of(Map.of(), 8.9)).hasMessageContaining("0.0");
        assertThatThrownBy(() -> Material.of(Map.of(Samples.CU, 1.0), 8960)).hasMessageContaining("8960.0 g/cm3");
    }

    @Test
    void mass_depth_and_depth_are_inverse() {
        Material copper = Samples.pure("Cu");
        assertThat(copper.massDepth(100)).isCloseTo(8.96e-5, within(1e-6));
        assertThat(copper.depthNm(copper.massDepth(123))).isCloseTo(123, within(1e-9));
        assertThat(copper.massFraction(Samples.AG)).isZero();
        assertThat(copper.meanAtomicNumber()).isCloseTo(29, within(1e-9));
    }
}
