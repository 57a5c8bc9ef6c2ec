package surfeit.composition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.Vectors;

class LogRatiosTest {

    @Test
    void a_ternary_agrees_with_an_independent_library() {
        JsonNode check = Vectors.read("09-clr-ilr-ternary");
        JsonNode expected = check.get("expected");
        double[] parts = Vectors.doubles(check.get("input").get("parts"));

        assertThat(Closure.close(parts)).containsExactly(Vectors.doubles(expected.get("closure")), within(1e-12));
        assertThat(LogRatios.clr(parts)).containsExactly(Vectors.doubles(expected.get("clr")), within(1e-12));
        assertThat(LogRatios.ilr(parts)).containsExactly(Vectors.doubles(expected.get("ilr")), within(1e-12));
        assertThat(LogRatios.ilrInverse(LogRatios.ilr(parts)))
            .containsExactly(Vectors.doubles(expected.get("ilr_inverse")), within(1e-12));
        assertThat(LogRatios.clrInverse(LogRatios.clr(parts))).containsExactly(Closure.close(parts), within(1e-12));
    }

    @Test
    void six_parts_agree_with_an_independent_library() {
        JsonNode check = Vectors.read("10-clr-six");
        assertThat(LogRatios.clr(Vectors.doubles(check.get("input").get("parts"))))
            .containsExactly(Vectors.doubles(check.get("expected").get("clr")), within(1e-12));
    }

