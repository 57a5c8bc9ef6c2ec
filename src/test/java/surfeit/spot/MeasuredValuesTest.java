package surfeit.spot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a value says of its own rounding, and what no spot or sample can hold. Invented numbers. */
class MeasuredValuesTest {

    /** By hand: the last printed digit of a percentage, over 100. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"62 | 0.01", "62.4 | 0.001", "62,40 | 0.0001", "9.09 | 0.0001", "-0.3 | 0.001",
        "6.24E1 | 0.001", "6,240e1 | 0.0001", "3E-1 | 0.001", "1e2 | 1", "1.0E2 | 0.1"})
    void the_rounding_of_a_value_is_the_step_of_its_last_printed_digit(String printed, double step) {
        assertThat(ReportedValue.Measured.of(0.5, printed).roundingStep()).isCloseTo(step, within(1e-15));
    }

    @Test
    void an_uncertainty_is_told_only_where_one_was_stated() {
        assertThat(ReportedValue.Measured.of(0.5, "50").uncertainty()).isEmpty();
        assertThat(measured(OptionalDouble.of(0.004), OptionalDouble.empty()).uncertainty()).hasValue(0.004);
        assertThat(measured(OptionalDouble.of(0), OptionalDouble.empty()).uncertainty()).hasValue(0);
    }

    private static ReportedValue.Measured measured(OptionalDouble uncertainty, OptionalDouble limit) {
        return new ReportedValue.Measured(0.5, "50", uncertainty, Optional.empty(), limit, Optional.empty());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -0.01, 1.0001, Double.NaN})
    void a_detection_limit_lies_above_nothing_and_at_most_at_the_whole(double limit) {
        assertThatThrownBy(() -> new ReportedValue.BelowLimit(limit, "<")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ReportedValue.NotDetected(OptionalDouble.of(limit), "n.d."))
            .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> measured(OptionalDouble.empty(), OptionalDouble.of(limit)))
            .hasMessageContaining("at most at 100 %");
        assertThat(new ReportedValue.BelowLimit(1, "<100").limitFraction()).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void conditions_and_geometry_hold_numbers_above_zero_only(double value) {
        OptionalDouble wrong = OptionalDouble.of(value);
        OptionalDouble none = OptionalDouble.empty();
        assertThatThrownBy(() -> new Conditions(wrong, none, none, none, Optional.empty(), none)).hasMessageContaining("beam energy");
        assertThatThrownBy(() -> new Conditions(none, none, none, wrong, Optional.empty(), none)).hasMessageContaining("raw total");
        assertThatThrownBy(() -> new Sample.Geometry(wrong, none, none, none)).hasMessageContaining("beam energy");
        assertThatThrownBy(() -> new Sample.Geometry(none, none, none, wrong)).hasMessageContaining("particle diameter");
    }

    @Test
    void a_take_off_angle_reaches_to_90_degrees_and_a_tilt_either_way() {
        OptionalDouble none = OptionalDouble.empty();
        assertThat(new Sample.Geometry(none, OptionalDouble.of(90), none, none).takeOffAngleDeg()).hasValue(90);
        assertThatThrownBy(() -> new Sample.Geometry(none, OptionalDouble.of(90.1), none, none)).hasMessageContaining("at most at 90");
        assertThat(new Conditions(none, none, none, none, Optional.empty(), OptionalDouble.of(-90)).tiltDeg()).hasValue(-90);
        assertThatThrownBy(() -> new Conditions(none, none, none, none, Optional.empty(), OptionalDouble.of(-90.1)))
            .hasMessageContaining("between -90 and 90");
    }
}
