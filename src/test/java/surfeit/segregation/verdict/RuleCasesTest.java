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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.Vectors;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalPart;
import surfeit.element.Element;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.nominal.BelowLimit;
import surfeit.segregation.nominal.Comparison;
import surfeit.segregation.nominal.NominalTest;
import surfeit.segregation.sums.Sums;
import surfeit.segregation.uncertainty.AdditiveFloor;
import surfeit.segregation.uncertainty.CalibrationError;
import surfeit.segregation.uncertainty.GroupRuns;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.segregation.uncertainty.RandomLadder;
import surfeit.segregation.uncertainty.SharedError;
import surfeit.statistics.ManyTests;
import surfeit.statistics.RandomPart;
import surfeit.statistics.StudentT;

/** Single rules of the method against the check cases in shared/vectors (sources in each file). */
class RuleCasesTest {
    private static final double MARGIN = Math.log(1.25);

    @ParameterizedTest
    @ValueSource(strings = {"15-systematic-binary", "16-systematic-ternary", "17-systematic-six"})
    void shared_error_of_one_mean(String name) {
        JsonNode vector = Vectors.read(name);
        double[] mean = Sums.array(vector.get("input").get("atomic_fraction"));
        double[] relative = Sums.array(vector.get("input").get("relative_u_per_element"));
        double[] asFloor = new double[mean.length];
        for (int j = 0; j < asFloor.length; j++) {
            asFloor[j] = Math.sqrt(relative[j] * relative[j] - 1e-12) * mean[j];
        }
        SharedError shared = new SharedError(mean, new CalibrationError(1e-6, fixed(asFloor), Optional.empty())).at(mean);
        for (int i = 0; i < mean.length; i++) {
            double logit = vector.get("expected").get("u_logit").get(i).asDouble();
            double fraction = vector.get("expected").get("u_fraction").get(i).asDouble();
            assertThat(shared.logit(i)).isCloseTo(logit, Vectors.tolerance(vector, logit));
            assertThat(shared.linear(i)).isCloseTo(fraction, Vectors.tolerance(vector, fraction));
        }
    }

    private static AdditiveFloor fixed(double[] floor) {
        return new AdditiveFloor() {
            @Override
            public void at(double[] mean, double[] filled) {
                System.arraycopy(floor, 0, filled, 0, filled.length);
            }

            @Override
            public AdditiveFloor without(int element) {
                return fixed(GroupSums.drop(floor, element));
            }
        };
    }

    @Test
    void the_element_that_explains_the_rest_is_found() {
        JsonNode vector = Vectors.read("32-explanation-set");
        List<String> symbols = new ArrayList<>();
        vector.get("input").get("elements").forEach(node -> symbols.add(node.asText()));
        double[] nominal = Sums.closed(Sums.array(vector.get("input").get("nominal_atomic_percent")));
        List<double[][]> particles = Sums.particles(vector.get("input").get("particles_atomic_fraction"));
        Comparison comparison = new Comparison(points(symbols, nominal).resolve(), 0, Sums.constantFloor(0, 4), MARGIN, Optional.empty());
        NominalTest[] full = comparison.population(Sums.of(particles));
        double[] adjusted = Adjustment.holm(List.<NominalTest[]>of(full))[0];
        JsonNode expected = vector.get("expected");
        for (int i = 0; i < 4; i++) {
            double p = expected.get("p_holm_full").get(symbols.get(i)).asDouble();
            assertThat(adjusted[i]).isCloseTo(p, within(p * 2e-5));
        }
        Optional<List<Element>> set = ExplanationSet.of(Sums.runs(Sums.of(particles)), comparison, true, new VerdictRule(0.05, MARGIN));
        assertThat(set.orElseThrow()).containsExactly(Element.of(expected.get("explanation_set").get(0).asText()));
        for (int e = 0; e < 4; e++) {
            int gone = e;
            List<double[][]> rest = particles.stream().map(spots -> Arrays.stream(spots)
                .map(spot -> GroupSums.drop(spot, gone)).toArray(double[][]::new)).toList();
            NominalTest[] exact = comparison.without(e).population(Sums.of(rest));
            NominalTest[] ofMeans = comparison.without(e).population(Sums.of(particles).withoutElement(e));
            double[] exactHolm = Adjustment.holm(List.<NominalTest[]>of(exact))[0];
            List<String> left = new ArrayList<>(symbols);
            left.remove(e);
            for (int i = 0; i < 3; i++) {
                double p = expected.get("p_holm_after_removing").get(symbols.get(e)).get(left.get(i)).asDouble();
                assertThat(exactHolm[i]).isCloseTo(p, within(p * 2e-5));
                assertThat(ofMeans[i].mean()).isCloseTo(exact[i].mean(), within(2e-4));
            }
        }
    }

