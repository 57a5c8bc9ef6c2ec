package surfeit.composition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.element.Element;
import surfeit.element.UnknownElementException;

class NominalTextTest {
    private static final Element AG = Element.of("Ag");
    private static final Element CU = Element.of("Cu");

    @Test
    void percent_become_the_nearest_fractions() {
        Nominal nominal = NominalText.parse("Ag:60.1,Cu:39.9", Basis.ATOMIC);
        assertThat(nominal.basis()).isEqualTo(Basis.ATOMIC);
        assertThat(nominal.parts()).containsOnly(
            Map.entry(AG, NominalPart.Point.exact(0.601)), Map.entry(CU, NominalPart.Point.exact(0.399)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"Cu:39.9+-0.5", "Cu:39.9±0.5", "Cu: 39.9 +- 0.5", "Cu :39.9 ± 0.5"})
    void a_tolerance_may_be_written_either_way(String copper) {
        assertThat(NominalText.parse("Ag:60.1," + copper, Basis.MASS).parts())
            .containsEntry(CU, new NominalPart.Point(0.399, 0.005));
    }

    @ParameterizedTest
    @ValueSource(strings = {"Fe:bal,Cr:16-18", "Fe:balance;Cr:16-18", " Fe : Bal ; Cr : 16 - 18 ", "Fe:BAL,Cr:16–18"})
    void ranges_and_the_balance_are_read(String text) {
        assertThat(NominalText.parse(text, Basis.MASS).parts())
            .containsEntry(Element.of("Fe"), new NominalPart.Balance())
            .containsEntry(Element.of("Cr"), new NominalPart.Range(0.16, 0.18));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "Ag:60.1,Cu|Expected an element with its percentage such as Ag:60.1, got \"Cu\" (part 2 of the nominal).",
        "''|Expected an element with its percentage such as Ag:60.1, got \"\" (part 1 of the nominal).",
        "Ag:60.1,Cu:39.9,|Expected an element with its percentage such as Ag:60.1, got \"\" (part 3 of the nominal).",
        "Ag:60,1;Cu:39,9|Expected an element with its percentage such as Ag:60.1, got \"1\"; decimals "
            + "are written with a point (part 2 of the nominal).",
        "Ag:60.1,Ag:39.9|Expected each element once, got Ag again (part 2 of the nominal)."})
    void what_is_no_list_of_elements_is_refused_with_its_place(String text, String message) {
        assertThatThrownBy(() -> NominalText.parse(text, Basis.ATOMIC))
            .isInstanceOfSatisfying(CompositionException.class,
                e -> assertThat(e.kind()).isEqualTo(CompositionException.Kind.UNREADABLE))
            .hasMessage(message);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "abc", "60.1%", "6e1", "-5", "+5", "1.", "1.2.3", "16--18", "16-", "16- 18", "5+/-1",
        "<3", "1234567890", "٣"})
    void what_is_no_amount_is_refused_with_the_forms_there_are(String amount) {
        assertThatThrownBy(() -> NominalText.parse("Cu:bal,Ag:" + amount, Basis.ATOMIC))
            .isInstanceOf(CompositionException.class)
            .hasMessage("Expected for Ag a number of percent, a range such as 16-18, a tolerance such as "
                + "39.9+-0.5, or bal, got \"" + amount + "\" (part 2 of the nominal).");
    }

    /** {@code Cu:0.5+-1} in an address arrives as {@code Cu:0.5 -1} when the plus sign was not written %2B. */
    @Test
    void a_plus_sign_lost_in_an_address_is_not_taken_for_a_range() {
        assertThatThrownBy(() -> NominalText.parse("Ag:99.5,Cu:0.5 -1", Basis.ATOMIC))
            .hasMessageContaining("got \"0.5 -1\"; in an address a plus sign is written %2B (part 2 of the nominal).");
    }

    @Test
    void an_unknown_element_names_the_nearest() {
        assertThatThrownBy(() -> NominalText.parse("AG:60.1,Cu:39.9", Basis.ATOMIC))
            .isInstanceOf(UnknownElementException.class)
            .hasMessage("Expected an element symbol such as Ag or Cu, got \"AG\"; nearest known: Ag.");
        assertThatThrownBy(() -> NominalText.parse(":60.1", Basis.ATOMIC)).isInstanceOf(UnknownElementException.class);
    }

    @Test
    void amounts_beyond_100_percent_are_refused() {
        assertThatThrownBy(() -> NominalText.parse("Ag:160,Cu:39.9", Basis.ATOMIC))
            .hasMessage("A nominal value lies between 0 and 100 %, got 160 %.");
    }

    @ParameterizedTest
    @ValueSource(strings = {"Ag:60.1,Cu:39.9", "Fe:bal,Cr:16-18,Ni:10-14,Mo:2-3", "Ag:60.1,Cu:39.9+-0.5",
        "Ag:99.995,Cu:0.005", "Ag:100,Cu:0"})
    void what_is_written_is_what_was_read(String text) {
        assertThat(NominalText.format(NominalText.parse(text, Basis.MASS))).isEqualTo(text);
    }

    @Test
    void a_computed_nominal_survives_being_written_and_read() {
        Nominal computed = new Nominal(Basis.ATOMIC, Map.of(
            AG, new NominalPart.Point(1 / 3.0, 1e-7 / 3), CU, NominalPart.Point.exact(2 / 3.0)));
        assertThat(NominalText.parse(NominalText.format(computed), Basis.ATOMIC)).isEqualTo(computed);
    }

    @ParameterizedTest
    @ValueSource(strings = {"de-DE", "tr-TR", "ar-EG"})
    void the_machines_language_does_not_matter(String language) {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag(language));
            Nominal nominal = NominalText.parse("Ni:60.1,Ti:BALANCE", Basis.ATOMIC);
            assertThat(NominalText.format(nominal)).isEqualTo("Ni:60.1,Ti:bal");
            assertThatThrownBy(() -> NominalText.parse("TI:60.1,Ni:39.9", Basis.ATOMIC))
                .hasMessageContaining("nearest known: Ti");
        } finally {
            Locale.setDefault(before);
        }
    }
}
