package surfeit.rival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.element.Element;
import surfeit.rival.Rival.CouldExplain;

class ShiftTest {

    private static Shift shift(int direction, double size, double random) {
        return new Shift(0, Element.of("Cu"), direction, 0.4, size, random, 0.2, Optional.empty(), Optional.empty());
    }

    @Test
    void a_cause_explains_alone_what_it_reaches_up_to_the_near_end_of_the_scatter() {
        Shift shift = shift(1, 1.0, 0.2);
        assertThat(shift.needed()).isCloseTo(0.8, within(1e-12));
        assertThat(shift.couldExplain(0.81)).isEqualTo(CouldExplain.YES);
        assertThat(shift.couldExplain(0.79)).isEqualTo(CouldExplain.IN_PART);
        assertThat(shift.couldExplain(0.09)).isEqualTo(CouldExplain.NO);
        assertThat(shift.couldExplain(Double.POSITIVE_INFINITY)).isEqualTo(CouldExplain.YES);
    }

    @Test
    void however_wide_the_scatter_half_of_the_shift_must_be_reached() {
        assertThat(shift(1, 1.0, 5).needed()).isCloseTo(0.5, within(1e-12));
    }

    @Test
    void the_factor_is_what_the_cause_makes_of_nominal_in_the_direction_seen() {
        assertThat(shift(1, 1, 0).factor(Math.log(2)).orElseThrow()).isCloseTo(0.8 / 1.4 / 0.4, within(1e-12));
        assertThat(shift(-1, 1, 0).factor(Math.log(2)).orElseThrow()).isCloseTo(0.25 / 0.4, within(1e-12));
        assertThat(shift(1, 1, 0).factor(-1).orElseThrow()).isCloseTo(1, within(1e-12));
        assertThat(shift(1, 1, 0).factor(Double.POSITIVE_INFINITY)).isEmpty();
    }

    @Test
    void a_shift_without_size_or_inside_no_nominal_cannot_be() {
        assertThatThrownBy(() -> shift(1, 0, 0)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("size above 0");
        assertThatThrownBy(() -> shift(0, 1, 0)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @CsvSource({"0,0", "0.00001,0", "0.0312,0.0312", "0.5,0.5", "1.234,1.23", "12.34,12.3", "99.96,100", "100.4,100",
    "1234,1234",
        "-0.25,-0.25", "0.1004,0.1", "2,2", "1.999,2"})
    void numbers_have_three_figures_and_no_idle_zeros(double value, String text) {
        assertThat(Words.number(value)).isEqualTo(text);
    }

    @Test
    void log_odds_move_as_closing_says() {
        double[] fractions = {0.5, 0.3, 0.2};
        double both = LogOdds.multiplied(fractions, new double[] {2, 1, 1}, 0);
        assertThat(both).isCloseTo(Math.log(2), within(1e-12));
        assertThat(LogOdds.oneMultiplied(fractions, 1, 3, 0)).isCloseTo(LogOdds.multiplied(fractions, new double[] {1,
            3, 1}, 0),
            within(1e-12));
        assertThat(LogOdds.added(fractions, new double[] {0.5, 0, 0}, 0)).isCloseTo(Math.log(2), within(1e-12));
    }
}