    @Test
    void an_element_below_its_limit_everywhere_gets_a_bound_and_a_p_that_is_adjusted() {
        JsonNode vector = Vectors.read("72-all-censored-holm");
        JsonNode input = vector.get("input");
        double limit = input.get("detection_limit_fraction").asDouble();
        double nominal = input.get("nominal_fraction").asDouble();
        NominalTest test = BelowLimit.test(limit, new NominalTest.Limits(nominal, nominal, 0), input.get("r0").asDouble(), MARGIN);
        JsonNode expected = vector.get("expected");
        assertThat(test.high()).isCloseTo(expected.get("bound").asDouble(), within(1e-12));
        assertThat(test.high() / nominal).isCloseTo(expected.get("ef_upper").asDouble(), within(1e-9));
        assertThat(test.p()).isCloseTo(expected.get("p").asDouble(), within(1e-12));
        double[] others = Sums.array(input.get("other_p"));
        double[] holm = ManyTests.holm(test.p(), others[0], others[1], others[2]);
        assertThat(holm).containsExactly(Sums.array(expected.get("p_holm")), within(1e-9));
    }

    @Test
    void a_limit_above_nominal_tells_nothing_and_one_below_shows_depletion() {
        JsonNode above = Vectors.read("49-nondetect-inconclusive").get("input");
        NominalTest nothing = BelowLimit.test(above.get("detection_limit").asDouble() / 100,
            limits(above.get("nominal").asDouble() / 100), 0.125, MARGIN);
        VerdictRule rule = new VerdictRule(0.05, MARGIN);
        assertThat(nothing.p()).isEqualTo(1);
        assertThat(rule.verdict(nothing, 1)).isEqualTo(Verdict.INCONCLUSIVE);
        assertThat(rule.reason(nothing, Verdict.INCONCLUSIVE)).contains(Reason.LIMIT_ABOVE_NOMINAL);
        JsonNode vector = Vectors.read("50-nondetect-all-below-lower-limit");
        JsonNode below = vector.get("input");
        NominalTest depleted = BelowLimit.test(below.get("detection_limit").asDouble() / 100,
            limits(below.get("nominal").asDouble() / 100), below.get("systematic_relative_1sigma").asDouble(), MARGIN);
        assertThat(rule.verdict(depleted, depleted.p())).isEqualTo(Verdict.DEPLETED);
        double factor = vector.get("expected").get("ef_upper_95_with_systematic").asDouble();
        assertThat(depleted.high() / 0.02).isCloseTo(factor, within(1e-9));
    }

    @Test
    void a_shift_counts_only_where_zero_and_limit_agree() {
        JsonNode vector = Vectors.read("79-both-ends");
        JsonNode input = vector.get("input");
        NominalTest zero = test(input.get("zero"));
        check(zero.join(test(input.get("limit_same"))), vector.get("expected").get("same"));
        check(zero.join(test(input.get("limit_opposite"))), vector.get("expected").get("opposite"));
    }

