package surfeit.segregation.sums;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.Vectors;
import surfeit.composition.Basis;
import surfeit.element.Element;
import surfeit.segregation.InventedSpots;
import surfeit.segregation.nominal.BelowLimit;
import surfeit.spot.Conditions;
import surfeit.spot.Counts;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/** One spot read into parts; invented spots, numbers by hand from the weights 107.868 of silver and 63.546 of copper. */
class SpotPartsTest {
    private static final Element AG = Element.of("Ag");
    private static final Element CU = Element.of("Cu");
    private static final double DEFAULT_LIMIT = 0.003;

    private static SpotParts read(boolean zeroIsNumber, Basis basis, ReportedValue silver, ReportedValue copper) {
        Map<Element, ReportedValue> values = new LinkedHashMap<>();
        values.put(AG, silver);
        values.put(CU, copper);
        return read(zeroIsNumber, basis, values);
    }

    private static SpotParts read(boolean zeroIsNumber, Basis basis, Map<Element, ReportedValue> values) {
        SpotParts parts = new SpotParts(List.of(AG, CU), DEFAULT_LIMIT, zeroIsNumber);
        parts.read(spot(basis, values));
        return parts;
    }

    private static Spot spot(Basis basis, Map<Element, ReportedValue> values) {
        return new InventedSpots().basis(basis).add("", "", values).list().get(0);
    }

    private static ReportedValue.Measured measured(double fraction, OptionalDouble sigma, OptionalDouble limit) {
        return new ReportedValue.Measured(fraction, "", sigma, Optional.empty(), limit, Optional.empty());
    }

    private static ReportedValue.Measured plain(double fraction) {
        return measured(fraction, OptionalDouble.empty(), OptionalDouble.empty());
    }

    private static ReportedValue.Measured sure(double fraction) {
        return measured(fraction, OptionalDouble.of(0.01), OptionalDouble.empty());
    }

    private static ReportedValue below(double limit) {
        return new ReportedValue.BelowLimit(limit, "");
    }

    private static ReportedValue notDetected(OptionalDouble limit) {
        return new ReportedValue.NotDetected(limit, "n.d.");
    }

    @ParameterizedTest
    @CsvSource({"0, false, true", "0, true, false", "0.01, false, false", "-0.01, true, false"})
    void zero_is_a_number_only_where_the_group_holds_negative_ones(double copper, boolean zeroIsNumber, boolean isBelow) {
        SpotParts parts = read(zeroIsNumber, Basis.ATOMIC, plain(0.6), plain(copper));
        assertThat(parts.below).containsExactly(false, isBelow);
        assertThat(parts.anyBelow).isEqualTo(isBelow);
        assertThat(parts.values[1]).isEqualTo(copper);
        assertThat(parts.sum()).isEqualTo(0.6 + copper);
    }

    /** 0.03 / 3.29. */
    @Test
    void a_value_below_its_limit_is_as_uncertain_as_an_empty_place() {
        SpotParts parts = read(false, Basis.ATOMIC, sure(0.6), below(0.03));
        assertThat(parts.hasUncertainty()).isTrue();
        assertThat(parts.uncertainties).containsExactly(new double[] {0.01, 0.0091185}, within(1e-7));
        SpotParts zero = read(false, Basis.ATOMIC, sure(0.6), measured(0, OptionalDouble.of(0.5), OptionalDouble.of(0.03)));
        assertThat(zero.uncertainties).containsExactly(new double[] {0.01, 0.0091185}, within(1e-7));
        assertThat(zero.hasUncertainty()).isTrue();
    }

    @Test
    void one_number_without_an_uncertainty_leaves_the_spot_without() {
        assertThat(read(false, Basis.ATOMIC, sure(0.6), plain(0.4)).hasUncertainty()).isFalse();
        assertThat(read(false, Basis.ATOMIC, plain(0.6), sure(0.4)).hasUncertainty()).isFalse();
        assertThat(read(false, Basis.ATOMIC, sure(0.6), sure(0.4)).hasUncertainty()).isTrue();
        assertThat(read(false, Basis.ATOMIC, plain(0.6), below(0.03)).hasUncertainty()).isFalse();
    }

