package surfeit.http.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.BigRange;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import surfeit.composition.Percent;

/** Percent on its way out. */
class NumbersTest {

    @Property
    void what_was_put_as_percent_comes_back_as_it_was(@ForAll @BigRange(min = "-10", max = "150") @Scale(
        9) BigDecimal percent) {
        assertThat(Numbers.inPercent(Percent.toFraction(percent))).isEqualTo(percent.doubleValue());
    }

    @Property
    void any_fraction_keeps_its_value_to_the_last_bits(@ForAll @DoubleRange(min = -1, max = 2) double fraction) {
        assertThat(Numbers.inPercent(fraction)).isCloseTo(fraction * 100, within(2 * Math.ulp(fraction * 100)));
    }
}