    private static void check(NominalTest joined, JsonNode expected) {
        assertThat(joined.p()).isEqualTo(expected.get("p").asDouble());
        assertThat(joined.direction()).isEqualTo(expected.get("direction").asInt());
        assertThat(joined.low()).isEqualTo(expected.get("lo").asDouble());
        assertThat(joined.high()).isEqualTo(expected.get("hi").asDouble());
    }

    private static NominalTest test(JsonNode node) {
        return new NominalTest(0.5, 0, 0.1, 0.1, "logit", node.get("p").asDouble(), node.get("p_tost").asDouble(), 1,
            node.get("lo").asDouble(), node.get("hi").asDouble(), 2, node.get("direction").asInt(),
            List.of(new RandomPart(0.1, 2)));
    }

    @Test
    void a_mostly_undetected_element_is_depleted_under_both_fills() {
        JsonNode vector = Vectors.read("48-nondetect-depleted");
        JsonNode input = vector.get("input");
        double limit = input.get("detection_limit").asDouble() / 100;
        for (String run : List.of("fill_zero", "fill_limit")) {
            List<double[]> means = new ArrayList<>();
            input.get("atomic_percent_zero_is_nondetect").forEach(particle -> {
                double sum = 0;
                for (JsonNode value : particle) {
                    sum += value.asDouble() == 0 ? run.equals("fill_zero") ? 0 : limit : value.asDouble() / 100;
                }
                means.add(new double[] {sum / particle.size(), 1 - sum / particle.size()});
            });
            GroupSums sums = Sums.of(means.stream().map(mean -> new double[][] {mean}).toList());
            RandomPart part = RandomLadder.population(sums, 0, sums.mean()[0]).parts().get(0);
            JsonNode expected = vector.get("expected").get(run);
            assertThat(sums.mean()[0] * 100).isCloseTo(expected.get("mean").asDouble(), within(1e-9));
            double t = (sums.mean()[0] - input.get("nominal").asDouble() / 100) / part.standardError();
            assertThat(t).isCloseTo(expected.get("t").asDouble(), within(1e-6));
            assertThat(StudentT.twoSidedP(t, part.degreesOfFreedom())).isCloseTo(expected.get("p").asDouble(), within(1e-10));
        }
    }

    @Test
    void one_particle_and_these_particles_have_their_own_errors() {
        JsonNode one = Vectors.read("46-one-particle");
        List<double[]> spots = new ArrayList<>();
        one.get("input").get("spot_fractions").forEach(f -> spots.add(new double[] {f.asDouble(), 1 - f.asDouble()}));
        GroupSums single = Sums.of(List.<double[][]>of(spots.toArray(double[][]::new)));
        RandomPart own = RandomLadder.population(single, 0, single.mean()[0]).parts().get(0);
        assertThat(own.standardError()).isCloseTo(one.get("expected").get("se").asDouble(), within(1e-12));
        assertThat(own.degreesOfFreedom()).isEqualTo(one.get("expected").get("df").asDouble());
        JsonNode these = Vectors.read("47-these-particles-scope");
        List<double[][]> particles = new ArrayList<>();
        these.get("input").get("particles").forEach(particle -> {
            List<double[]> own2 = new ArrayList<>();
            particle.forEach(f -> own2.add(new double[] {f.asDouble(), 1 - f.asDouble()}));
            particles.add(own2.toArray(double[][]::new));
        });
        GroupSums several = Sums.of(particles);
        RandomPart pooled = RandomLadder.theseParticles(several, 0).parts().get(0);
        assertThat(several.mean()[0]).isCloseTo(these.get("expected").get("mean").asDouble(), within(1e-12));
        assertThat(pooled.standardError()).isCloseTo(these.get("expected").get("se").asDouble(), within(1e-12));
        assertThat(pooled.degreesOfFreedom()).isEqualTo(these.get("expected").get("df").asDouble());
    }

