package surfeit.composition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class AlloyTest {
    private static final Nominal SILVER_COPPER = NominalText.parse("Ag:60.1,Cu:39.9", Basis.ATOMIC);

    @ParameterizedTest
    @ValueSource(strings = {"", ".", "..", "a b", "a/b", "ä", "x\n"})
    void an_id_that_no_address_can_carry_is_refused(String id) {
        assertThatThrownBy(() -> alloy(id, "Lot 7", "invented", List.of()))
            .hasMessageStartingWith("Expected as the id of an alloy 1 to 64 letters, digits, dots, dashes or")
            .hasMessageContaining(", got \"");
    }

    @Test
    void an_id_is_at_most_64_characters_long() {
        assertThat(alloy("x".repeat(64), "Lot 7", "invented", List.of()).id()).hasSize(64);
        assertThatThrownBy(() -> alloy("x".repeat(65), "Lot 7", "invented", List.of()))
            .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void an_alloy_without_a_name_or_a_source_is_refused() {
        assertThatThrownBy(() -> alloy("lot-7", " ", "invented", List.of()))
            .hasMessage("Alloy lot-7 needs a name and a source, got name \" \" and source \"invented\".");
        assertThatThrownBy(() -> alloy("lot-7", "Lot 7", "", List.of()))
            .hasMessage("Alloy lot-7 needs a name and a source, got name \"Lot 7\" and source \"\".");
    }

    @Test
    void a_phase_of_other_elements_is_refused() {
        Phase tin = Phase.of("Ag-Sn", "Ag3Sn", NominalText.parse("Ag:75,Sn:25", Basis.ATOMIC), OptionalDouble.empty(),
            "", OptionalDouble.empty(), "invented", SourceRead.NO);
        assertThatThrownBy(() -> alloy("lot-7", "Lot 7", "invented", List.of(tin)))
            .hasMessage("Phases of alloy lot-7 are made of its elements [Ag, Cu], got Ag3Sn of Ag-Sn.");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "hot", "220-217", "217-217", "217 - 220", "779,1", "1e3"})
    void a_temperature_that_is_no_value_or_rising_range_is_refused(String celsius) {
        assertThatThrownBy(() -> new StatedTemperature(celsius, "eutectic"))
            .hasMessage("Expected a temperature in °C such as 779.1 or 217-220, got \"" + celsius + "\".");
    }

    @Test
    void a_temperature_says_what_happens_there() {
        assertThatThrownBy(() -> new StatedTemperature("183", " "))
            .hasMessage("A temperature says what happens there, such as eutectic; got nothing.");
    }

    @Test
    void an_unknown_word_for_whether_the_source_was_read_is_refused() {
        assertThatThrownBy(() -> SourceRead.of("maybe")).hasMessage("Expected yes, no or part, got \"maybe\".");
    }

    private static Alloy alloy(String id, String name, String source, List<Phase> phases) {
        return new Alloy(id, name, SILVER_COPPER, Optional.empty(), source, SourceRead.NO, phases);
    }
}
