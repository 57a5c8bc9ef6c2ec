package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.element.Element;

class LineChoiceTest {

    // Beam over edge, both from the tables of Elam, Ravel & Sieber 2002.
    @ParameterizedTest
    @CsvSource({"Si,Ka,8.16", "Au,Ma,6.80", "Au,La,1.26", "Ge,Ka,1.35", "Ge,La,12.3", "Cu,Ka,1.67", "Sn,La,3.82",
        "Ag,La,4.48"})
    void overvoltage_at_15_kev_is_beam_over_own_edge(String symbol, String name, double overvoltage) {
        assertThat(Samples.line(symbol, name).overvoltage(15)).isCloseTo(overvoltage, within(0.03));
    }

    // Trade habit (common practice, no source).
    @ParameterizedTest
    @CsvSource({"Ag,15,La,USABLE", "Cu,15,Ka,MARGINAL", "Cu,20,Ka,USABLE", "Cu,10,La,USABLE", "Ge,15,La,USABLE",
        "Au,15,Ma,USABLE", "Au,20,Ma,USABLE", "Au,30,La,USABLE", "Pb,20,Ma,USABLE", "Sn,15,La,USABLE",
        "Sn,5,La,BARELY_EXCITED", "Si,15,Ka,USABLE", "O,5,Ka,USABLE", "Fe,10,La,USABLE", "Al,15,Ka,USABLE",
        "Bi,15,Ma,USABLE"})
    void an_analyst_takes_the_hardest_line_that_is_excited_enough(String symbol, double beam, String line,
                                                                  Excitation state) {
        LineChoice choice = LineChoice.at(Element.of(symbol), beam);
        assertThat(choice.chosen().orElseThrow().name()).isEqualTo(line);
        assertThat(choice.excitation()).isEqualTo(state);
    }

    @Test
    void a_line_the_beam_barely_excites_is_not_taken_while_a_better_one_exists() {
        assertThat(LineChoice.at(Element.of("Ge"), 15).selectable()).extracting(Line::name).containsExactly("Ka", "La");
        assertThat(Excitation.of(Samples.line("Ge", "Ka"), 15)).isEqualTo(Excitation.BARELY_EXCITED);
        assertThat(Excitation.of(Samples.line("Cu", "Ka"), 8.979)).isEqualTo(Excitation.NOT_EXCITED);
    }

    @Test
    void an_element_without_a_usable_line_has_no_choice_but_a_state() {
        LineChoice tin = LineChoice.at(Element.of("Sn"), 4.5);
        assertThat(tin.chosen()).isEmpty();
        assertThat(tin.excitation()).isEqualTo(Excitation.BARELY_EXCITED);
        LineChoice silver = LineChoice.at(Samples.AG, 3);
        assertThat(silver.chosen()).isEmpty();
        assertThat(silver.excitation()).isEqualTo(Excitation.NOT_EXCITED);
        assertThat(LineChoice.at(Element.of("H"), 15).excitation()).isEqualTo(Excitation.NOT_EXCITED);
    }

    @Test
    void a_beam_energy_outside_the_models_is_refused() {
        assertThatThrownBy(() -> LineChoice.at(Samples.CU, 200)).hasMessageContaining("200.0 keV")
            .hasMessageContaining("1.0 to 40.0");
        assertThatThrownBy(() -> LineChoice.at(Samples.CU, Double.NaN)).hasMessageContaining("NaN");
    }
}