    @Test
    void values_that_round_alike_keep_their_common_rounding_error() {
        JsonNode vector = Vectors.read("57-identical-values");
        JsonNode input = vector.get("input");
        double step = input.get("rounding_step").asDouble() / 100;
        double[] spot = {0.503, 0.497};
        GroupSums sums = Sums.of(List.of(new double[][] {spot, spot}, new double[][] {spot, spot}, new double[][] {spot, spot}),
            new double[] {step, step});
        RandomPart part = RandomLadder.population(sums, 0, sums.mean()[0]).parts().get(0);
        assertThat(part.standardError() * 100)
            .isCloseTo(vector.get("expected").get("se_floor_atomic_percent").asDouble(), within(1e-12));
        assertThat(part.degreesOfFreedom()).isEqualTo(2);
    }

    /** In a binary without an additive floor both relative errors add up to u on the logit scale. */
    private static SharedError ofBinary(double mean, double u) {
        double[] both = {mean, 1 - mean};
        return new SharedError(both, new CalibrationError(u / Math.sqrt(2), Sums.constantFloor(0, 2), Optional.empty())).at(both);
    }

    @Test
    void a_vanishing_minor_element_gets_the_outer_hull_of_both_scales() {
        JsonNode vector = Vectors.read("54-minor-hull");
        JsonNode input = vector.get("input");
        List<double[][]> particles = new ArrayList<>();
        input.get("particle_means_fraction").forEach(f -> particles.add(new double[][] {{f.asDouble(), 1 - f.asDouble()}}));
        GroupSums sums = Sums.of(particles);
        double u = input.get("u_sys_logit").asDouble();
        double mean = sums.mean()[0];
        SharedError shared = ofBinary(mean, u);
        NominalTest test = NominalTest.of(mean, RandomLadder.population(sums, 0, mean).parts(), shared, 0,
            limits(input.get("nominal_fraction").asDouble()), MARGIN);
        JsonNode expected = vector.get("expected");
        assertThat(test.scale()).isEqualTo("hull");
        assertThat(test.p()).isCloseTo(expected.get("p").asDouble(), within(1e-5));
        assertThat(test.low()).isCloseTo(expected.get("hull").get(0).asDouble(), within(1e-9));
        assertThat(test.high()).isCloseTo(expected.get("hull").get(1).asDouble(), within(1e-6));
    }

    @Test
    void one_wild_particle_makes_a_verdict_fragile() {
        JsonNode vector = Vectors.read("56-leave-one-particle-out");
        JsonNode input = vector.get("input");
        List<double[][]> particles = new ArrayList<>();
        input.get("particle_means").forEach(f -> particles.add(new double[][] {{f.asDouble(), 1 - f.asDouble()}}));
        double nominal = input.get("nominal_fraction").asDouble();
        Comparison comparison = new Comparison(points(List.of("Ag", "Cu"), new double[] {nominal, 1 - nominal}).resolve(), 0,
            Sums.constantFloor(0, 2), MARGIN, Optional.empty());
        GroupRuns runs = Sums.runs(Sums.of(particles));
        NominalTest[] tests = comparison.population(runs);
        VerdictRule rule = new VerdictRule(0.05, MARGIN);
        double[] adjusted = Adjustment.holm(List.<NominalTest[]>of(tests))[0];
        Verdict[] verdicts = {rule.verdict(tests[0], adjusted[0]), rule.verdict(tests[1], adjusted[1])};
        assertThat(ParticleRobustness.fragileWithout(runs, comparison, rule, List.<NominalTest[]>of(tests), 0, verdicts).get(0))
            .containsExactly("P5");
    }

    private static NominalTest.Limits limits(double nominal) {
        return new NominalTest.Limits(nominal, nominal, 0);
    }

    private static Nominal points(List<String> symbols, double[] fractions) {
        Map<Element, NominalPart> parts = new LinkedHashMap<>();
        for (int i = 0; i < fractions.length; i++) {
            parts.put(Element.of(symbols.get(i)), NominalPart.Point.exact(fractions[i]));
        }
        return new Nominal(Basis.ATOMIC, parts);
    }
}
