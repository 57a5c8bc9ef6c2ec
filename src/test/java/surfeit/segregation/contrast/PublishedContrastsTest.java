package surfeit.segregation.contrast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import surfeit.element.Element;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.sums.Sums;
import surfeit.segregation.uncertainty.CalibrationError;
import surfeit.spot.Judgement;
import surfeit.statistics.Moments;
import surfeit.statistics.RandomPart;

/** Contrasts against published worked examples; their numbers stand in for fractions of one part in a binary. */
class PublishedContrastsTest {
    private static final double CALIBRATION_ERROR = 1e-9;

    /**
     * D. Harvey, Analytical Chemistry 2.0, practice exercise 4.11: zinc at six places of a lake near the sediment and
     * near the air, paired differences 0.015 to 0.121: mean 0.07333, standard deviation 0.0441, t 4.0730 against 2.571 at 5
     * degrees of freedom.
     */
    @Test
    void pairs_of_the_same_places_reproduce_the_paired_test_of_a_textbook() {
        double[] differences = {0.015, 0.028, 0.067, 0.121, 0.102, 0.107};
        double[] airs = {0.43, 0.27, 0.57, 0.53, 0.71, 0.72};
        double[] sediments = new double[airs.length];
        for (int i = 0; i < airs.length; i++) {
            sediments[i] = airs[i] + differences[i] - 0.3;
            airs[i] -= 0.3;
        }
        Contrast contrast = contrast(sediments, airs, true);
        assertThat(contrast.paired()).isTrue();
        Estimate difference = contrast.elements().get(0).difference();
        assertThat(difference.value()).isCloseTo(0.07333, within(5e-6));
        double halfWidth = (difference.high() - difference.low()) / 2;
        assertThat(difference.value() / halfWidth).isCloseTo(4.0730 / 2.5706, within(1e-3));
        assertThat(contrast.elements().get(0).degreesOfFreedom()).hasValue(5);
        assertThat(contrast.elements().get(0).verdict()).isEqualTo(Contrast.Word.HIGHER);
    }

    /** NAG Library Manual, Mark 30.3, example of g07ca: 4 and 8 values, Welch: difference 4, from 0.4410 to 7.5590. */
    @Test
    void separate_particles_reproduce_the_welch_interval_of_a_published_example() {
        Contrast contrast = contrast(twoSided(25, 0.8185, 4), twoSided(21, 4.2083, 8), false);
        Estimate difference = contrast.elements().get(0).difference();
        assertThat(difference.value() * 100).isCloseTo(4, within(1e-9));
        assertThat(difference.low() * 100).isCloseTo(0.4410, within(2e-4));
        assertThat(difference.high() * 100).isCloseTo(7.5590, within(2e-4));
    }

    /** Percent values of this mean and standard deviation, half of them on either side. */
    private static double[] twoSided(double mean, double deviation, int count) {
        double step = deviation * Math.sqrt((count - 1.0) / count);
        return DoubleStream.iterate(1, sign -> -sign).limit(count).map(sign -> (mean + sign * step) / 100).toArray();
    }

    /** On the logit scale fractions count relative to their odds; near a half that is four times the difference. */
    @Test
    void near_a_half_the_log_odds_carry_the_same_t_as_the_plain_difference() {
        double[] a = {0.5012, 0.5031, 0.4998, 0.5023, 0.5016};
        double[] b = {0.4988, 0.4969, 0.5002, 0.4977, 0.4984};
        ContrastTest test = group(a, b, false).tests().get(0);
        RandomPart plain = RandomPart.ofMean(a).plus(RandomPart.ofMean(b));
        double difference = Moments.of(a).mean() - Moments.of(b).mean();
        double t = difference / plain.standardError();
        assertThat(test.theta() / test.s()).isCloseTo(t, within(1e-4 * t));
        assertThat(test.df()).isCloseTo(plain.degreesOfFreedom(), within(1e-4));
        assertThat(test.theta()).isCloseTo(4 * difference, within(1e-6));
    }

    private static Contrast contrast(double[] a, double[] b, boolean byParticle) {
        return Contrasts.adjusted(List.of(group(a, b, byParticle)), Judgement.DEFAULT).get(0);
    }

    private static GroupContrast group(double[] a, double[] b, boolean byParticle) {
        return GroupContrast.of(side(a), side(b), byParticle, true, Judgement.DEFAULT).orElseThrow();
    }

    /** One spot per particle, with next to no calibration error: only the scatter is in the example. */
    private static ContrastSide side(double[] fractions) {
        List<double[][]> particles =
            Arrays.stream(fractions).mapToObj(value -> new double[][] {{value, 1 - value}}).toList();
        return new ContrastSide("side", List.of(Element.of("Zn"), Element.of("Cu")), Sums.runs(Sums.of(particles)),
            true, OptionalDouble.empty(), Optional.empty(), false,
            new CalibrationError(CALIBRATION_ERROR, Sums.constantFloor(0, 2), Optional.empty()));
    }
}
