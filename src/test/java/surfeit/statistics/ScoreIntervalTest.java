package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static surfeit.Vectors.tolerance;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.Vectors;

class ScoreIntervalTest {

    @Test
    void few_net_counts_over_background_agree_with_root_finding() {
        JsonNode vector = Vectors.read("55-score-interval-counts");
        JsonNode input = vector.path("input");
        double total = input.path("net_total").doubleValue();
        double[] expected = Vectors.doubles(vector.at("/expected/interval"));
        ScoreInterval interval = ScoreInterval.of(input.path("net").doubleValue() / total, total,
            input.path("background").doubleValue(), input.path("background_rest").doubleValue(), 0.95);
        assertThat(interval.low()).isCloseTo(expected[0], tolerance(vector, expected[0]));
        assertThat(interval.high()).isCloseTo(expected[1], tolerance(vector, expected[1]));
    }

    /** Invented counts; expected: scipy 1.10.1, the two roots of the equation by brentq. */
    @Test
    void the_background_under_the_other_peaks_widens_it_too() {
        ScoreInterval interval = ScoreInterval.of(0.4, 60, 20, 30, 0.95);
        assertThat(interval.low()).isCloseTo(0.20968534396, within(1e-10));
        assertThat(interval.high()).isCloseTo(0.60234902646, within(1e-10));
    }

    /** Newcombe, Statist. Med. 17 (1998) 857, table I, method 3 (from memory). */
    @ParameterizedTest
    @CsvSource({"81, 263, 0.2553, 0.3662", "15, 148, 0.0624, 0.1605", "0, 20, 0.0000, 0.1611", "1, 29, 0.0061, 0.1718"})
    void without_background_it_is_the_published_interval_of_a_proportion(double part, double total, double low,
                                                                         double high) {
        ScoreInterval interval = ScoreInterval.of(part / total, total, 0, 0, 0.95);
        assertThat(interval.low()).isCloseTo(low, within(5.1e-5));
        assertThat(interval.high()).isCloseTo(high, within(5.1e-5));
    }

    @Test
    void senseless_counts_are_refused() {
        assertThatThrownBy(() -> ScoreInterval.of(1.1, 100, 0, 0, 0.95)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> ScoreInterval.of(0.1, 0, 0, 0, 0.95)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> ScoreInterval.of(0.1, 10, -1, 0, 0.95)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> ScoreInterval.of(0.1, 10, 0, -1, 0.95)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ScoreInterval(0.2, 0.1)).hasMessageContaining("low ≤ high");
    }
}
