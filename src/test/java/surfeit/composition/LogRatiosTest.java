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
import surfeit.Vectors;

class LogRatiosTest {

    @Test
    void a_ternary_agrees_with_an_independent_library() {
        JsonNode check = Vectors.read("09-clr-ilr-ternary");
        JsonNode expected = check.get("expected");
        double[] parts = Vectors.doubles(check.get("input").get("parts"));

        assertThat(Closure.close(parts)).containsExactly(Vectors.doubles(expected.get("closure")), within(1e-12));
        assertThat(LogRatios.ilr(parts)).containsExactly(Vectors.doubles(expected.get("ilr")), within(1e-12));
    }

    /** The isometric log-ratios are as long as the centred ones, which the other library gives. */
    @Test
    void six_parts_are_as_far_from_equal_parts_as_an_independent_library_says() {
        JsonNode check = Vectors.read("10-clr-six");
        assertThat(norm(LogRatios.ilr(Vectors.doubles(check.get("input").get("parts")))))
            .isCloseTo(norm(Vectors.doubles(check.get("expected").get("clr"))), within(1e-12));
    }

    @Test
    void two_compositions_are_as_far_apart_as_an_independent_library_says() {
        JsonNode check = Vectors.read("11-perturbation-difference");
        double[] spot = LogRatios.ilr(Vectors.doubles(check.get("input").get("spot")));
        double[] nominal = LogRatios.ilr(Vectors.doubles(check.get("input").get("nominal")));
        assertThat(norm(IntStream.range(0, spot.length).mapToDouble(i -> spot[i] - nominal[i]).toArray()))
            .isCloseTo(check.get("expected").get("aitchison_distance").asDouble(), within(1e-12));
    }

    /** The example composition in the documentation of a statistics library; ilr worked out with the formula above. */
    @Test
    void a_documented_example_holds() {
        double[] ilr = LogRatios.ilr(new double[] {0.1, 0.3, 0.4, 0.2});
        assertThat(ilr).containsExactly(new double[] {-0.77683620, -0.68339802, 0.11704769}, within(1e-8));
        assertThat(norm(ilr)).isCloseTo(1.0412528, within(1e-7));
    }

    /** Hongite, 25 rocks of 5 minerals (Aitchison 1986); total variance worked out from that table. */
    @Test
    void the_total_variance_of_hongite_is_found() throws IOException {
        List<double[]> rows = Files.readAllLines(Path.of("shared", "vectors", "hongite.csv")).stream().skip(1)
            .map(line -> Arrays.stream(line.split(",")).skip(1).mapToDouble(Double::parseDouble).toArray())
            .map(LogRatios::ilr).toList();
        assertThat(rows).hasSize(25);
        double total = IntStream.range(0, 4).mapToDouble(i -> {
            double mean = rows.stream().mapToDouble(row -> row[i]).sum() / rows.size();
            return rows.stream().mapToDouble(row -> Math.pow(row[i] - mean, 2)).sum() / (rows.size() - 1);
        }).sum();
        assertThat(total).isCloseTo(1.691324, within(5e-7));
    }

    @Test
    void a_common_factor_does_not_matter() {
        assertThat(LogRatios.ilr(new double[] {60, 30, 10}))
            .containsExactly(LogRatios.ilr(new double[] {0.6, 0.3, 0.1}), within(1e-14));
    }

    @Test
    void a_part_that_is_not_above_zero_is_refused() {
        assertThatThrownBy(() -> LogRatios.ilr(new double[] {0.5, 0}))
            .isInstanceOfSatisfying(CompositionException.class,
                e -> assertThat(e.kind()).isEqualTo(CompositionException.Kind.VALUE_OUT_OF_RANGE))
            .hasMessage("A log-ratio needs parts above 0, got 0.0; replace zeros first.");
        assertThatThrownBy(() -> LogRatios.ilr(new double[] {0.5, Double.NaN})).hasMessageContaining("got NaN");
    }

    private static double norm(double[] vector) {
        return Math.sqrt(Arrays.stream(vector).map(value -> value * value).sum());
    }
}
