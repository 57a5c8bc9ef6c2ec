package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.element.Element;

class AbsorptionTest {

    // Take-off 35 degrees. Philibert with Heinrich's constants and Heinrich-Yakowitz 1975 (both from memory), XPP; all
    // worked out separately with mass absorption of Elam et al. 2002.
    @ParameterizedTest
    @CsvSource({"Si,Ka,Si,15,622.1,.8803,.8629,.8878", "Al,Ka,Al,15,714.8,.8621,.8445,.8668",
        "Si,Ka,Au,15,2640.3,.6567,.5912,.6219", "Au,Ma,Au,15,1729.7,.7482,.6931,.7322",
        "Ag,La,Ag,15,897.6,.8551,.8215,.8480", "Cu,Ka,Cu,20,86.8,.9789,.9739,.9760"})
    void factor_agrees_with_the_older_corrections(String symbol, String name, String host, double beam, double chi,
                                                  double philibert, double heinrichYakowitz, double xpp) {
        Line line = Samples.line(symbol, name);
        Material material = Samples.pure(host);
        double ours = Absorption.chi(line, material, 35);
        assertThat(ours).isCloseTo(chi, within(0.003 * chi));
        assertThat(philibert(ours, line, Element.of(host), beam)).isCloseTo(philibert, within(5e-4));
        assertThat(heinrichYakowitz(ours, line, beam)).isCloseTo(heinrichYakowitz, within(5e-4));
        double f = DepthProfile.of(material, line, beam).absorptionFactor(ours);
        assertThat(f).isCloseTo(xpp, within(5e-4));
        assertThat(f).isBetween(heinrichYakowitz, Math.max(philibert, xpp) + 1e-3);
    }

    /** 1/f = (1 + chi/s)(1 + h/(1+h) chi/s), h = 1.2 A/Z², s = 4.5e5/(E0^1.65 - Ec^1.65). */
    private static double philibert(double chi, Line line, Element host, double beam) {
        double h = 1.2 * host.atomicWeight() / Math.pow(host.atomicNumber(), 2);
        double s = 4.5e5 / (Math.pow(beam, 1.65) - Math.pow(line.edgeEnergyKev(), 1.65));
        return 1 / ((1 + chi / s) * (1 + h / (1 + h) * chi / s));
    }

    /** 1/f = 1 + 3e-6 g chi + 4.5e-13 g² chi², g = E0^1.65 - Ec^1.65. */
    private static double heinrichYakowitz(double chi, Line line, double beam) {
        double g = Math.pow(beam, 1.65) - Math.pow(line.edgeEnergyKev(), 1.65);
        return 1 / (1 + 3e-6 * g * chi + 4.5e-13 * g * g * chi * chi);
    }

    // Bishop, J. Phys. D 7 (1974) 2009: a rectangular profile of the same mean depth does for f above 0.8.
    @Test
    void a_rectangular_profile_of_the_same_mean_depth_comes_close_for_weak_absorption() {
        Line line = Samples.line("Si", "Ka");
        DepthProfile profile = DepthProfile.of(Samples.pure("Si"), line, 15);
        double chi = Absorption.chi(line, Samples.pure("Si"), 35);
        double x = 2 * chi * profile.meanMassDepth();
        assertThat((1 - Math.exp(-x)) / x).isCloseTo(0.8867, within(5e-4));
        assertThat(profile.absorptionFactor(chi)).isCloseTo(0.8878, within(5e-4));
    }

    @Test
    void bounds_carry_the_spread_of_absorption_tables() {
        Line soft = Samples.line("Cu", "La");
        Material copper = Samples.pure("Cu");
        Estimate f = Absorption.factor(DepthProfile.of(copper, soft, 10), soft, copper, 35);
        double chi = Absorption.chi(soft, copper, 35);
        assertThat(f.low()).isLessThanOrEqualTo(DepthProfile.of(copper, soft, 10).absorptionFactor(1.25 * chi));
        assertThat(f.high()).isGreaterThanOrEqualTo(DepthProfile.of(copper, soft, 10).absorptionFactor(0.75 * chi));
        assertThat(f.high()).isLessThanOrEqualTo(1);
    }

    @Test
    void a_hidden_detector_is_refused() {
        assertThatThrownBy(() -> Absorption.chi(500, -9.4)).hasMessageContaining("-9.4").hasMessageContaining("hides");
    }
}
