package surfeit.spot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import surfeit.element.Element;

/** The values of one spot as a map. Invented numbers. */
class ReportedValuesTest {
    private static final Element AG = Element.of("Ag");
    private static final Element CU = Element.of("Cu");

    private static ReportedValue measured(double fraction) {
        return new ReportedValue.Measured(fraction, Double.toString(fraction), OptionalDouble.empty(), Optional.empty(),
            OptionalDouble.empty(), Optional.empty());
    }

    private static Map<Element, ReportedValue> reported() {
        Map<Element, ReportedValue> reported = new LinkedHashMap<>();
        reported.put(CU, measured(0.4));
        reported.put(AG, measured(0.6));
        return reported;
    }

    @Test
    void it_is_the_map_it_was_made_from_in_its_order() {
        ReportedValues values = ReportedValues.of(reported());

        assertThat(values).isEqualTo(reported()).hasSameHashCodeAs(reported()).hasSize(2);
        assertThat(reported()).isEqualTo(values);
        assertThat(values.keySet()).containsExactly(CU, AG);
        assertThat(values.element(1)).isEqualTo(AG);
        assertThat(values.value(1)).isEqualTo(measured(0.6));
        assertThat(values.get(CU)).isEqualTo(measured(0.4));
        assertThat(values.containsKey(Element.of("Sn"))).isFalse();
        assertThat(values.get(Element.of("Sn"))).isNull();
        assertThat(ReportedValues.of(values)).isSameAs(values);
        assertThat(ReportedValues.of(Map.of())).isEmpty();
    }

    @Test
    void it_can_be_made_in_turn_and_takes_each_element_once() {
        Iterator<Element> elements = List.of(CU, AG, CU).iterator();
        Iterator<ReportedValue> values = List.of(measured(0.4), measured(0.6)).iterator();
        ReportedValues made = ReportedValues.inTurn(2, elements::next, values::next);

        assertThat(made).isEqualTo(reported());
        assertThat(made.keySet()).containsExactly(CU, AG);
        assertThat(made.place(AG)).isEqualTo(1);
        assertThat(made.place(Element.of("Sn"))).isEqualTo(-1);
        assertThatThrownBy(() -> ReportedValues.inTurn(2, () -> AG, () -> measured(0.5)))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("Ag twice");
    }

    @Test
    void it_does_not_change() {
        Map<Element, ReportedValue> reported = reported();
        ReportedValues values = ReportedValues.of(reported);
        reported.remove(AG);

        assertThat(values).hasSize(2);
        assertThatThrownBy(() -> values.put(AG, measured(0.5))).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> values.remove(AG)).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> values.entrySet().iterator().next().setValue(measured(0.5)))
            .isInstanceOf(UnsupportedOperationException.class);
    }
}
