package surfeit.lab;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import surfeit.composition.Basis;
import surfeit.element.Element;
import surfeit.spot.Conditions;
import surfeit.spot.Counts;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

class SpotDifferenceTest {

    @Test
    void the_same_number_printed_differently_is_the_same() {
        assertThat(between(measured(0.624, "62,40"), measured(62.4 / 100, "62.4"))).isEmpty();
    }

    @Test
    void a_last_bit_of_conversion_makes_no_difference_but_a_printed_digit_does() {
        assertThat(between(measured(0.624, "62.4"), measured(Math.nextUp(0.624), "62.4"))).isEmpty();
        assertThat(between(measured(0.624, "62.4"), measured(0.6240000001, "62.40000001"))).singleElement().asString()
            .isEqualTo("Cu \"62.4\" -> \"62.40000001\"");
    }

    @Test
    void zero_below_a_limit_not_detected_and_not_reported_are_four_things() {
        ReportedValue[] kinds = {measured(0, "0"), new ReportedValue.BelowLimit(0.003, "<0.3"),
            new ReportedValue.NotDetected(OptionalDouble.empty(), "n.d."), new ReportedValue.NotReported()};
        for (ReportedValue from : kinds) {
            for (ReportedValue to : kinds) {
                assertThat(between(from, to).isEmpty()).as("%s and %s", from, to).isEqualTo(from == to);
            }
        }
    }

    @Test
    void an_empty_cell_is_the_same_as_no_cell() {
        Map<Element, ReportedValue> with = new LinkedHashMap<>();
        with.put(Element.of("Zn"), new ReportedValue.NotReported());
        with.put(Element.of("Cu"), measured(0.4, "40"));

        assertThat(SpotDifference.between(spot(Basis.ATOMIC, with),
            spot(Basis.ATOMIC, Map.of(Element.of("Cu"), measured(0.4, "40"))))).isEmpty();
    }

    @Test
    void the_same_number_in_another_unit_is_another_value() {
        Map<Element, ReportedValue> values = Map.of(Element.of("Cu"), measured(0.4, "40"));

        assertThat(SpotDifference.between(spot(Basis.ATOMIC, values), spot(Basis.MASS, values)))
            .containsExactly("unit \"at%\" -> \"wt%\"");
    }

    @Test
    void everything_beside_the_number_counts_too() {
        ReportedValue plain = measured(0.4, "40");
        ReportedValue full = new ReportedValue.Measured(0.4, "40", OptionalDouble.of(0.004),
            Optional.of(new Counts(1200, 80)), OptionalDouble.of(0.001), Optional.of("Ka"));

        assertThat(between(plain, full)).containsExactly(
            "Cu uncertainty not stated -> 0.4 %", "Cu net counts not stated -> 1200.0",
            "Cu background counts not stated -> 80.0", "Cu limit not stated -> 0.1 %",
            "Cu line not stated -> \"Ka\"");
    }

    @Test
    void one_moment_in_two_zones_is_the_same_time() {
        assertThat(SpotDifference.between(acquired("2026-11-20T14:03:00+01:00"), acquired("2026-11-20T13:03:00Z")))
            .isEmpty();
    }

    private static Spot acquired(String time) {
        return new Spot("P1-1", Optional.empty(), Optional.empty(), Optional.empty(),
            Optional.of(OffsetDateTime.parse(time)), Conditions.UNKNOWN, Optional.empty(), Basis.ATOMIC,
            Map.of(Element.of("Cu"), measured(0.4, "40")));
    }

    private static List<String> between(ReportedValue from, ReportedValue to) {
        return SpotDifference.between(spot(Basis.ATOMIC, Map.of(Element.of("Cu"), from)),
            spot(Basis.ATOMIC, Map.of(Element.of("Cu"), to)));
    }

    private static Spot spot(Basis basis, Map<Element, ReportedValue> values) {
        return new Spot("P1-1", Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
            Conditions.UNKNOWN, Optional.empty(), basis, values);
    }

    private static ReportedValue measured(double fraction, String text) {
        return ReportedValue.Measured.of(fraction, text);
    }
}