    @Test
    void a_spot_of_nothing_has_no_uncertainty_and_cannot_be_closed() {
        SpotParts nothing = read(true, Basis.ATOMIC, sure(0.2), sure(-0.2));
        assertThat(nothing.hasUncertainty()).isFalse();
        assertThat(nothing.isClosable()).isFalse();
        assertThat(read(true, Basis.ATOMIC, sure(0.2), sure(-0.1)).isClosable()).isTrue();
        assertThat(read(true, Basis.ATOMIC, sure(0.1), sure(-0.2)).isClosable()).isFalse();
    }

    /** 0.6 / 107.868, 0.03 / 63.546 and 0.01 / 107.868. */
    @Test
    void mass_fractions_limits_and_uncertainties_become_atomic_parts() {
        for (ReportedValue copper : List.of(below(0.03), notDetected(OptionalDouble.of(0.03)),
            measured(0, OptionalDouble.empty(), OptionalDouble.of(0.03)))) {
            SpotParts parts = read(false, Basis.MASS, sure(0.6), copper);
            assertThat(parts.values[0]).isCloseTo(0.00556235, within(1e-8));
            assertThat(parts.uncertainties[0]).isCloseTo(9.27059e-5, within(1e-9));
            assertThat(parts.limits[0]).isNaN();
            assertThat(parts.limits[1]).isCloseTo(4.72099e-4, within(1e-9));
            assertThat(parts.limitAssumed).containsExactly(false, false);
            assertThat(parts.sumAtLimit()).isCloseTo(0.00556235 + 4.72099e-4, within(1e-8));
        }
    }

    /** The lab's 0.003 of the mass of what was measured: 0.003 x 0.6 / 63.546, and 0.003 x 0.6 x 107.868 / 63.546. */
    @ParameterizedTest
    @CsvSource({"MASS, 2.832594e-5", "ATOMIC, 3.05546e-3"})
    void where_no_limit_is_stated_the_labs_own_is_a_mass_fraction_in_either_unit(Basis basis, double expected) {
        for (ReportedValue copper : List.of(notDetected(OptionalDouble.empty()), plain(0), new ReportedValue.NotReported())) {
            SpotParts parts = read(false, basis, plain(0.6), copper);
            assertThat(parts.limits[1]).isCloseTo(expected, within(5e-6 * expected));
            assertThat(parts.limitAssumed).containsExactly(false, true);
        }
        SpotParts notListed = read(false, basis, Map.of(AG, plain(0.6)));
        assertThat(notListed.below).containsExactly(false, true);
        assertThat(notListed.limits[1]).isCloseTo(expected, within(5e-6 * expected));
    }

    /** (2.70554 + 3.28971 sqrt(2 x 400)) / 5000 = 0.0191505 of the value, which is not zero. */
    @Test
    void counts_beside_a_number_leave_it_a_number() {
        SpotParts parts = read(false, Basis.ATOMIC, sure(0.6), new ReportedValue.Measured(0.002, "", OptionalDouble.empty(),
            Optional.of(new Counts(5000, 400)), OptionalDouble.empty(), Optional.empty()));
        assertThat(parts.below).containsExactly(false, false);
        assertThat(parts.limits[1]).isNaN();
        assertThat(parts.hasUncertainty()).isTrue();
    }

    @Test
    void parts_are_closed_with_what_lies_below_as_nothing_or_as_the_limit() {
        SpotParts parts = read(false, Basis.ATOMIC, plain(0.6), below(0.2));
        double[] closed = new double[2];
        parts.close(false, closed);
        assertThat(closed).containsExactly(1, 0);
        assertThat(parts.closed()).containsExactly(1, 0);
        parts.close(true, closed);
        assertThat(closed).containsExactly(new double[] {0.75, 0.25}, within(1e-12));
    }

