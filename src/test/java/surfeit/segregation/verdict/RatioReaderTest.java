package surfeit.segregation.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static surfeit.segregation.InventedSpots.element;
import static surfeit.segregation.InventedSpots.group;

import java.util.Locale;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import surfeit.element.Element;
import surfeit.segregation.InventedSpots;
import surfeit.segregation.answer.ElementRatios;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.GroupFinding;
import surfeit.spot.AccuracyClass;

/** Ratios to an element outside the explanation set, on invented spots of a four-element brazing powder. */
class RatioReaderTest {
    private static final String BRAZE = "Ag:56,Cu:22,Zn:17,Sn:5";

    /** Four particles in which tin has doubled and everything else is as it should be. */
    private static InventedSpots tinDoubled() {
        InventedSpots spots = new InventedSpots();
        for (int p = 1; p <= 4; p++) {
            double wobble = (p - 2.5) * 0.004;
            double sum = 56 * (1 + wobble) + 22 + 17 + 10;
            spots.add("skin", "P" + p, String.format(Locale.ROOT, "Ag %.4f, Cu %.4f, Zn %.4f, Sn %.4f",
                5600 * (1 + wobble) / sum, 2200 / sum, 1700 / sum, 1000 / sum));
        }
        return spots;
    }

    @Test
    void the_others_keep_their_ratio_while_their_factors_all_fall() {
        GroupFinding skin = group(tinDoubled().against(BRAZE), "skin");
        assertThat(skin.explanationSet().orElseThrow()).containsExactly(Element.of("Sn"));
        ElementRatios ratios = skin.ratios().orElseThrow();
        assertThat(ratios.to()).isEqualTo(Element.of("Ag"));
        assertThat(ratios.ratios()).extracting(ElementRatios.Ratio::element)
            .containsExactly(Element.of("Cu"), Element.of("Zn"), Element.of("Sn"));
        assertThat(ratios.ratios().get(0).factor().value()).isCloseTo(1, within(0.001));
        assertThat(ratios.ratios().get(2).factor().value()).isCloseTo(2, within(0.002));
        assertThat(element(skin, "Cu").outcome().enrichmentFactor().orElseThrow().value()).isLessThan(0.96);
    }

    @Test
    void without_calibration_error_the_interval_is_that_of_the_logs_of_the_particles_ratios() {
        // t interval of one mean: any textbook; the quantile is commons-math's
        GroupFinding skin = group(tinDoubled().against(BRAZE), "skin");
        Estimate tin = skin.ratios().orElseThrow().ratios().get(2).factor();
        double u = Math.hypot(relative(56.0 / 105), relative(10.0 / 105));
        double half = new TDistribution(1e9).inverseCumulativeProbability(0.975) * u;
        assertThat(Math.log(tin.high() / tin.value())).isCloseTo(half, within(0.01));
        assertThat(Math.log(tin.value() / tin.low())).isCloseTo(half, within(0.01));
    }

    /** Relative calibration error of one element: 12.5 %, and the floor of 0.1 mass %, small here. */
    private static double relative(double fraction) {
        return Math.hypot(AccuracyClass.STANDARDLESS.relativeUncertainty(), 0.0009 / fraction);
    }

    @Test
    void two_elements_have_none() {
        InventedSpots binary = new InventedSpots().add("patch", "P1", "Ag 20.1, Cu 79.9").add("patch", "P2", "Ag 21.9, Cu 78.1");
        assertThat(group(binary.against("Ag:59.8,Cu:40.2"), "patch").ratios()).isEmpty();
    }

    @Test
    void an_element_below_its_limit_has_a_lower_end_of_zero() {
        InventedSpots spots = new InventedSpots();
        for (int p = 1; p <= 3; p++) {
            spots.add("skin", "P" + p, "Ag 58.9, Cu 23.2, Zn 17.9, Sn <0.2");
        }
        Estimate tin = group(spots.against(BRAZE), "skin").ratios().orElseThrow().ratios().get(2).factor();
        assertThat(tin.low()).isZero();
        double weight = 0.589 * 107.868 + 0.232 * 63.546 + 0.179 * 65.38;
        double ofTin = Math.hypot(0.125, 0.1 / (0.2 * 118.71 / weight));
        double atLimit = 0.2 / 58.9 / (5 / 56.0);
        assertThat(tin.high()).isCloseTo(atLimit * Math.exp(1.96 * Math.hypot(ofTin, 0.125)), within(0.001));
    }
}
