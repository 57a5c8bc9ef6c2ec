package surfeit.report.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ScaleTest {

    @Test
    void equal_ratios_take_equal_room_on_a_logarithmic_axis() {
        Scale scale = new LogScale(0.1, 10, 100, 300);
        assertThat(scale.at(0.1)).isEqualTo(100);
        assertThat(scale.at(1)).isCloseTo(200, within(1e-9));
        assertThat(scale.at(2) - scale.at(1)).isCloseTo(scale.at(1) - scale.at(0.5), within(1e-9));
    }

    @Test
    void a_logarithmic_axis_marks_round_values_as_many_as_have_room() {
        assertThat(new LogScale(0.1, 10, 0, 300).ticks()).extracting(Tick::label)
            .containsExactly("0.1", "0.2", "0.5", "1", "2", "5", "10");
        assertThat(new LogScale(0.5, 2, 0, 300).ticks()).extracting(Tick::label)
            .containsExactly("0.5", "0.7", "1", "1.5", "2");
        assertThat(new LogScale(0.001, 1000, 0, 220).ticks()).extracting(Tick::label)
            .containsExactly("0.001", "0.01", "0.1", "1", "10", "100", "1000");
    }

    @Test
    void an_axis_of_equal_steps_ends_at_round_values_inside_its_limits() {
        LinearScale scale = LinearScale.around(41.3, 57.2, 0, 100, 0, 600, 8);
        assertThat(scale.low()).isEqualTo(40);
        assertThat(scale.high()).isEqualTo(58);
        assertThat(scale.ticks()).extracting(Tick::label).startsWith("40", "42").endsWith("58");
        assertThat(LinearScale.around(-3, 99, 0, 100, 0, 600, 8).low()).isZero();
        assertThat(scale.at(49)).isCloseTo(300, within(1e-9));
    }

    @Test
    void values_beyond_the_ends_are_drawn_at_the_ends() {
        Scale scale = new LogScale(0.5, 2, 0, 100);
        assertThat(scale.within(0)).isZero();
        assertThat(scale.within(Double.POSITIVE_INFINITY)).isEqualTo(100);
        assertThat(scale.holds(3)).isFalse();
    }

    @Test
    void an_axis_without_extent_is_refused() {
        assertThatThrownBy(() -> new LogScale(0, 1, 0, 100)).hasMessageContaining("above 0, got 0.0 to 1.0");
        assertThatThrownBy(() -> new LinearScale(1, 1, 0, 100, 1)).hasMessageContaining("got 1.0 to 1.0");
    }
}
