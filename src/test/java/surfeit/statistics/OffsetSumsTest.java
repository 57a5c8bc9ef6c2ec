package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static surfeit.Vectors.tolerance;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;
import surfeit.Vectors;

class OffsetSumsTest {

    @Test
    void two_sums_around_the_nominal_give_the_class_mean_and_its_error() {
        JsonNode vector = Vectors.read("77-incremental-remove-and-sums");
        OffsetSums sums = OffsetSums.around(vector.at("/input/c0").doubleValue());
        for (double mean : Vectors.doubles(vector.at("/input/particle_means"))) {
            sums = sums.plus(mean);
        }
        double mean = vector.at("/expected/class_mean").doubleValue();
        double error = vector.at("/expected/class_s").doubleValue();
        assertThat(sums.mean()).isCloseTo(mean, tolerance(vector, mean));
        assertThat(sums.randomPart().standardError()).isCloseTo(error, tolerance(vector, error));
        assertThat(sums.randomPart().degreesOfFreedom()).isEqualTo(3);
    }

    @Test
    void a_replaced_particle_mean_leaves_the_sums_of_a_recount() {
        OffsetSums sums = OffsetSums.around(0.3).plus(0.31).plus(0.35).plus(0.29).minus(0.35).plus(0.33);
        RandomPart recount = RandomPart.ofMean(0.31, 0.29, 0.33);
        assertThat(sums.mean()).isCloseTo(0.31, within(1e-15));
        assertThat(sums.randomPart().standardError()).isCloseTo(recount.standardError(), within(1e-15));
        assertThat(OffsetSums.around(0.3).plus(0.31).minus(0.31)).isEqualTo(OffsetSums.around(0.3));
    }

    @Test
    void too_few_values_are_told() {
        assertThatThrownBy(() -> OffsetSums.around(0.3).mean()).hasMessageContaining("at least 1 value, found 0");
        assertThatThrownBy(() -> OffsetSums.around(0.3).minus(0.1)).hasMessageContaining("No value to remove");
        assertThatThrownBy(() -> OffsetSums.around(0.3).plus(0.2).randomPart())
            .hasMessageContaining("at least 2 values, found 1");
    }

    @Test
    void impossible_sums_are_refused() {
        assertThatThrownBy(() -> new OffsetSums(0, -1, 0, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new OffsetSums(0, 1, 0, -1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> OffsetSums.around(0.3).plus(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }
}
