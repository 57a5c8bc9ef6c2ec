package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static surfeit.Vectors.tolerance;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.Vectors;

class HotellingT2Test {

    /** Johnson and Wichern, Applied Multivariate Statistical Analysis, sweat rate, sodium, potassium of 20 women. */
    private static final double[][] SWEAT = {{3.7, 48.5, 9.3}, {5.7, 65.1, 8.0}, {3.8, 47.2, 10.9}, {3.2, 53.2, 12.0},
        {3.1, 55.5, 9.7}, {4.6, 36.1, 7.9}, {2.4, 24.8, 14.0}, {7.2, 33.1, 7.6}, {6.7, 47.4, 8.5}, {5.4, 54.1, 11.3},
        {3.9, 36.9, 12.7}, {4.5, 58.8, 12.3}, {3.5, 27.8, 9.8}, {4.5, 40.2, 8.4}, {1.5, 13.5, 10.1}, {8.5, 56.4, 7.1},
        {4.5, 71.6, 8.2}, {6.5, 52.8, 10.9}, {4.1, 44.1, 11.2}, {5.5, 40.9, 9.4}};

    /** T2 = 9.74 and the critical value 8.18 at 10 % are the book's; further digits computed from its data. */
    @Test
    void the_sweat_data_come_out() {
        HotellingT2 test = HotellingT2.of(SWEAT, new double[]{4, 50, 10}).orElseThrow();
        assertThat(test.t2()).isCloseTo(9.738773, within(5e-7));
        assertThat(test.f()).isCloseTo(2.904546, within(5e-7));
        assertThat(test.pValue()).isCloseTo(0.064928, within(5e-7));
        assertThat(new HotellingT2(8.1726, 3, 20).pValue()).isCloseTo(0.10, within(5e-6));
    }

    @ParameterizedTest
    @ValueSource(strings = {"33-hotelling-ternary", "34-hotelling-six"})
    void log_ratios_of_particle_means_agree_with_an_independent_library(String name) {
        JsonNode vector = Vectors.read(name);
        double[][] rows = Arrays.stream(Vectors.rows(vector.at("/input/particle_means_atomic_fraction")))
            .map(HotellingT2Test::logRatios).toArray(double[][]::new);
        double[] nominal = logRatios(Vectors.doubles(vector.at("/input/nominal_atomic_percent")));
        HotellingT2 test = HotellingT2.of(rows, nominal).orElseThrow();
        int[] df = Vectors.ints(vector.at("/expected/df"));
        double t2 = vector.at("/expected/T2").doubleValue();
        double f = vector.at("/expected/F").doubleValue();
        double p = vector.at("/expected/p").doubleValue();
        assertThat(test.t2()).isCloseTo(t2, tolerance(vector, t2));
        assertThat(test.f()).isCloseTo(f, tolerance(vector, f));
        assertThat(test.quantities()).isEqualTo(df[0]);
        assertThat(test.observations() - test.quantities()).isEqualTo(df[1]);
        assertThat(test.pValue()).isCloseTo(p, tolerance(vector, p));
    }

    /** ln(xᵢ/x_last): T2 is the same for every log-ratio basis. */
    private static double[] logRatios(double[] parts) {
        double last = parts[parts.length - 1];
        return Arrays.stream(parts, 0, parts.length - 1).map(part -> Math.log(part / last)).toArray();
    }

    @Test
    void with_one_quantity_it_is_the_square_of_t() {
        double[][] rows = {{0.52}, {0.55}, {0.5}, {0.56}};
        HotellingT2 test = HotellingT2.of(rows, new double[]{0.5}).orElseThrow();
        assertThat(test.t2()).isCloseTo(2.3603873774083257 * 2.3603873774083257, within(1e-10));
        assertThat(test.pValue()).isCloseTo(0.09936503735003784, within(1e-12));
    }

    @Test
    void too_few_observations_or_dependent_quantities_give_no_test() {
        assertThat(HotellingT2.of(new double[][]{{1, 2}, {2, 1}}, new double[]{0, 0})).isEmpty();
        double[][] closed = {{0.6, 0.4}, {0.62, 0.38}, {0.59, 0.41}, {0.65, 0.35}};
        assertThat(HotellingT2.of(closed, new double[]{0.6, 0.4})).isEmpty();
        assertThat(HotellingT2.of(new double[][]{{1}, {1}, {1}}, new double[]{0})).isEmpty();
    }

    @Test
    void rows_of_another_length_are_refused() {
        assertThatThrownBy(() -> HotellingT2.of(new double[][]{{1, 2}, {1}}, new double[]{0, 0}))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("Expected 2 quantities");
        assertThatThrownBy(() -> new HotellingT2(-1, 2, 5)).isInstanceOf(IllegalArgumentException.class);
    }
}
