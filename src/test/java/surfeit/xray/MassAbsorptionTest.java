package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.element.Element;
import surfeit.element.ElementTable;

class MassAbsorptionTest {

    // Photoelectric coefficients of Elam, Ravel & Sieber 2002 as read from XrayDB separately.
    @ParameterizedTest
    @CsvSource({"Si,Ka,Si,356.8", "Al,Ka,Al,410.0", "Si,Ka,Au,1514.4", "Au,Ma,Au,992.1", "Ag,La,Ag,514.8",
        "Cu,Ka,Cu,49.8"})
    void coefficients_are_those_of_the_stated_table(String symbol, String line, String absorber, double expected) {
        assertThat(MassAbsorption.standard().coefficient(Samples.line(symbol, line), Element.of(absorber)))
            .isCloseTo(expected, within(0.005 * expected));
    }

    @Test
    void mixtures_add_by_mass_fraction() {
        Line line = Samples.line("Si", "Ka");
        assertThat(MassAbsorption.standard().coefficient(line, Samples.goldSilicon())).isCloseTo(1478, within(2.0));
        assertThat(MassAbsorption.standard().coefficient(Samples.line("Au", "Ma"), Samples.goldSilicon()))
            .isCloseTo(1039, within(2.0));
    }

    // Chantler's coefficients for the same lines, NIST FFAST through XrayDB.
    @ParameterizedTest
    @CsvSource({"Si,Ka,Si,324.9", "Si,Ka,Au,1400", "Au,Ma,Au,923", "Cu,La,Cu,2190", "C,Ka,C,2386", "O,Ka,O,1193",
        "O,Ka,Au,11475"})
    void another_table_lies_within_the_stated_spread(String symbol, String line, String absorber, double chantler) {
        Line emitted = Samples.line(symbol, line);
        double ours = MassAbsorption.standard().coefficient(emitted, Element.of(absorber));
        assertThat(Math.abs(chantler / ours - 1)).isLessThan(MassAbsorption.relativeSpread(emitted) + 0.05);
    }

    @Test
    void every_analytical_line_has_a_coefficient_in_every_absorber() {
        for (Element element : ElementTable.standard().all()) {
            for (Line line : LineTable.standard().lines(element)) {
                for (Element absorber : ElementTable.standard().all()) {
                    assertThat(MassAbsorption.standard().coefficient(line, absorber)).isPositive();
                }
            }
        }
    }

    @Test
    void a_line_without_coefficients_is_refused_by_name() {
        Line invented = new Line(Samples.CU, Family.L, "Lx", 0.9, "L3", 0.9327, 0.01);
        Material copper = Material.of(Map.of(Samples.CU, 1.0), 8.96);
        assertThatThrownBy(() -> MassAbsorption.standard().coefficient(invented, copper)).hasMessageContaining("Cu Lx");
        assertThat(MassAbsorption.standard().sha256()).hasSize(64);
    }
}
