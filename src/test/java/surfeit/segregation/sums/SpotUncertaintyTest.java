package surfeit.segregation.sums;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.Vectors;
import surfeit.composition.Basis;
import surfeit.element.Element;
import surfeit.segregation.InventedSpots;
import surfeit.segregation.nominal.NominalTest;
import surfeit.segregation.uncertainty.SharedError;
import surfeit.spot.ReportedValue;

/** What closing a spot makes of the uncertainties it states; the check cases have atomic weights of three decimals. */
class SpotUncertaintyTest {

    @ParameterizedTest
    @ValueSource(strings = {"01-wt2at-binary", "02-wt2at-ternary-contaminants", "03-wt2at-six", "04-wt2at-near-pure"})
    void stated_uncertainties_of_mass_percent_become_those_of_closed_atomic_fractions(String name) {
        JsonNode check = Vectors.read(name);
        List<String> listed = strings(check.at("/input/elements"));
        List<String> kept = strings(check.at("/expected/elements"));
        ClosedSpot spot = new ClosedSpot(listed, Vectors.doubles(check.at("/input/mass_percent")),
            Vectors.doubles(check.at("/input/sigma_mass_percent")), kept);
        double[] fractions = Vectors.doubles(check.at("/expected/atomic_fraction"));
        double[] uncertainties = Vectors.doubles(check.at("/expected/u"));
        for (int i = 0; i < kept.size(); i++) {
            assertThat(spot.fraction(i)).as(kept.get(i)).isCloseTo(fractions[i], within(2e-5 * fractions[i]));
            assertThat(spot.uncertainty(i)).as(kept.get(i)).isCloseTo(uncertainties[i], within(2e-5 * uncertainties[i]));
        }
    }

    /** Monte Carlo of two million draws: the case with 4 % relative uncertainty, where the first order holds. */
    @Test
    void the_first_order_agrees_with_monte_carlo_at_small_relative_uncertainty() {
        JsonNode check = Vectors.read("06-delta-vs-mc-ok");
        double u = spotOf(check).uncertainty(0);
        assertThat(u).isCloseTo(check.at("/expected/u_delta").asDouble(), within(2e-5 * u));
        assertThat(u / check.at("/expected/u_mc").asDouble())
            .isCloseTo(1, within(check.at("/tolerance/mc_rel").asDouble()));
    }

    /** The same where the minor part is uncertain by half: only the linear scale stays near the simulated interval. */
    @ParameterizedTest
    @ValueSource(strings = {"07-delta-vs-mc-breaks", "08-delta-vs-mc-near100"})
    void at_half_relative_uncertainty_the_linear_interval_holds_and_the_logit_one_does_not(String name) {
        JsonNode check = Vectors.read(name);
        double fraction = spotOf(check).fraction(0);
        double u = spotOf(check).uncertainty(0);
        double[] quantiles = Vectors.doubles(check.at("/expected/quantiles_mc_2_5_50_97_5"));
        double half = 1.96 * u / (fraction * (1 - fraction));
        double lowLogit = NominalTest.expit(NominalTest.logit(fraction) - half);
        double highLogit = NominalTest.expit(NominalTest.logit(fraction) + half);

        assertThat(u).isCloseTo(check.at("/expected/u_delta").asDouble(), within(2e-5 * u));
        assertThat(u / check.at("/expected/u_mc").asDouble()).isCloseTo(1, within(0.03));
        assertThat(Math.max(fraction - 1.96 * u, 0)).isCloseTo(quantiles[0], within(0.1 * u));
        assertThat(Math.min(fraction + 1.96 * u, 1)).isCloseTo(quantiles[2], within(0.1 * u));
        assertThat(Math.max(Math.abs(lowLogit - quantiles[0]), Math.abs(highLogit - quantiles[2])))
            .isGreaterThan(0.5 * u);
    }

    /** Silicon in gold, 3.155 +- 0.100 wt% beside gold known to 2 %: +-0.567 at%, by hand from the weights of 2021. */
    @Test
    void a_light_element_in_a_heavy_one_gains_much_uncertainty_in_atomic_percent() {
        ClosedSpot spot = new ClosedSpot(List.of("Si", "Au"), new double[] {3.155, 96.845},
            new double[] {0.100, 0.02 * 96.845}, List.of("Si", "Au"));
        assertThat(100 * spot.uncertainty(0)).isCloseTo(0.567, within(0.0006));
    }

    private static ClosedSpot spotOf(JsonNode check) {
        List<String> elements = strings(check.at("/input/elements"));
        return new ClosedSpot(elements, Vectors.doubles(check.at("/input/mass_percent")),
            Vectors.doubles(check.at("/input/sigma_mass_percent")), elements);
    }

    private static List<String> strings(JsonNode array) {
        return StreamSupport.stream(array.spliterator(), false).map(JsonNode::asText).toList();
    }

    /** One spot in mass percent, read and closed as the answers do it. */
    private static final class ClosedSpot {
        private final SpotParts parts;
        private final double[] uncertainties;

        ClosedSpot(List<String> listed, double[] percent, double[] sigmas, List<String> kept) {
            Map<Element, ReportedValue> values = new LinkedHashMap<>();
            IntStream.range(0, percent.length).forEach(i -> values.put(Element.of(listed.get(i)),
                new ReportedValue.Measured(percent[i] / 100, "", OptionalDouble.of(sigmas[i] / 100), Optional.empty(),
                    OptionalDouble.empty(), Optional.empty())));
            parts = new SpotParts(kept.stream().map(Element::of).toList(), 0.003, false);
            parts.read(new InventedSpots().basis(Basis.MASS).add("", "", values).list().get(0));
            uncertainties = new double[kept.size()];
            SharedError.close(Arrays.stream(parts.uncertainties).map(error -> error / parts.sum()).toArray(),
                parts.closed(), uncertainties);
        }

        double fraction(int element) {
            return parts.closed()[element];
        }

        double uncertainty(int element) {
            return uncertainties[element];
        }
    }
}
