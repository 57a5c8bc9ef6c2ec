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
import surfeit.spot.ReportedValue;

/** Percent on its way out. */
class NumbersTest {

    @Property
    void what_was_put_as_percent_comes_back_as_it_was(@ForAll @BigRange(min = "-10", max = "150") @Scale(
        9) BigDecimal percent) {
        assertThat(Numbers.inPercent(Percent.toFraction(percent))).isEqualTo(percent.doubleValue());
    }

    @Property
    void what_was_stated_comes_back_as_a_number_that_is_the_same_when_put_again(@ForAll @DoubleRange(min = -10,
        max = 150) double percent) {
        double fraction = Percent.toFraction(BigDecimal.valueOf(percent));
        double back = Numbers.stated(fraction);
        assertThat(back).isCloseTo(percent, within(Math.ulp(percent)));
        assertThat(Percent.toFraction(BigDecimal.valueOf(back))).isEqualTo(fraction);
    }

    @Property
    void what_was_measured_comes_back_to_the_last_bit(@ForAll @DoubleRange(min = -10, max = 150) double percent) {
        String text = Double.toString(percent).replace('.', ',');
        assertThat(Numbers.stated(ReportedValue.Measured.of(Percent.toFraction(BigDecimal.valueOf(percent)), text)))
            .isEqualTo(percent + 0.0);
    }

    @Property
    void any_fraction_keeps_its_value_to_the_last_bits(@ForAll @DoubleRange(min = -1, max = 2) double fraction) {
        assertThat(Numbers.inPercent(fraction)).isCloseTo(fraction * 100, within(2 * Math.ulp(fraction * 100)));
    }
}
