package surfeit.composition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.Vectors;
import surfeit.element.Element;

class ClosureTest {

    @ParameterizedTest
    @ValueSource(strings = {"01-wt2at-binary", "02-wt2at-ternary-contaminants", "03-wt2at-six", "04-wt2at-near-pure"})
    void mass_percent_becomes_atomic_fractions(String name) {
        JsonNode check = Vectors.read(name);
        JsonNode input = check.get("input");
        List<String> kept = strings(check.get("expected").get("elements"));
        int[] columns = kept.stream().mapToInt(strings(input.get("elements"))::indexOf).toArray();
        double[] parts = pick(Vectors.doubles(input.get("mass_percent")), columns);
        double[] weights = kept.stream().mapToDouble(symbol -> input.get("atomic_mass").get(symbol).asDouble())
            .toArray();

        assertAll(check, "atomic_fraction", Closure.close(parts, weights));
    }

    @Test
    void atomic_percent_becomes_mass_fractions() {
        JsonNode check = Vectors.read("05-at2wt-ternary");
        JsonNode input = check.get("input");
        double[] parts = Vectors.doubles(input.get("atomic_percent"));
        double[] divisors = strings(input.get("elements")).stream()
            .mapToDouble(symbol -> 1 / input.get("atomic_mass").get(symbol).asDouble()).toArray();

        assertAll(check, "mass_fraction", Closure.close(parts, divisors));
    }

    /**
     * Handbook alloys worked out by hand from the atomic weights of 2021; 18.6 at% silicon in gold is the Au-Si
     * eutectic (Okamoto and Massalski 1983, figure from memory), Sn61.9Pb38.1 and SAC305 are usual solders.
     */
    @ParameterizedTest
    @CsvSource({"ATOMIC,Au:81.4;Si:18.6,96.8447;3.1553", "ATOMIC,Au:82;Si:18,96.9651;3.0349",
        "ATOMIC,Au:72;Ge:28,87.4587;12.5413", "MASS,Au:80;Sn:20,70.6807;29.3193",
        "MASS,Sn:61.9;Pb:38.1,73.9295;26.0705", "MASS,Sn:96.5;Ag:3.0;Cu:0.5,95.7954;3.2774;0.9272",
        "MASS,Ag:71.9;Cu:28.1,60.117;39.883"})
    void handbook_alloys_change_basis(Basis from, String composition, String expectedPercent) {
        Nominal nominal = NominalText.parse(composition, from);
        double[] parts = nominal.limits().middle();
        Basis to = from == Basis.MASS ? Basis.ATOMIC : Basis.MASS;
        double[] expected = Arrays.stream(expectedPercent.split(";")).mapToDouble(Double::parseDouble).toArray();

        double[] converted = Closure.convert(parts, nominal.elements(), from, to);

        for (int i = 0; i < expected.length; i++) {
            assertThat(converted[i] * 100).isCloseTo(expected[i], within(0.0006));
        }
        assertThat(Closure.convert(converted, nominal.elements(), to, from)).containsExactly(parts, within(1e-15));
    }

    /**
     * Gold-silver and gold-copper wires of SRM 481 and 482: certified mass percent from memory (NBS Special
     * Publication 260-28, 1971; not seen); atomic percent worked out from the weights of 2021, to the third decimal.
     */
    @ParameterizedTest
    @CsvSource({"Ag,80.05,19.96,68.714", "Ag,60.05,39.92,45.169", "Ag,40.03,59.93,26.783", "Ag,22.43,77.58,13.669",
        "Cu,80.15,19.83,56.597", "Cu,60.36,39.64,32.942", "Cu,40.10,59.92,17.757", "Cu,20.12,79.85,7.518"})
    void certified_wires_that_do_not_sum_to_100_are_closed(String second, double gold, double other,
                                                                double atomicPercent) {
        double[] closed = Closure.convert(new double[] {gold, other},
            List.of(Element.of("Au"), Element.of(second)), Basis.MASS, Basis.ATOMIC);

        assertThat(closed[0] * 100).isCloseTo(atomicPercent, within(0.001));
        assertThat(closed[0] + closed[1]).isCloseTo(1, within(1e-15));
    }

    @Test
    void a_negative_part_is_a_measurement_and_stays() {
        assertThat(Closure.close(new double[] {100.2, -0.2}))
            .containsExactly(new double[] {1.002, -0.002}, within(1e-15));
    }

    @Test
    void parts_that_add_up_to_nothing_are_refused() {
        assertThatThrownBy(() -> Closure.close(new double[] {0, 0}))
            .isInstanceOfSatisfying(CompositionException.class,
                e -> assertThat(e.kind()).isEqualTo(CompositionException.Kind.NOT_CLOSABLE))
            .hasMessage("The parts to close add up to 0.0; a sum above 0 is needed.");
        assertThatThrownBy(() -> Closure.close(new double[] {1, Double.NaN})).hasMessageContaining("add up to NaN");
        assertThatThrownBy(() -> Closure.close(new double[] {1e308, 1e308})).hasMessageContaining("add up to Infinity");
        assertThatThrownBy(() -> Closure.close(new double[] {1, -3})).hasMessageContaining("add up to -2.0");
    }

    @Test
    void parts_and_divisors_of_different_number_are_refused() {
        assertThatThrownBy(() -> Closure.close(new double[] {1, 2}, new double[] {1}))
            .hasMessage("Expected one divisor a part, got 1 for 2 parts.");
    }

    private static void assertAll(JsonNode check, String key, double[] found) {
        double[] expected = Vectors.doubles(check.get("expected").get(key));
        for (int i = 0; i < expected.length; i++) {
            assertThat(found[i]).as(key + " " + i).isCloseTo(expected[i], tolerance(check, expected[i]));
        }
    }

    private static Offset<Double> tolerance(JsonNode check, double expected) {
        JsonNode tolerance = check.get("tolerance");
        return within(tolerance.get("abs").asDouble() + tolerance.get("rel").asDouble() * Math.abs(expected));
    }

    private static double[] pick(double[] values, int[] columns) {
        return Arrays.stream(columns).mapToDouble(i -> values[i]).toArray();
    }

    private static List<String> strings(JsonNode array) {
        return IntStream.range(0, array.size()).mapToObj(i -> array.get(i).asText()).toList();
    }
}