    @Test
    void another_element_is_noticed() {
        assertThat(read(false, Basis.ATOMIC, plain(0.6), plain(0.4)).holdAll()).isTrue();
        assertThat(read(false, Basis.ATOMIC, Map.of(AG, plain(0.6))).holdAll()).isTrue();
        assertThat(read(false, Basis.ATOMIC, Map.of(AG, plain(0.6), CU, plain(0.3), Element.of("Zn"), plain(0.1)))
            .holdAll()).isFalse();
    }

    @Test
    void the_next_spot_leaves_nothing_of_the_one_before() {
        SpotParts parts = new SpotParts(List.of(AG, CU), DEFAULT_LIMIT, false);
        parts.read(spot(Basis.ATOMIC, Map.of(AG, sure(0.6), CU, below(0.2))));
        assertThat(parts.closed()).containsExactly(1, 0);
        parts.read(spot(Basis.ATOMIC, Map.of(AG, plain(0.3), CU, plain(0.1))));
        assertThat(parts.closed()).containsExactly(new double[] {0.75, 0.25}, within(1e-12));
        assertThat(parts.anyBelow).isFalse();
        assertThat(parts.below).containsExactly(false, false);
        assertThat(parts.hasUncertainty()).isFalse();
        assertThat(parts.sum()).isCloseTo(0.4, within(1e-12));
    }

    /** The last digit of 60.1 % is 0.001. */
    @Test
    void the_step_of_the_last_digit_is_a_part_too() {
        Spot spot = spot(Basis.MASS, Map.of(AG, ReportedValue.Measured.of(0.601, "60.1"), CU, below(0.03)));
        SpotParts parts = new SpotParts(List.of(AG, CU), DEFAULT_LIMIT, false);
        assertThat(parts.step(spot, 0)).isCloseTo(0.001 / 107.868, within(1e-10));
        assertThat(parts.step(spot, 1)).isZero();
    }

    @Test
    void what_is_listed_in_some_spots_only_lies_below_its_limit_in_the_others() {
        JsonNode vector = Vectors.read("71-mixed-presence");
        JsonNode spots = vector.get("input").get("spots_atomic_percent");
        JsonNode limits = vector.get("input").get("detection_limit_atomic_percent");
        List<Element> elements = List.of(Element.of("Au"), Element.of("Ag"), Element.of("Cu"));
        SpotParts parts = new SpotParts(elements, 0.003, false);
        for (int s = 0; s < spots.size(); s++) {
            parts.read(spot(spots.get(s), limits));
            for (int i = 0; i < 3; i++) {
                assertThat(parts.below[i]).isEqualTo(vector.get("expected").get("censored").get(s).get(i).asBoolean());
                if (parts.below[i]) {
                    parts.limits[i] = limits.get(elements.get(i).symbol()).asDouble() / 100;
                }
            }
            double[] closed = new double[3];
            parts.close(false, closed);
            assertThat(closed).containsExactly(Sums.array(vector.get("expected").get("closed_zero_run").get(s)), within(1e-12));
            parts.close(true, closed);
            assertThat(closed).containsExactly(Sums.array(vector.get("expected").get("closed_limit_run").get(s)), within(1e-12));
        }
    }

    private static Spot spot(JsonNode values, JsonNode limits) {
        Map<Element, ReportedValue> reported = new LinkedHashMap<>();
        values.properties().forEach(entry -> reported.put(Element.of(entry.getKey()), entry.getValue().isNull()
            ? new ReportedValue.NotDetected(OptionalDouble.of(limits.get(entry.getKey()).asDouble() / 100), "n.d.")
            : ReportedValue.Measured.of(entry.getValue().asDouble() / 100, entry.getValue().asText())));
        return new Spot("s", Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Conditions.UNKNOWN,
            Optional.empty(), Basis.ATOMIC, reported);
    }
}
