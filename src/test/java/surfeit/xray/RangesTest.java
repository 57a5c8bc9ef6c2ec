package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RangesTest {
    private static final double[] BEAMS = {5, 10, 15, 20};

    // Kanaya & Okayama 1972 (constants from memory), um, worked out separately.
    @ParameterizedTest
    @CsvSource({"Al,.415,1.319,2.597,4.198", "Si,.468,1.490,2.933,4.743", "Cu,.144,.459,.903,1.460",
        "Ge,.254,.809,1.592,2.573", "Ag,.136,.433,.852,1.378", "Sn,.205,.651,1.282,2.073", "Au,.085,.271,.533,.862",
        "Fe,.159,.506,.997,1.612", "C,.437,1.391,2.737,4.426"})
    void electron_range(String symbol, double at5, double at10, double at15, double at20) {
        double[] expected = {at5, at10, at15, at20};
        for (int i = 0; i < BEAMS.length; i++) {
            assertThat(ElectronRange.kanayaOkayamaNm(Samples.pure(symbol), BEAMS[i])).as(symbol + " at " + BEAMS[i])
                .isCloseTo(1000 * expected[i], within(8 * expected[i] + 1));
        }
    }

    // Anderson & Hasler 1966 (constants from memory), um, worked out separately.
    @ParameterizedTest
    @CsvSource({"Al,Al,Ka,.304,1.085,2.192,3.585", "Si,Si,Ka,.334,1.239,2.523,4.138", "Cu,Cu,La,.100,.336,.669,1.089",
        "Ge,Ge,La,.163,.559,1.121,1.827", "Ag,Ag,La,.045,.245,.531,.889", "Sn,Sn,La,.044,.334,.745,1.263",
        "Au,Au,Ma,.037,.146,.301,.496", "Au,Si,Ka,.040,.149,.304,.499"})
    void depth_of_generation(String host, String symbol, String name, double at5, double at10, double at15,
                             double at20) {
        double[] expected = {at5, at10, at15, at20};
        double edge = Samples.line(symbol, name).edgeEnergyKev();
        for (int i = 0; i < BEAMS.length; i++) {
            assertThat(ElectronRange.andersonHaslerNm(Samples.pure(host), edge, BEAMS[i])).as(symbol + " at "
                + BEAMS[i])
                .isCloseTo(1000 * expected[i], within(8 * expected[i] + 1));
        }
    }

    @Test
    void depth_of_generation_is_nothing_below_the_edge() {
        assertThat(ElectronRange.andersonHaslerNm(Samples.pure("Cu"), 8.979, 5)).isZero();
        assertThat(ElectronRange.andersonHaslerNm(Samples.pure("Cu"), 8.979, 15)).isCloseTo(390, within(4.0));
        assertThat(ElectronRange.andersonHaslerNm(Samples.pure("Cu"), 8.979, 20)).isCloseTo(810, within(8.0));
    }

    @ParameterizedTest
    @CsvSource({"Si,Ka", "Al,Ka", "Cu,La", "Ge,La", "Ag,La", "Sn,La", "Au,Ma"})
    void rules_of_thumb_lie_where_the_docs_say_against_the_depth_of_99_percent(String symbol, String name) {
        Material host = Samples.pure(symbol);
        Line line = Samples.line(symbol, name);
        double d99 = host.depthNm(DepthProfile.of(host, line, 15).massDepthOfShare(0.99, Absorption.chi(line, host,
            35)));
        assertThat(ElectronRange.kanayaOkayamaNm(host, 15) / d99).isBetween(1.05, 1.85);
        assertThat(ElectronRange.andersonHaslerNm(host, line.edgeEnergyKev(), 15) / d99).isBetween(0.8, 1.2);
    }

    @Test
    void range_in_an_alloy_lies_between_its_elements_in_mass() {
        Material alloy = Samples.silverCopper();
        double massRange = ElectronRange.kanayaOkayamaNm(alloy, 15) * alloy.densityGramPerCm3();
        assertThat(massRange).isBetween(ElectronRange.kanayaOkayamaNm(Samples.pure("Cu"), 15) * 8.9,
            ElectronRange.kanayaOkayamaNm(Samples.pure("Ag"), 15) * 10.5);
    }

    // Reed (from memory): 0.077 (15^1.5 - 1.839^1.5)/2.329 = 1.838 um.
    @Test
    void lateral_spread_follows_reed_and_adds_the_probe_in_quadrature() {
        double reed = LateralSpread.reedDiameterNm(Samples.pure("Si"), 1.839, 15);
        assertThat(reed).isCloseTo(1838, within(1.0));
        assertThat(LateralSpread.withProbeNm(300, 400)).isEqualTo(500);
        assertThat(LateralSpread.reedDiameterNm(Samples.pure("Cu"), 8.979, 5)).isZero();
        assertThatThrownBy(() -> LateralSpread.withProbeNm(reed, -1)).hasMessageContaining("-1.0 nm");
    }
}
