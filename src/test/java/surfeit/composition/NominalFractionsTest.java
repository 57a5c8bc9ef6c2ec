package surfeit.composition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.Vectors;
import surfeit.element.Element;

class NominalFractionsTest {
    private static final Element AG = Element.of("Ag");
    private static final Element CU = Element.of("Cu");
    private static final Element ZN = Element.of("Zn");

    @Test
    void mass_percent_ranges_with_a_balance_become_atomic_limits() {
        JsonNode check = Vectors.read("67-range-nominal");
        JsonNode input = check.get("input");
        Map<Element, NominalPart> parts = new LinkedHashMap<>();
        for (int i = 0; i < input.get("elements").size(); i++) {
            JsonNode low = input.get("range_low_mass_percent").get(i);
            JsonNode high = input.get("range_high_mass_percent").get(i);
            parts.put(element(input, i), low.isNull() ? new NominalPart.Balance()
                : new NominalPart.Range(low.asDouble() / 100, high.asDouble() / 100));
        }

        NominalFractions fractions = new Nominal(Basis.MASS, parts).resolve();

        double[] low = Vectors.doubles(input.get("expected_low"));
        double[] high = Vectors.doubles(input.get("expected_high"));
        for (int i = 0; i < low.length; i++) {
            assertThat(fractions.low(i)).isCloseTo(low[i], within(1e-12));
            assertThat(fractions.high(i)).isCloseTo(high[i], within(1e-12));
            assertThat(fractions.isPoint(i)).isFalse();
            assertThat(fractions.isDerived(i)).isEqualTo(i == 0);
        }
    }

    @Test
    void a_mass_percent_tolerance_becomes_a_standard_uncertainty_of_both_elements_of_a_binary() {
        JsonNode input = Vectors.read("68-tolerance-mass-percent").get("input");
        double[] mass = Vectors.doubles(input.get("nominal_mass_percent"));
        double[] tolerance = Vectors.doubles(input.get("tolerance_mass_percent"));
        double[] expected = Vectors.doubles(input.get("expected_u_nominal"));
        double[] nominal = Vectors.doubles(input.get("nominal_low"));
        Map<Element, NominalPart> parts = new LinkedHashMap<>();
        parts.put(element(input, 0), new NominalPart.Point(mass[0] / 100, tolerance[0] / 100));
        parts.put(element(input, 1), NominalPart.Point.exact(mass[1] / 100));

        NominalFractions fractions = new Nominal(Basis.MASS, parts).resolve();

        for (int i = 0; i < 2; i++) {
            assertThat(fractions.low(i)).isCloseTo(nominal[i], within(1e-12));
            assertThat(fractions.high(i)).isEqualTo(fractions.low(i));
            assertThat(fractions.standardUncertainty(i)).isCloseTo(expected[i], within(1e-12));
        }
    }

    @Test
    void with_three_elements_a_tolerance_belongs_to_its_element_alone() {
        NominalFractions fractions = resolve("Ag:60,Cu:30+-0.6,Zn:10");
        assertThat(fractions.standardUncertainty(0)).isZero();
        assertThat(fractions.standardUncertainty(1)).isCloseTo(0.006 / Math.sqrt(3), within(1e-15));
        assertThat(fractions.standardUncertainty(2)).isZero();
        assertThat(fractions.isPoint(1)).isTrue();
    }

    @Test
    void a_tolerance_beyond_nothing_stops_there() {
        assertThat(resolve("Ag:99.8,Cu:0.2+-0.5").standardUncertainty(1))
            .isCloseTo(0.007 / 2 / Math.sqrt(3), within(1e-15));
    }

    @Test
    void points_that_miss_100_percent_are_scaled_alike() {
        NominalFractions fractions = resolve("Ag:59.7,Cu:39.8");
        assertThat(fractions.low(0)).isCloseTo(0.6, within(1e-15));
        assertThat(fractions.high(1)).isCloseTo(0.4, within(1e-15));
    }

