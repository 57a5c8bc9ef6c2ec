package surfeit.segregation.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static surfeit.segregation.InventedSpots.group;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.math3.distribution.FDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.stat.correlation.Covariance;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.Vectors;
import surfeit.segregation.InventedSpots;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.segregation.uncertainty.ParticleSums;
import surfeit.statistics.HotellingT2;

/** T2 over all elements; its arithmetic is held to the sweat data beside {@link HotellingT2}. */
class JointCheckTest {
    private static final String BRAZE = "Ag:60,Cu:25,Zn:15";
    /** Invented at% of seven particles. */
    private static final double[][] AT = {{59.1, 26.2, 14.7}, {60.3, 25.9, 13.8}, {58.7, 26.6, 14.7}, {59.9, 25.8, 14.3},
        {60.2, 26.1, 13.7}, {59.4, 26.3, 14.3}, {58.8, 25.9, 15.3}};

    private static InventedSpots particles(int count) {
        InventedSpots spots = new InventedSpots();
        for (int p = 0; p < count; p++) {
            spots.add("top", "P" + p, String.format(Locale.ROOT, "Ag %s, Cu %s, Zn %s", AT[p][0], AT[p][1], AT[p][2]));
        }
        return spots;
    }

    @Test
    void it_is_the_textbook_t2_of_log_ratios_whatever_the_basis_they_are_written_in() {
        // additive log-ratios and commons-math's matrices in place of the isometric ones and our own factorisation
        double[][] alr = new double[AT.length][2];
        for (int p = 0; p < AT.length; p++) {
            alr[p] = new double[] {Math.log(AT[p][0] / AT[p][2]), Math.log(AT[p][1] / AT[p][2])};
        }
        RealVector d = new ArrayRealVector(new double[2]);
        for (double[] row : alr) {
            d = d.add(new ArrayRealVector(row).mapDivide(AT.length));
        }
        d = d.subtract(new ArrayRealVector(new double[] {Math.log(60 / 15.0), Math.log(25 / 15.0)}));
        RealVector solved = new LUDecomposition(new Covariance(new Array2DRowRealMatrix(alr)).getCovarianceMatrix())
            .getSolver().solve(d);
        double t2 = AT.length * d.dotProduct(solved);
        HotellingT2 joint = group(particles(7).against(BRAZE), "top").jointTest().orElseThrow().test();
        assertThat(joint.t2()).isCloseTo(t2, within(1e-9 * t2));
        assertThat(joint.pValue()).isCloseTo(1 - new FDistribution(2, 5).cumulativeProbability(t2 * 5 / (2 * 6)), within(1e-10));
    }

    @Test
    void it_is_asked_from_two_particles_more_than_elements() {
        assertThat(group(particles(5).against(BRAZE), "top").jointTest()).isPresent();
        assertThat(group(particles(4).against(BRAZE), "top").jointTest()).isEmpty();
    }

    @Test
    void values_below_their_limit_enter_as_a_share_of_it_and_that_is_said() {
        InventedSpots spots = particles(6).add("top", "P6", "Ag 74.0, Cu 26.0, Zn <0.5");
        assertThat(group(spots.against(BRAZE), "top").jointTest().orElseThrow().replaced()).isTrue();
        assertThat(group(particles(7).against(BRAZE), "top").jointTest().orElseThrow().replaced()).isFalse();
    }

    @ParameterizedTest
    @ValueSource(strings = {"12-zero-replacement", "13-zero-replacement-two"})
    void replaced_values_agree_with_an_independent_library(String name) {
        JsonNode vector = Vectors.read(name);
        double[] parts = Vectors.doubles(vector.at("/input/parts"));
        assertReplaced(parts, vector.at("/input/delta_fraction").asDouble(), Vectors.doubles(vector.at("/expected/replaced")));
    }

    /** Martin-Fernandez et al., Math. Geol. 35 (2003) 253: example with 1/16 put in place, quoted in library documentation. */
    @Test
    void the_published_example_of_replacement_holds() {
        assertReplaced(new double[] {0.2, 0.4, 0.4, 0}, 1 / 16.0, new double[] {0.1875, 0.375, 0.375, 0.0625});
        assertReplaced(new double[] {0, 0.5, 0.5, 0}, 1 / 16.0, new double[] {0.0625, 0.4375, 0.4375, 0.0625});
    }

    /** @param share put in place of every zero: 0.65 of its limit's share */
    private static void assertReplaced(double[] parts, double share, double[] expected) {
        double limit = share / 0.65;
        double total = Arrays.stream(parts).sum();
        double rest = 1 - limit * Arrays.stream(parts).filter(part -> part == 0).count();
        double[] atZero = Arrays.stream(parts).map(part -> part / total).toArray();
        double[] atLimit = Arrays.stream(atZero).map(part -> part == 0 ? limit : part * rest).toArray();
        assertThat(JointCheck.centre(List.of(one(atZero), one(atLimit)), 0)).containsExactly(expected, within(1e-12));
    }

    private static GroupSums one(double... centre) {
        ParticleSums particle = new ParticleSums("P1", 1, centre, new double[centre.length], Optional.empty());
        return new GroupSums(List.of(particle), new double[centre.length][centre.length], new double[centre.length]);
    }
}
