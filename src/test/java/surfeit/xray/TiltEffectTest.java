package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class TiltEffectTest {
    private final Line silicon = Samples.line("Si", "Ka");
    private final Line gold = Samples.line("Au", "Ma");

    static List<JsonNode> cases() {
        return PhysicsVectors.cases("tilt");
    }

    // Independent Monte Carlo, shared/vectors/physics-tilt.json: within 1.5 % and its statistical error.
    @ParameterizedTest
    @MethodSource("cases")
    void ratio_of_two_lines_follows_the_take_off_angle(JsonNode vector) {
        double factor = TiltEffect.factor(Samples.goldSilicon(), silicon, gold, vector.get("E0").asDouble(), 35,
            vector.get("psi").asDouble());
        assertThat(factor).isCloseTo(vector.get("mc_rel").asDouble(), within(0.015 + vector.get("err").asDouble()));
    }

    // The XPP model worked out separately: f(Si K)/f(Au M), 15 kV.
    @ParameterizedTest
    @CsvSource({"10,.738", "20,.816", "35,.870", "50,.896", "70,.912", "90,.916"})
    void ratio_of_absorption_factors(double psi, double expected) {
        Material host = Samples.goldSilicon();
        double ratio = DepthProfile.of(host, silicon, 15).absorptionFactor(Absorption.chi(silicon, host, psi))
            / DepthProfile.of(host, gold, 15).absorptionFactor(Absorption.chi(gold, host, psi));
        assertThat(ratio).isCloseTo(expected, within(1e-3));
    }

    @Test
    void facing_away_fakes_depletion_of_the_absorbed_line_and_facing_the_detector_a_little_enrichment() {
        TiltEffect effect = TiltEffect.of(Samples.goldSilicon(), silicon, gold, 15, TiltRange.anywhere(35),
            new ProfileCache());
        assertThat(effect.lowFactor()).isBetween(0.82, 0.86);
        assertThat(effect.highFactor()).isBetween(1.04, 1.08);
    }

    @Test
    void every_monte_carlo_ratio_lies_in_the_range_of_a_particle() {
        TiltEffect effect = TiltEffect.of(Samples.goldSilicon(), silicon, gold, 15, TiltRange.anywhere(35),
            new ProfileCache());
        assertThat(cases()).allSatisfy(vector -> assertThat(vector.get("mc_rel").asDouble())
            .isBetween(effect.lowFactor(), effect.highFactor()));
    }

    @Test
    void a_level_surface_leaves_the_ratio_alone_and_a_polished_one_almost() {
        TiltEffect level = TiltEffect.of(Samples.silverCopper(), Samples.line("Cu", "Ka"), Samples.line("Ag", "La"), 15,
            TiltRange.statedTilt(35, 0, 0), new ProfileCache());
        assertThat(level.lowFactor()).isCloseTo(1, within(1e-9));
        assertThat(level.highFactor()).isCloseTo(1, within(1e-9));
        TiltEffect polished = TiltEffect.of(Samples.silverCopper(), Samples.line("Cu", "Ka"), Samples.line("Ag", "La"),
            15,
            TiltRange.polished(35), new ProfileCache());
        assertThat(polished.lowFactor()).isBetween(0.98, 1.0);
        assertThat(polished.highFactor()).isBetween(1.0, 1.02);
    }

    @Test
    void soft_lines_carry_a_wider_error() {
        TiltRange range = TiltRange.stated(35, 30, 0, TiltRange.Facing.TOWARDS_DETECTOR);
        Material host = Samples.silverCopper();
        TiltEffect soft = TiltEffect.of(host, Samples.line("Cu", "La"), Samples.line("Ag", "La"), 10, range,
            new ProfileCache());
        double bare = TiltEffect.factor(host, Samples.line("Cu", "La"), Samples.line("Ag", "La"), 10, 35,
            range.highDeg());
        assertThat(soft.highFactor()).isGreaterThan(bare * 1.07);
    }
}