    @Test
    void a_point_beside_ranges_keeps_its_value() {
        NominalFractions fractions = resolve("Ag:50,Cu:20-40,Zn:20-40");
        assertThat(fractions.low(0)).isEqualTo(0.5);
        assertThat(fractions.high(0)).isEqualTo(0.5);
        assertThat(fractions.middles()).containsExactly(new double[] {0.5, 0.25, 0.25}, within(1e-15));
        assertThat(fractions.low(1)).isCloseTo(0.2, within(1e-15));
        assertThat(fractions.high(1)).isCloseTo(0.4, within(1e-15));
        assertThat(fractions.middle(1)).isCloseTo(0.3, within(1e-15));
    }

    /** After closing 14 % of silicon is 86 % of aluminium: outside the one range, whatever the other one says. */
    @Test
    void two_ranges_that_make_one_number_leave_what_lies_in_both() {
        NominalFractions fractions = resolve("Al:83-92,Si:11-13");
        assertThat(fractions.low(0)).isCloseTo(0.87, within(1e-15));
        assertThat(fractions.high(0)).isCloseTo(0.89, within(1e-15));
        assertThat(fractions.low(1)).isCloseTo(0.11, within(1e-15));
        assertThat(fractions.high(1)).isCloseTo(0.13, within(1e-15));
        NominalFractions apart = resolve("Al:83-88,Si:11-11.5");
        assertThat(apart.low(0)).as("ranges that share nothing stay").isCloseTo(0.83, within(1e-15));
    }

    @Test
    void the_balance_of_points_is_a_point_and_marked_as_derived() {
        NominalFractions fractions = resolve("Ag:bal,Cu:39.9");
        assertThat(fractions.low(0)).isCloseTo(0.601, within(1e-15));
        assertThat(fractions.isPoint(0)).isTrue();
        assertThat(fractions.isDerived(0)).isTrue();
        assertThat(fractions.isDerived(1)).isFalse();
    }

    @Test
    void the_balance_is_never_below_nothing() {
        NominalFractions overfull = resolve("Fe:bal,Cr:20-60,Ni:20-60");
        assertThat(overfull.low(0)).isZero();
        assertThat(overfull.high(0)).isCloseTo(0.6, within(1e-15));
        NominalFractions full = resolve("Ag:60.1,Cu:39.9,Zn:bal");
        assertThat(full.low(2)).isZero();
        assertThat(full.high(2)).isCloseTo(0, within(1e-15));
    }

    /** 316L: the ranges of ASTM A240, from memory. */
    @Test
    void a_composition_inside_all_mass_ranges_lies_inside_the_atomic_ones() {
        Nominal nominal = AlloyCatalogue.packaged().require("316l").nominal();
        NominalFractions fractions = nominal.resolve();
        double[] middles = fractions.middles();
        for (int i = 0; i < fractions.size(); i++) {
            assertThat(middles[i]).as(fractions.elements().get(i).symbol())
                .isBetween(fractions.low(i), fractions.high(i));
        }
    }

    @Test
    void elements_left_out_are_left_out_of_every_limit_and_the_rest_closed_again() {
        NominalFractions rest = resolve("Ag:60,Cu:30,Zn:5-15").without(Set.of(ZN));
        assertThat(rest.elements()).containsExactly(AG, CU);
        assertThat(rest.low(0)).isCloseTo(2.0 / 3, within(1e-15));
        assertThat(rest.high(0)).isCloseTo(2.0 / 3, within(1e-15));
        assertThat(rest.isPoint(0)).isTrue();
        assertThat(Arrays.stream(rest.middles()).sum()).isCloseTo(1, within(1e-15));

        NominalFractions ranged = resolve("Ag:60,Cu:30,Zn:5-15").without(Set.of(CU));
        assertThat(ranged.low(1)).isCloseTo(0.05 / (0.05 + 0.95 * 2 / 3), within(1e-15));
        assertThat(ranged.high(1)).isCloseTo(0.15 / (0.15 + 0.85 * 2 / 3), within(1e-15));
    }

