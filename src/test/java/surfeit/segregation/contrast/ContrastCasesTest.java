package surfeit.segregation.contrast;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.Vectors;
import surfeit.segregation.sums.Sums;
import surfeit.segregation.uncertainty.CalibrationError;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.segregation.uncertainty.SharedDifference;

/** Contrasts of two groups against the check cases in shared/vectors (scipy, statsmodels, uncertainties). */
class ContrastCasesTest {
    private static final double MARGIN = Math.log(1.25);

    @ParameterizedTest
    @CsvSource({"52-contrast-paired-e2e, true", "53-two-groups-e2e, false", "76-contrast-own-r, true"})
    void particle_means_of_two_groups_give_the_expected_numbers(String name, boolean paired) {
        JsonNode vector = Vectors.read(name);
        JsonNode input = vector.get("input");
        GroupSums a = Sums.of(onePerParticle(input.get("class_A_particle_means")));
        GroupSums b = Sums.of(onePerParticle(input.get("class_B_particle_means")));
        JsonNode rA = input.has("relative_u_A") ? input.get("relative_u_A") : input.get("relative_u");
        JsonNode rB = input.has("relative_u_B") ? input.get("relative_u_B") : input.get("relative_u");
        double[] none = new double[a.elements()];
        SharedDifference shared = new SharedDifference(a.mean(), b.mean(), times(a.mean(), rA), times(b.mean(), rB),
            none, none, input.get("rho").asDouble());
        for (int i = 0; i < a.elements(); i++) {
            JsonNode expected = vector.get("expected").get(input.get("elements").get(i).asText());
            ContrastTest test = ContrastTest.of(side(a), side(b), i, paired, shared, MARGIN);
            check(vector, expected, "theta", test.theta());
            check(vector, expected, "s", test.s());
            check(vector, expected, "df", test.df());
            check(vector, expected, "u", test.u());
            check(vector, expected, "half_width", test.halfWidth());
            check(vector, expected, "p", test.p());
        }
    }

    @Test
    void one_particle_on_a_side_stands_on_its_spots() {
        JsonNode vector = Vectors.read("81-contrast-one-particle-side");
        JsonNode input = vector.get("input");
        GroupSums a = Sums.of(Sums.particles(input.get("class_A")));
        GroupSums b = Sums.of(Sums.particles(input.get("class_B")));
        CalibrationError error = new CalibrationError(input.get("r0").asDouble(),
            Sums.constantFloor(input.get("floor_atomic_fraction").asDouble(), 2), Optional.empty());
        SharedDifference shared = SharedDifference.of(a.mean(), error, b.mean(), error, input.get("rho").asDouble());
        ContrastTest test = ContrastTest.of(side(a), side(b), 0, false, shared, MARGIN);
        for (String field : List.of("theta", "s", "df", "u", "p")) {
            check(vector, vector.get("expected"), field, switch (field) {
                case "theta" -> test.theta();
                case "s" -> test.s();
                case "df" -> test.df();
                case "u" -> test.u();
                default -> test.p();
            });
        }
        assertThat(test.scale()).isEqualTo(vector.get("expected").get("scale").asText());
        assertThat(test.direction()).isEqualTo(1);
    }

    @Test
    void the_calibration_error_of_one_session_mostly_cancels() {
        JsonNode vector = Vectors.read("18-systematic-contrast");
        JsonNode input = vector.get("input");
        double[] a = Sums.array(input.get("class_A"));
        double[] b = Sums.array(input.get("class_B"));
        double[] none = new double[3];
        for (int i = 0; i < 3; i++) {
            double qA = a[i] * (1 - a[i]);
            double qB = b[i] * (1 - b[i]);
            SharedDifference same = new SharedDifference(a, b, times(a, input.get("relative_u")),
                times(b, input.get("relative_u")), none, none, input.get("rho").asDouble());
            SharedDifference independent = new SharedDifference(a, b, times(a, input.get("relative_u")),
                times(b, input.get("relative_u")), none, none, 0);
            assertThat(same.uncertainty(i, qA, qB)).isCloseTo(vector.get("expected").get("u_sys_contrast").get(i).asDouble(),
                Vectors.tolerance(vector, 0.07));
            assertThat(independent.uncertainty(i, qA, qB))
                .isCloseTo(vector.get("expected").get("u_sys_if_independent").get(i).asDouble(), Vectors.tolerance(vector, 0.2));
        }
    }

    private static ContrastTest.Side side(GroupSums sums) {
        return ContrastTest.Side.uncorrected(sums);
    }

    private static List<double[][]> onePerParticle(JsonNode means) {
        List<double[][]> particles = new ArrayList<>();
        means.forEach(mean -> particles.add(new double[][] {Sums.array(mean)}));
        return particles;
    }

    private static double[] times(double[] mean, JsonNode relative) {
        double[] errors = new double[mean.length];
        for (int j = 0; j < errors.length; j++) {
            errors[j] = mean[j] * relative.get(j).asDouble();
        }
        return errors;
    }

    private static void check(JsonNode vector, JsonNode expected, String field, double found) {
        double wanted = expected.get(field).asDouble();
        assertThat(found).as(field).isCloseTo(wanted, Vectors.tolerance(vector, wanted));
    }
}
