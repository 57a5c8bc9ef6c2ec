package surfeit.segregation.sums;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static surfeit.segregation.InventedSpots.group;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import surfeit.element.Element;
import surfeit.segregation.InventedSpots;
import surfeit.segregation.answer.ForeignElement;
import surfeit.spot.Counts;
import surfeit.spot.ReportedValue;

/** What counts say of a value; invented numbers, formulas of Currie 1968 (from memory) worked out by hand. */
class CountingTest {
    private static ReportedValue.Measured measured(double fraction, double limit, Counts... counts) {
        return new ReportedValue.Measured(fraction, "", OptionalDouble.empty(),
            Optional.ofNullable(counts.length == 0 ? null : counts[0]),
            limit > 0 ? OptionalDouble.of(limit) : OptionalDouble.empty(), Optional.empty());
    }

    /** sqrt(5000 + 2 x 400) / 5000 = 0.0152315; (2.70554 + 3.28971 sqrt(2 x 400)) / 5000 = 0.0191505. */
    @Test
    void counts_tell_the_uncertainty_and_the_limit_of_the_value_beside_them() {
        ReportedValue.Measured value = measured(0.002, 0, new Counts(5000, 400));
        assertThat(Counting.uncertainty(value)).isCloseTo(0.002 * 0.0152315, within(1e-9));
        assertThat(Counting.limit(value)).isCloseTo(0.002 * 0.0191505, within(1e-9));
    }

    @Test
    void a_stated_limit_comes_first_and_a_zero_or_no_counts_tell_none() {
        assertThat(Counting.limit(measured(0.002, 0.001, new Counts(5000, 400)))).isEqualTo(0.001);
        assertThat(Counting.limit(measured(0, 0, new Counts(3, 400)))).isNaN();
        assertThat(Counting.limit(measured(0.002, 0, new Counts(-3, 400)))).isNaN();
        assertThat(Counting.limit(measured(0.002, 0))).isNaN();
        assertThat(Counting.uncertainty(measured(0, 0.00329, new Counts(-3, 400)))).isCloseTo(0.001, within(1e-12));
    }

    @Test
    void an_element_outside_the_nominal_is_present_above_the_limit_its_counts_tell() {
        ForeignElement counted = zinc(new Counts(5000, 400));
        assertThat(counted.limitAssumed()).isFalse();
        assertThat(counted.detectionLimit()).isCloseTo(0.0035 * 0.0191505, within(1e-9));
        assertThat(counted.present()).isTrue();
        ForeignElement uncounted = zinc();
        assertThat(uncounted.limitAssumed()).isTrue();
        assertThat(uncounted.detectionLimit()).isBetween(0.0036, 0.005);
        assertThat(uncounted.present()).isFalse();
    }

    /** 0.35 at% of zinc on each of three particles. */
    private static ForeignElement zinc(Counts... counts) {
        InventedSpots spots = new InventedSpots();
        for (int i = 0; i < 3; i++) {
            Map<Element, ReportedValue> values = new LinkedHashMap<>();
            values.put(Element.of("Ag"), measured(0.6 + 0.001 * i, 0));
            values.put(Element.of("Cu"), measured(0.3965 - 0.001 * i, 0));
            values.put(Element.of("Zn"), measured(0.0035, 0, counts));
            spots.add("matrix", "P" + i, values);
        }
        return group(spots.against("Ag:60,Cu:40"), "matrix").foreign().get(0);
    }
}