    @Test
    void a_tolerance_follows_when_a_ternary_becomes_a_binary() {
        NominalFractions rest = resolve("Ag:60,Cu:30+-0.6,Zn:10").without(Set.of(ZN));
        double above = 0.306 / (0.306 + 0.694 * 6 / 7);
        double below = 0.294 / (0.294 + 0.706 * 6 / 7);
        assertThat(rest.standardUncertainty(1)).isCloseTo((above - below) / 2 / Math.sqrt(3), within(1e-15));
        assertThat(rest.standardUncertainty(0)).isEqualTo(rest.standardUncertainty(1));
    }

    @Test
    void leaving_out_a_foreign_element_changes_nothing() {
        NominalFractions fractions = resolve("Ag:60,Cu:40");
        assertThat(fractions.without(Set.of(ZN))).isSameAs(fractions);
    }

    @Test
    void some_of_the_elements_stand_in_the_order_asked_for() {
        NominalFractions all = resolve("Sn:90-95,Ag:3+-0.2,Cu:bal");
        NominalFractions turned = all.over(List.of(Element.of("Cu"), Element.of("Sn")));
        NominalFractions rest = all.without(Set.of(Element.of("Ag")));
        assertThat(turned.elements()).containsExactly(Element.of("Cu"), Element.of("Sn"));
        assertThat(turned.low(1)).isEqualTo(rest.low(0));
        assertThat(turned.high(0)).isEqualTo(rest.high(1));
        assertThat(turned.isDerived(0)).isTrue();
        assertThat(all.over(all.elements())).isSameAs(all);
        assertThatThrownBy(() -> all.over(List.of(Element.of("Zn")))).hasMessageContaining("got [Zn]");
    }

    @Test
    void leaving_out_everything_is_refused() {
        assertThatThrownBy(() -> resolve("Ag:60,Cu:40").without(Set.of(AG, CU)))
            .isInstanceOfSatisfying(CompositionException.class,
                e -> assertThat(e.kind()).isEqualTo(CompositionException.Kind.TOO_FEW_ELEMENTS));
        assertThatThrownBy(() -> resolve("Ag:100,Cu:0").without(Set.of(AG)))
            .hasMessage("Expected elements with a share in the nominal, got [Cu] of [Ag, Cu].");
    }

    @Test
    void a_range_from_zero_left_alone_is_all_there_is() {
        NominalFractions rest = resolve("Ag:bal,Cu:0-2").without(Set.of(AG));
        assertThat(rest.low(0)).isEqualTo(1);
        assertThat(rest.high(0)).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"Ag:100", "Ag:99.5", "Ag:0-100", "Ag:100,Cu:0", "Ag:bal"})
    void one_element_leaves_nothing_to_compare(String text) {
        assertThatThrownBy(() -> resolve(text).requireComparable())
            .isInstanceOfSatisfying(CompositionException.class,
                e -> assertThat(e.kind()).isEqualTo(CompositionException.Kind.TOO_FEW_ELEMENTS))
            .hasMessage("Expected at least two elements with a share in the nominal, got only Ag; "
                + "after closing to 100 % there is nothing to compare.");
    }

    @ParameterizedTest
    @ValueSource(strings = {"Ag:60.1,Cu:39.9", "Ag:99.9,Cu:0.1", "Fe:bal,C:0-0.03", "Ag:60,Cu:40,Zn:0"})
    void two_elements_with_a_share_can_be_compared(String text) {
        NominalFractions fractions = resolve(text);
        assertThat(fractions.requireComparable()).isSameAs(fractions);
    }

    private static NominalFractions resolve(String text) {
        return NominalText.parse(text, Basis.ATOMIC).resolve();
    }

    /** An element with the atomic weight the check case was computed with. */
    private static Element element(JsonNode input, int i) {
        Element standard = Element.of(input.get("elements").get(i).asText());
        return new Element(standard.atomicNumber(), standard.symbol(), standard.name(),
            input.get("atomic_mass").get(i).asDouble(), OptionalDouble.empty(), OptionalDouble.empty(), false);
    }
}
