package surfeit.composition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.element.Element;

class NominalTest {
    private static final String OR_BALANCE = ", or name one element as the balance.";

    @Test
    void the_elements_keep_the_order_given() {
        assertThat(nominal("Cu:39.9,Ag:60.1").elements()).hasToString("[Cu, Ag]");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"Ag:60,Cu:40|1|false", "Ag:59.5,Cu:39.9|0.994|true", "Ag:61,Cu:40|1.01|true",
        "Ag:60,Cu:39|0.99|true", "Fe:bal,Cr:17|1|false", "Ag:50,Cu:20-40,Zn:20-40|1|false",
        "Ag:70.5,Cu:30-31|1.005|true", "Ag:60-61,Cu:38-38.5|0.995|true"})
    void a_nominal_within_one_percent_of_100_is_closed_and_says_so(String text, double sum, boolean closed) {
        assertThat(nominal(text).statedSum()).isCloseTo(sum, within(1e-12));
        assertThat(nominal(text).isClosed()).isEqualTo(closed);
        double total = 0;
        for (double part : nominal(text).resolve().middles()) {
            total += part;
        }
        assertThat(total).isCloseTo(1, within(1e-15));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "Ag:60,Cu:38.9|The nominal adds up to 98.9 %; it must reach 100 % within 1 %" + OR_BALANCE,
        "Ag:60,Cu:41.1|The nominal adds up to 101.1 %; it must reach 100 % within 1 %" + OR_BALANCE,
        "Cr:16-18,Ni:10-14|The nominal adds up to 26 % to 32 %; it must reach 100 % within 1 %" + OR_BALANCE,
        "Fe:bal,Cr:60,Ni:50|The elements beside the balance add up to at least 110 %; at most 100 % is possible.",
        "Fe:bal,Cr:bal,Ni:50|At most one element of a nominal can be the balance, got 2."})
    void an_incomplete_nominal_is_refused(String text, String message) {
        assertThatThrownBy(() -> nominal(text))
            .isInstanceOfSatisfying(CompositionException.class,
                e -> assertThat(e.kind()).isEqualTo(CompositionException.Kind.NOT_SUMMING_TO_ONE))
            .hasMessage(message);
    }

    @Test
    void a_nominal_of_no_elements_is_refused() {
        assertThatThrownBy(() -> new Nominal(Basis.ATOMIC, Map.of()))
            .isInstanceOfSatisfying(CompositionException.class,
                e -> assertThat(e.kind()).isEqualTo(CompositionException.Kind.TOO_FEW_ELEMENTS))
            .hasMessage("A nominal names its elements and how much of each, got none.");
    }

    @Test
    void a_value_outside_0_to_100_percent_is_refused() {
        assertThatThrownBy(() -> NominalPart.Point.exact(1.0005))
            .isInstanceOfSatisfying(CompositionException.class,
                e -> assertThat(e.kind()).isEqualTo(CompositionException.Kind.VALUE_OUT_OF_RANGE))
            .hasMessage("A nominal value lies between 0 and 100 %, got 100.05 %.");
        assertThatThrownBy(() -> NominalPart.Point.exact(Double.NaN))
            .hasMessage("A nominal value lies between 0 and 100 %, got NaN.");
        assertThatThrownBy(() -> new NominalPart.Point(0.5, -0.01))
            .hasMessage("A nominal tolerance lies between 0 and 100 %, got -1 %.");
        assertThatThrownBy(() -> new NominalPart.Range(0.18, 0.16))
            .hasMessage("A nominal range runs from low to high, got 18 % to 16 %.");
    }

    @Test
    void the_nominal_does_not_follow_later_changes_of_the_map_it_was_made_from() {
        Map<Element, NominalPart> parts = new HashMap<>(Map.of(Element.of("Ag"), NominalPart.Point.exact(1)));
        Nominal nominal = new Nominal(Basis.ATOMIC, parts);
        parts.clear();
        assertThat(nominal.elements()).hasSize(1);
        assertThatThrownBy(() -> nominal.parts().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    private static Nominal nominal(String text) {
        return NominalText.parse(text, Basis.ATOMIC);
    }
}
