package surfeit.composition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class PercentTest {

    /** 60.1 / 100 and 0.601 are different doubles; the nearest to sixty and one tenth percent is the second. */
    @Test
    void percent_become_the_nearest_double() {
        assertThat(Percent.toFraction(new BigDecimal("60.1"))).isEqualTo(0.601);
        assertThat(Percent.toFraction(new BigDecimal("0.07"))).isEqualTo(0.0007);
        assertThat(Percent.toFraction(new BigDecimal("29"))).isEqualTo(0.29);
    }

    @Test
    void a_fraction_shows_as_the_shortest_percent() {
        assertThat(Percent.ofFraction(0.601)).hasToString("60.1");
        assertThat(Percent.ofFraction(0.29)).hasToString("29");
        assertThat(Percent.ofFraction(1)).hasToString("100");
        assertThat(Percent.ofFraction(10)).hasToString("1000");
        assertThat(Percent.ofFraction(0)).hasToString("0");
        assertThat(Percent.ofFraction(2e-3)).hasToString("0.2");
        assertThat(Percent.ofFraction(-0.002)).hasToString("-0.2");
    }

    @Property
    void every_fraction_survives_being_shown_in_percent(@ForAll @DoubleRange(min = -0.1, max = 1.5) double fraction) {
        assertThat(Percent.toFraction(Percent.ofFraction(fraction))).isEqualTo(fraction == 0 ? 0.0 : fraction);
    }

    @Test
    void a_number_that_is_none_is_refused() {
        assertThatThrownBy(() -> Percent.ofFraction(Double.NaN)).isInstanceOf(NumberFormatException.class);
    }
}
