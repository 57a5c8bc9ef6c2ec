package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DepthProfileTest {
    private static final String[] HOSTS = {"C", "Al", "Si", "Ti", "Fe", "Cu", "Ge", "Ag", "Sn", "W", "Au", "Pb"};
    private static final String[][] LINES = {{"C", "Ka"}, {"O", "Ka"}, {"Al", "Ka"}, {"Si", "Ka"}, {"Ti", "Ka"},
        {"Fe", "Ka"}, {"Cu", "Ka"}, {"Cu", "La"}, {"Ge", "La"}, {"Ag", "La"}, {"Sn", "La"}, {"Au", "Ma"}, {"Pb", "Ma"}};
    private static final double[] BEAMS = {2, 3, 5, 8, 10, 15, 20, 25, 30};

    private static DepthProfile profile(String host, String symbol, String line, double beam) {
        return DepthProfile.of(Samples.pure(host), Samples.line(symbol, line), beam);
    }

    // XPP, Pouchou & Pichoir 1991 (coefficients from memory), worked out separately.
    @ParameterizedTest
    @CsvSource({"Si,Si,Ka,1.3586,7.3459e-4,1.9735e-4,11057,12876", "Au,Si,Ka,2.2014,1.0986e-3,2.0811e-4,8384.6,11984",
        "Au,Au,Ma,2.1604,1.0052e-3,1.9827e-4,8637.9,12536"})
    void parameters_of_the_profile_at_15_kev(String host, String symbol, String line, double phi0, double area,
                                             double mean, double a, double b) {
        DepthProfile profile = profile(host, symbol, line, 15);
        assertThat(profile.surfaceIonisation()).isCloseTo(phi0, within(1e-4));
        assertThat(profile.generated()).isCloseTo(area, within(2e-4 * area));
        assertThat(profile.meanMassDepth()).isCloseTo(mean, within(2e-4 * mean));
        assertThat(profile.a()).isCloseTo(a, within(2e-4 * a));
        assertThat(profile.b()).isCloseTo(b, within(2e-4 * b));
    }

    // The same model worked out separately, take-off 35 degrees, mu 1478 (Si K) of Elam et al.; share of the top
    // layers of Au with 18.6 at% Si (15.69 g/cm³).
    @ParameterizedTest
    @CsvSource({"5,.0256,.0532,.144,.303,.576,.930,.997,1,17,44",
        "15,.0051,.0103,.0263,.0546,.115,.311,.596,.892,81,205",
        "20,.0039,.0077,.0197,.0402,.0834,.222,.447,.764,113,288"})
    void share_of_the_top_layers(double beam, double s1, double s2, double s5, double s10, double s20, double s50,
                                 double s100, double s200, double d50, double d90) {
        Material host = Samples.goldSilicon();
        Line line = Samples.line("Si", "Ka");
        DepthProfile profile = DepthProfile.of(host, line, beam);
        double chi = Absorption.chi(line, host, 35);
        double[] depths = {1, 2, 5, 10, 20, 50, 100, 200};
        double[] shares = {s1, s2, s5, s10, s20, s50, s100, s200};
        for (int i = 0; i < depths.length; i++) {
            assertThat(profile.shareOfTop(host.massDepth(depths[i]), chi)).as(depths[i] + " nm")
                .isCloseTo(shares[i], within(0.01 * shares[i] + 5e-5));
        }
        assertThat(host.depthNm(profile.massDepthOfShare(0.5, chi))).isCloseTo(d50, within(0.7));
        assertThat(host.depthNm(profile.massDepthOfShare(0.9, chi))).isCloseTo(d90, within(1.0));
    }

    // Same source: depths of half and of nine tenths of the emitted signal of pure elements, 15 kV,
    // take-off 35 degrees.
    @ParameterizedTest
    @CsvSource({"Si,Ka,681,1572", "Al,Ka,613,1404", "Cu,Ka,133,361", "Cu,La,143,345", "Ge,La,259,627",
        "Ag,La,135,344", "Sn,La,200,515", "Au,Ma,70,175"})
    void depths_in_pure_elements_at_15_kev(String symbol, String name, double d50, double d90) {
        Material host = Samples.pure(symbol);
        Line line = Samples.line(symbol, name);
        DepthProfile profile = DepthProfile.of(host, line, 15);
        double chi = Absorption.chi(line, host, 35);
        assertThat(host.depthNm(profile.massDepthOfShare(0.5, chi))).isCloseTo(d50, within(0.01 * d50));
        assertThat(host.depthNm(profile.massDepthOfShare(0.9, chi))).isCloseTo(d90, within(0.01 * d90));
    }

    // Share of the top 0.3 nm: about 0.15 % of the signal, so that a monolayer cannot be seen at 15 kV.
    @Test
    void a_monolayer_is_about_a_thousandth_of_the_signal() {
        Material host = Samples.goldSilicon();
        Line line = Samples.line("Si", "Ka");
        assertThat(DepthProfile.of(host, line, 15).shareOfTop(host.massDepth(0.3), Absorption.chi(line, host, 35)))
            .isCloseTo(0.0015, within(1e-4));
    }

    @Test
    void area_mean_depth_and_emission_are_those_of_the_curve() {
        for (String[] line : LINES) {
            DepthProfile profile = profile("Cu", line[0], line[1], 20);
            double chi = 1500;
            double step = profile.meanMassDepth() / 2000;
            double area = 0;
            double moment = 0;
            double emitted = 0;
            for (int i = 0; i < 40000; i++) {
                double z = (i + 0.5) * step;
                double phi = profile.phi(z) * step;
                area += phi;
                moment += phi * z;
                emitted += phi * Math.exp(-chi * z);
            }
            assertThat(area).as(line[0]).isCloseTo(profile.generated(), within(1e-5 * profile.generated()));
            assertThat(moment / area).isCloseTo(profile.meanMassDepth(), within(1e-5 * profile.meanMassDepth()));
            assertThat(profile.meanMassDepth(0)).isCloseTo(profile.meanMassDepth(),
                within(1e-6 * profile.meanMassDepth()));
            assertThat(profile.emitted(chi)).isCloseTo(emitted, within(1e-5 * emitted));
            assertThat(profile.emittedFromTop(40000 * step, chi)).isCloseTo(emitted, within(1e-5 * emitted));
        }
    }

    @Test
    void no_profile_of_the_grid_is_negative_or_undefined() {
        List<String> checked = new ArrayList<>();
        for (String host : HOSTS) {
            for (String[] line : LINES) {
                for (double beam : BEAMS) {
                    if (Samples.line(line[0], line[1]).overvoltage(beam) >= 1.1) {
                        DepthProfile profile = profile(host, line[0], line[1], beam);
                        check(profile);
                        checked.add(host + line[0] + line[1] + beam);
                    }
                }
            }
        }
        assertThat(checked).hasSizeGreaterThanOrEqualTo(888).doesNotHaveDuplicates();
    }

    private static void check(DepthProfile profile) {
        assertThat(profile.emitted(0)).as(profile.toString()).isCloseTo(profile.generated(),
            within(1e-7 * profile.generated()));
        for (int i = 0; i <= 400; i++) {
            assertThat(profile.phi(profile.meanMassDepth() * i / 50)).as(profile.toString()).isNotNaN().isNotNegative();
        }
        double half = profile.massDepthOfShare(0.5, 1000);
        assertThat(half).isPositive().isLessThan(profile.massDepthOfShare(0.9, 1000));
        assertThat(profile.shareOfTop(half, 1000)).isCloseTo(0.5, within(1e-8));
    }

    @Test
    void a_profile_whose_two_decays_almost_meet_stays_exact() {
        DepthProfile profile = profile("C", "Ge", "La", 25);
        assertThat(Math.abs(profile.a() / profile.b() - 1)).isLessThan(1e-3);
        assertThat(profile.emitted(0)).isCloseTo(profile.generated(), within(1e-7 * profile.generated()));
        assertThat(profile.meanMassDepth(0)).isCloseTo(profile.meanMassDepth(), within(1e-6 * profile.meanMassDepth()));
    }

    @Test
    void a_beam_below_the_edge_is_refused() {
        assertThatThrownBy(() -> profile("Cu", "Cu", "Ka", 8)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("8.0 keV").hasMessageContaining("8.979");
        assertThatThrownBy(() -> profile("Cu", "Cu", "Ka", 60)).hasMessageContaining("60.0 keV");
        assertThatThrownBy(() -> profile("Cu", "Cu", "Ka", 20).massDepthOfShare(1, 0)).hasMessageContaining("1.0");
    }

    @Test
    void a_first_evaluation_takes_less_than_fifty_microseconds() {
        Material host = Samples.silverCopper();
        Line line = Samples.line("Ag", "La");
        long[] nanos = new long[2001];
        double sum = 0;
        for (int i = 0; i < 2 * nanos.length; i++) {
            long start = System.nanoTime();
            sum += DepthProfile.of(host, line, 10 + i * 1e-3).generated();
            nanos[i % nanos.length] = System.nanoTime() - start;
        }
        Arrays.sort(nanos);
        assertThat(sum).isPositive();
        assertThat(nanos[nanos.length / 2]).as("median, ns").isLessThan(50_000);
    }
}