    @Test
    void the_difference_of_two_compositions_agrees_with_an_independent_library() {
        JsonNode check = Vectors.read("11-perturbation-difference");
        JsonNode expected = check.get("expected");
        double[] spot = Vectors.doubles(check.get("input").get("spot"));
        double[] nominal = Vectors.doubles(check.get("input").get("nominal"));
        double[] difference = LogRatios.perturbationDifference(spot, nominal);

        assertThat(difference).containsExactly(Vectors.doubles(expected.get("perturbation")), within(1e-12));
        assertThat(LogRatios.clr(difference))
            .containsExactly(Vectors.doubles(expected.get("clr_difference")), within(1e-12));
        assertThat(LogRatios.distance(spot, nominal))
            .isCloseTo(expected.get("aitchison_distance").asDouble(), within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(strings = {"12-zero-replacement", "13-zero-replacement-two"})
    void replaced_zeros_agree_with_an_independent_library(String name) {
        JsonNode check = Vectors.read(name);
        JsonNode input = check.get("input");
        assertThat(LogRatios.replaceZeros(Vectors.doubles(input.get("parts")), input.get("delta_fraction").asDouble()))
            .containsExactly(Vectors.doubles(check.get("expected").get("replaced")), within(1e-12));
    }

    /** Martin-Fernandez et al., Math. Geol. 35 (2003) 253: example with delta 1/16, quoted in library documentation. */
    @Test
    void the_published_example_of_zero_replacement_holds() {
        assertThat(LogRatios.replaceZeros(new double[] {0.2, 0.4, 0.4, 0}, 1 / 16.0))
            .containsExactly(new double[] {0.1875, 0.375, 0.375, 0.0625}, within(1e-15));
        assertThat(LogRatios.replaceZeros(new double[] {0, 0.5, 0.5, 0}, 1 / 16.0))
            .containsExactly(new double[] {0.0625, 0.4375, 0.4375, 0.0625}, within(1e-15));
        assertThat(LogRatios.replaceZeros(new double[] {30, 70}, 1 / 16.0))
            .containsExactly(new double[] {0.3, 0.7}, within(1e-15));
    }

    /** The example composition in the documentation of a statistics library; ilr worked out with the formula above. */
    @Test
    void clr_and_ilr_of_a_documented_example_hold_and_have_the_same_length() {
        double[] parts = {0.1, 0.3, 0.4, 0.2};
        double[] clr = LogRatios.clr(parts);
        double[] ilr = LogRatios.ilr(parts);
        assertThat(clr).containsExactly(new double[] {-0.79451346, 0.30409883, 0.5917809, -0.10136628}, within(1e-8));
        assertThat(ilr).containsExactly(new double[] {-0.77683620, -0.68339802, 0.11704769}, within(1e-8));
        assertThat(norm(clr)).isCloseTo(1.0412528, within(1e-7));
        assertThat(norm(ilr)).isCloseTo(norm(clr), within(1e-14));
    }

    /** Hongite, 25 rocks of 5 minerals (Aitchison 1986); centre and variances worked out from that table. */
    @Test
    void the_centre_and_clr_variances_of_hongite_are_found() throws IOException {
        List<double[]> clrs = Files.readAllLines(Path.of("shared", "vectors", "hongite.csv")).stream().skip(1)
            .map(line -> Arrays.stream(line.split(",")).skip(1).mapToDouble(Double::parseDouble).toArray())
            .map(LogRatios::clr).toList();
        assertThat(clrs).hasSize(25);
        double[] means = IntStream.range(0, 5).mapToDouble(i -> mean(clrs, i)).toArray();
        double[] variances = IntStream.range(0, 5).mapToDouble(i ->
            clrs.stream().mapToDouble(clr -> Math.pow(clr[i] - means[i], 2)).sum() / (clrs.size() - 1)).toArray();

        double[] centre = Arrays.stream(LogRatios.clrInverse(means)).map(fraction -> fraction * 100).toArray();
        assertThat(centre).containsExactly(new double[] {48.9414, 21.9661, 9.8813, 10.4054, 8.8058}, within(5e-5));
        assertThat(variances)
            .containsExactly(new double[] {0.064437, 0.552983, 0.980261, 0.047454, 0.046189}, within(5e-7));
        assertThat(Arrays.stream(variances).sum()).isCloseTo(1.691324, within(5e-7));
    }

    @Test
    void a_common_factor_does_not_matter() {
        assertThat(LogRatios.distance(new double[] {0.6, 0.4}, new double[] {60, 40})).isCloseTo(0, within(1e-15));
        assertThat(LogRatios.ilr(new double[] {60, 30, 10}))
            .containsExactly(LogRatios.ilr(new double[] {0.6, 0.3, 0.1}), within(1e-14));
    }

    @Test
    void large_log_ratios_turn_back_without_overflow() {
        assertThat(LogRatios.clrInverse(new double[] {800, -800})).containsExactly(new double[] {1, 0}, within(1e-15));
    }

    @Test
    void a_part_that_is_not_above_zero_is_refused() {
        assertThatThrownBy(() -> LogRatios.clr(new double[] {0.5, 0}))
            .isInstanceOfSatisfying(CompositionException.class,
                e -> assertThat(e.kind()).isEqualTo(CompositionException.Kind.VALUE_OUT_OF_RANGE))
            .hasMessage("A log-ratio needs parts above 0, got 0.0; replace zeros first.");
        assertThatThrownBy(() -> LogRatios.ilr(new double[] {0.5, Double.NaN})).hasMessageContaining("got NaN");
    }

    @Test
    void a_replacement_that_leaves_no_room_is_refused() {
        assertThatThrownBy(() -> LogRatios.replaceZeros(new double[] {1, 0, 0}, 0.5))
            .hasMessage("The fraction put in place of 2 zeros lies above 0 and leaves room for the rest, got 0.5.");
        assertThatThrownBy(() -> LogRatios.replaceZeros(new double[] {1, 0}, 0))
            .isInstanceOf(CompositionException.class);
    }

    @Test
    void compositions_of_different_size_are_not_compared() {
        assertThatThrownBy(() -> LogRatios.distance(new double[] {1, 2}, new double[] {1, 2, 3}))
            .hasMessage("Expected compositions of equally many parts, got 2 and 3.");
        assertThatThrownBy(() -> LogRatios.perturbationDifference(new double[] {1, 2}, new double[] {1, 2, 3}))
            .isInstanceOf(IllegalArgumentException.class);
    }

    private static double mean(List<double[]> rows, int column) {
        return rows.stream().mapToDouble(row -> row[column]).sum() / rows.size();
    }

    private static double norm(double[] vector) {
        return Math.sqrt(Arrays.stream(vector).map(value -> value * value).sum());
    }
}
