package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static surfeit.Vectors.tolerance;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import surfeit.Vectors;

class WelchSatterthwaiteTest {

    @Test
    void several_components_give_the_effective_degrees_of_freedom_of_an_independent_computation() {
        JsonNode vector = Vectors.read("23-satterthwaite-gum");
        double[] u = Vectors.doubles(vector.at("/input/u"));
        double[] df = Vectors.doubles(vector.at("/input/df"));
        RandomPart sum = WelchSatterthwaite.sum(
            IntStream.range(0, u.length).mapToObj(i -> new RandomPart(u[i], df[i])).toList());
        assertThat(sum.standardError()).isCloseTo(0.5678908345800273, within(1e-12));
        assertThat(sum.degreesOfFreedom()).isCloseTo(11.152654702499808, tolerance(vector, 11.15));
        double t975 = vector.at("/expected/t975").doubleValue();
        assertThat(StudentT.quantile(0.975, sum.degreesOfFreedom())).isCloseTo(t975, tolerance(vector, t975));
    }

    /** JCGM 100:2008, H.1, end gauge: u in nm, from memory; published nu 16.7 cut to 16, t.99 2.92, U99 93 nm. */
    @Test
    void the_end_gauge_example_of_the_guide_comes_out() {
        RandomPart sum = WelchSatterthwaite.sum(List.of(new RandomPart(25, 18), new RandomPart(9.7, 25.6),
            new RandomPart(2.9, 50), new RandomPart(16.6, 2)));
        assertThat(sum.standardError()).isCloseTo(31.67, within(0.005));
        assertThat(sum.degreesOfFreedom()).isCloseTo(16.76, within(0.005));
        double t = StudentT.quantile(0.995, Math.floor(sum.degreesOfFreedom()));
        assertThat(t).isCloseTo(2.9208, within(5e-5));
        assertThat(t * Math.round(sum.standardError())).isCloseTo(93, within(0.5));
    }

    @Test
    void a_known_error_beside_an_estimated_one_raises_the_degrees_of_freedom() {
        RandomPart sum = new RandomPart(0.06, 2).plus(RandomPart.known(0.09));
        assertThat(sum.degreesOfFreedom()).isCloseTo(21.125, within(1e-12));
    }

    @Test
    void errors_all_known_or_all_zero_have_infinitely_many() {
        assertThat(RandomPart.known(0.3).plus(RandomPart.known(0.4))).isEqualTo(RandomPart.known(0.5));
        assertThat(new RandomPart(0, 3).plus(new RandomPart(0, 1))).isEqualTo(RandomPart.known(0));
        assertThat(WelchSatterthwaite.sum(List.of())).isEqualTo(RandomPart.known(0));
    }

    @Test
    void a_single_part_stays_what_it_is() {
        RandomPart sum = WelchSatterthwaite.sum(List.of(new RandomPart(0.7, 3.5)));
        assertThat(sum.standardError()).isCloseTo(0.7, within(1e-15));
        assertThat(sum.degreesOfFreedom()).isCloseTo(3.5, within(1e-14));
    }
}
