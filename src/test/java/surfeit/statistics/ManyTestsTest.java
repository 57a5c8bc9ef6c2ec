package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.Vectors;

class ManyTestsTest {

    /** The 15 p values of the example in Benjamini and Hochberg (1995), from memory. */
    static final double[] PUBLISHED = {0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459,
        0.3240, 0.4262, 0.5719, 0.6528, 0.7590, 1.0000};

    @Test
    void holm_agrees_with_an_independent_library() {
        JsonNode vector = Vectors.read("40-holm");
        double[] adjusted = ManyTests.holm(Vectors.doubles(vector.at("/input/p")));
        assertCloseTo(vector, adjusted);
    }

    private static void assertCloseTo(JsonNode vector, double[] adjusted) {
        double[] expected = Vectors.doubles(vector.at("/expected/adjusted"));
        assertThat(adjusted).hasSameSizeAs(expected);
        for (int i = 0; i < expected.length; i++) {
            assertThat(adjusted[i]).as("test %s", i).isCloseTo(expected[i], Vectors.tolerance(vector, expected[i]));
        }
    }

    @Test
    void in_the_published_example_the_step_down_flags_three() {
        assertThat(Arrays.stream(ManyTests.holm(PUBLISHED)).filter(p -> p <= 0.05).count()).isEqualTo(3);
    }

    @Test
    void an_adjusted_p_is_never_smaller_and_the_order_given_is_kept() {
        double[] shuffled = {0.5719, 0.0004, 0.0278, 0.0001, 1, 0.0278};
        double[] holm = ManyTests.holm(shuffled);
        for (int i = 0; i < shuffled.length; i++) {
            assertThat(holm[i]).isBetween(shuffled[i], 1.0);
        }
        assertThat(holm[2]).isEqualTo(holm[5]);
        assertThat(holm[3]).isEqualTo(6 * 0.0001);
    }

    @Test
    void a_single_test_stays_as_it_is_and_no_test_gives_none() {
        assertThat(ManyTests.holm(0.03)).containsExactly(0.03);
        assertThat(ManyTests.holm()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.01, 1.01, Double.NaN})
    void what_is_no_p_value_is_refused(double p) {
        assertThatThrownBy(() -> ManyTests.holm(0.5, p)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("A p value is " + p);
    }
}
