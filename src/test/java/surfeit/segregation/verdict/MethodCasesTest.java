package surfeit.segregation.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.Vectors;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalPart;
import surfeit.element.Element;
import surfeit.segregation.answer.Outcome;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.nominal.Comparison;
import surfeit.segregation.nominal.NominalTest;
import surfeit.segregation.sums.Sums;
import surfeit.segregation.uncertainty.AdditiveFloor;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.segregation.uncertainty.ReferenceCorrection;
import surfeit.segregation.uncertainty.ReferenceScatter;

/**
 * Whole groups against the check cases in shared/vectors: invented spots, expected numbers from independent libraries
 * (named in each file: scipy, statsmodels, uncertainties).
 */
class MethodCasesTest {
    private static final double MARGIN = Math.log(1.25);
    private static final double ALPHA = 0.05;

    @ParameterizedTest
    @ValueSource(strings = {"24-e2e-binary-contrast-free", "25-e2e-binary-standardless", "26-e2e-binary-consistent",
        "27-e2e-binary-inconclusive", "29-e2e-six", "30-e2e-near-pure", "31-e2e-two-particles"})
    void spots_of_a_table_give_the_expected_numbers(String name) {
        JsonNode vector = Vectors.read(name);
        JsonNode input = vector.get("input");
        List<String> symbols = new ArrayList<>();
        input.get("elements").forEach(element -> symbols.add(element.asText()));
        Map<String, List<double[]>> byParticle = new LinkedHashMap<>();
        input.get("spots").forEach(spot -> byParticle.computeIfAbsent(spot.get("particle").asText(), p -> new ArrayList<>())
            .add(symbols.stream().mapToDouble(symbol -> spot.get("atomic_percent").get(symbol).asDouble()).toArray()));
        List<double[][]> particles = byParticle.values().stream().map(spots -> spots.toArray(double[][]::new)).toList();
        JsonNode options = input.get("options");
        Comparison comparison = new Comparison(points(symbols, Sums.array(input.get("nominal_atomic_percent"))).resolve(),
            options.get("systematic_relative_1sigma").asDouble(),
            Sums.constantFloor(options.get("systematic_absolute_1sigma_fraction").asDouble(), symbols.size()), MARGIN,
            Optional.empty());
        NominalTest[] tests = comparison.population(Sums.of(particles));
        double[] adjusted = Adjustment.holm(List.<NominalTest[]>of(tests))[0];
        for (int i = 0; i < tests.length; i++) {
            JsonNode expected = vector.get("expected").get("per_element").get(symbols.get(i));
            VerdictRule rule = new VerdictRule(ALPHA, MARGIN);
            Outcome outcome = rule.outcome(tests[i], adjusted[i], comparison.limits(i), 0, "");
            check(expected, "mean", tests[i].mean());
            check(expected, "se_linear", tests[i].parts().get(0).standardError());
            check(expected, "theta", tests[i].theta());
            check(expected, "s_theta", tests[i].sTheta());
            check(expected, "u_theta", tests[i].uTheta());
            check(expected, "p", tests[i].p());
            check(expected, "p_tost", tests[i].pEquivalence());
            check(expected, "enrichment_factor", outcome.enrichmentFactor().orElseThrow().value());
            check(expected, "ef_lo", outcome.enrichmentFactor().orElseThrow().low());
            check(expected, "ef_hi", outcome.enrichmentFactor().orElseThrow().high());
            check(expected, "odds_ratio", outcome.oddsRatio().orElseThrow().value());
            check(expected, "or_lo", outcome.oddsRatio().orElseThrow().low());
            check(expected, "or_hi", outcome.oddsRatio().orElseThrow().high());
            check(expected, "delta_fraction", outcome.difference().value());
            check(expected, "p_holm", adjusted[i]);
            assertThat(outcome.verdict().word()).as(symbols.get(i)).isEqualTo(expected.get("verdict").asText());
            if (expected.has("scale")) {
                assertThat(tests[i].scale()).isEqualTo(expected.get("scale").asText());
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"59-ref-binary", "61-ref-one-spot", "62-ref-two-spots", "64-ref-element-missing",
        "65-ref-not-worth", "66-ref-consistent", "67-range-nominal", "68-tolerance-mass-percent", "69-one-particle-with-sigma",
        "70-three-particles-one-spot-with-sigma", "73-vanishing-minor", "74-negative-mean", "75-single-spot-no-sigma"})
    void groups_give_the_expected_numbers(String name) {
        JsonNode vector = Vectors.read(name);
        JsonNode input = vector.get("input");
        List<String> symbols = new ArrayList<>();
        input.get("elements").forEach(element -> symbols.add(element.asText()));
        AdditiveFloor floor = Sums.constantFloor(input.get("floor_atomic_fraction").asDouble(), symbols.size());
        Comparison comparison = new Comparison(nominal(input, symbols).resolve(), input.get("r0").asDouble(), floor, MARGIN,
            Optional.empty());
        List<double[][]> particles = Sums.particles(input.get("particles_atomic_percent"));
        GroupSums sums = Sums.of(particles);
        if (input.has("sigma_atomic_fraction")) {
            sums = Sums.withUncertainties(sums, Sums.particles(input.get("sigma_atomic_fraction")));
        }
        if (input.has("reference")) {
            ReferenceCorrection correction = reference(input.get("reference"), floor);
            List<double[][]> corrected = new ArrayList<>();
            for (double[][] particle : particles) {
                double[][] spots = new double[particle.length][];
                for (int q = 0; q < spots.length; q++) {
                    spots[q] = correction.corrected(Sums.closed(particle[q]));
                }
                corrected.add(spots);
            }
            sums = Sums.of(corrected);
            comparison = comparison.withReference(Optional.of(correction));
        }
        NominalTest[] tests = comparison.population(sums);
        double[] adjusted = Adjustment.holm(List.<NominalTest[]>of(tests))[0];
        for (int i = 0; i < tests.length; i++) {
            JsonNode expected = vector.get("expected").get("per_element").get(symbols.get(i));
            compare(expected, tests[i], adjusted[i], comparison, sums, i);
        }
    }

    private static void compare(JsonNode expected, NominalTest test, double adjusted, Comparison comparison, GroupSums sums,
        int i) {
        check(expected, "mean", test.mean());
        check(expected, "p", test.p());
        check(expected, "p_tost", test.pEquivalence());
        check(expected, "lo", test.low());
        check(expected, "hi", test.high());
        check(expected, "u_theta", test.uTheta());
        assertThat(test.scale()).isEqualTo(expected.get("scale").asText());
        assertThat(test.direction()).isEqualTo(expected.get("direction").asInt());
        assertThat(test.parts()).hasSize(expected.get("s_lin").size());
        for (int part = 0; part < test.parts().size(); part++) {
            assertThat(test.parts().get(part).standardError())
                .isCloseTo(expected.get("s_lin").get(part).asDouble(), relative(expected.get("s_lin").get(part)));
            double df = Math.min(test.parts().get(part).degreesOfFreedom(), 1e9);
            assertThat(df).isCloseTo(expected.get("df").get(part).asDouble(), relative(expected.get("df").get(part)));
        }
        double own = comparison.limits(i).uncertainty();
        double linear = Math.hypot(comparison.shared(sums.mean()).linear(i), own);
        if (own == 0) {
            check(expected, "u_lin", linear);
        }
        if (comparison.reference().isPresent()) {
            check(expected, "s_ref", ReferenceScatter.of(comparison.reference().get(), sums, sums.mean(), i).orElseThrow().standardError());
            check(expected, "df_ref", ReferenceScatter.of(comparison.reference().get(), sums, sums.mean(), i).orElseThrow().degreesOfFreedom());
        }
        VerdictRule rule = new VerdictRule(ALPHA, MARGIN);
        assertThat(rule.verdict(test, adjusted).word()).isEqualTo(expected.get("verdict").asText());
        if (!test.parts().isEmpty()) {
            check(expected, "p_adj", adjusted);
        } else {
            assertThat(rule.reason(test, Verdict.INCONCLUSIVE)).contains(Reason.NO_REPEAT_AND_NO_SIGMA);
        }
    }

    private static ReferenceCorrection reference(JsonNode node, AdditiveFloor floor) {
        double[][] spots = Sums.matrix(node.get("spots"));
        for (int q = 0; q < spots.length; q++) {
            spots[q] = Sums.closed(spots[q]);
        }
        double[] truth = Sums.closed(Sums.array(node.get("composition")));
        return ReferenceCorrection.of(spots, Optional.empty(), truth, new double[truth.length], node.get("rho").asDouble(),
            floor, node.get("same_material").asBoolean()).orElseThrow();
    }

    private static Nominal nominal(JsonNode input, List<String> symbols) {
        if (input.has("expected_low")) {
            Map<Element, NominalPart> parts = new LinkedHashMap<>();
            for (int i = 0; i < symbols.size(); i++) {
                parts.put(Element.of(symbols.get(i)), new NominalPart.Range(input.get("expected_low").get(i).asDouble(),
                    input.get("expected_high").get(i).asDouble()));
            }
            return new Nominal(Basis.ATOMIC, parts);
        }
        if (input.has("nominal_mass_percent")) {
            Map<Element, NominalPart> parts = new LinkedHashMap<>();
            for (int i = 0; i < symbols.size(); i++) {
                parts.put(Element.of(symbols.get(i)),
                    new NominalPart.Point(input.get("nominal_mass_percent").get(i).asDouble() / 100,
                    input.get("tolerance_mass_percent").get(i).asDouble() / 100));
            }
            return new Nominal(Basis.MASS, parts);
        }
        double[] values = Sums.array(input.get("nominal_low"));
        for (int i = 0; i < values.length; i++) {
            values[i] *= 100;
        }
        return points(symbols, values);
    }

    private static Nominal points(List<String> symbols, double[] percent) {
        double sum = Arrays.stream(percent).sum();
        Map<Element, NominalPart> parts = new LinkedHashMap<>();
        for (int i = 0; i < percent.length; i++) {
            parts.put(Element.of(symbols.get(i)), NominalPart.Point.exact(percent[i] / sum));
        }
        return new Nominal(Basis.ATOMIC, parts);
    }

    private static void check(JsonNode expected, String field, double found) {
        if (expected.has(field)) {
            if (expected.get(field).isNull()) {
                assertThat(found).as(field).isNaN();
            } else {
                assertThat(found).as(field).isCloseTo(expected.get(field).asDouble(), relative(expected.get(field)));
            }
        }
    }

    /** End-to-end cases hold to 2e-5 relative. */
    private static Offset<Double> relative(JsonNode value) {
        return within(Math.abs(value.asDouble()) * 2e-5 + 1e-9);
    }
}
