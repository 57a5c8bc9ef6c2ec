package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static surfeit.Vectors.tolerance;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;
import surfeit.Vectors;

class EquivalenceTest {

    private static final double MARGIN = Math.log(1.25);

    @Test
    void particles_near_the_nominal_are_shown_to_lie_inside_the_margin() {
        JsonNode vector = Vectors.read("42-tost-equivalent");
        double[] theta = Vectors.doubles(vector.at("/input/theta_per_particle"));
        double margin = vector.at("/input/margin").doubleValue();
        RandomPart random = RandomPart.ofMean(theta);
        double mean = Moments.of(theta).mean();
        double p = vector.at("/expected/p_tost").doubleValue();
        double twoSided = vector.at("/expected/p_two_sided").doubleValue();
        double[] interval = Vectors.doubles(vector.at("/expected/ci90"));
        assertThat(Equivalence.withinMargin(mean, margin, random, 0)).isCloseTo(p, tolerance(vector, p));
        assertThat(CombinedError.twoSidedP(mean, random, 0)).isCloseTo(twoSided, tolerance(vector, twoSided));
        double half = CombinedError.halfWidth(random, 0, 0.90);
        assertThat(mean - half).isCloseTo(interval[0], tolerance(vector, interval[0]));
        assertThat(mean + half).isCloseTo(interval[1], tolerance(vector, interval[1]));
    }

    @Test
    void p_is_at_most_5_percent_exactly_where_the_90_percent_interval_lies_inside() {
        RandomPart random = new RandomPart(0.04, 3);
        for (double u : new double[]{0, 0.05, 0.13}) {
            double half = CombinedError.halfWidth(random, u, 0.90);
            for (double estimate = -0.3; estimate < 0.3; estimate += 0.0037) {
                boolean inside = estimate - half > -MARGIN && estimate + half < MARGIN;
                assertThat(Equivalence.withinMargin(estimate, MARGIN, random, u) <= 0.05)
                    .as("estimate %s, u %s", estimate, u).isEqualTo(inside);
            }
        }
    }

    @Test
    void a_missing_limit_drops_its_side() {
        double upperOnly = Equivalence.pValue(Double.POSITIVE_INFINITY, 0.1, 0.04, 3, 0.02);
        assertThat(upperOnly).isEqualTo(CombinedError.oneSidedP(0.1, 0.04, 3, 0.02));
        assertThat(Equivalence.pValue(-0.1, 0.5, 0.04, 3, 0.02)).isGreaterThan(0.9);
    }

    @Test
    void a_shared_error_of_61_percent_of_the_margin_leaves_no_way_to_show_equivalence() {
        double u = MARGIN / NormalDistribution.quantile(0.95);
        assertThat(Equivalence.withinMargin(0, MARGIN, RandomPart.known(1e-9), u * 1.0001)).isGreaterThan(0.05);
        assertThat(Equivalence.withinMargin(0, MARGIN, RandomPart.known(1e-9), u * 0.9999)).isLessThan(0.05);
    }
}
