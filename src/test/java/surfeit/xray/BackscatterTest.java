package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BackscatterTest {

    // Measured at 20 kV: Heinrich 1966 (values from memory).
    @ParameterizedTest
    @CsvSource({"Si,0.164", "Cu,0.309", "Au,0.506"})
    void coefficient_lies_within_five_percent_of_measured_values(String symbol, double measured) {
        assertThat(Backscatter.of(Samples.pure(symbol)).coefficient()).isCloseTo(measured, within(0.05 * measured));
    }

    // XPP, Pouchou & Pichoir 1991 (from memory), worked out separately.
    @ParameterizedTest
    @CsvSource({"Si,Si,Ka,0.16174,0.92139,1.3586", "Au,Si,Ka,0.50369,0.66999,2.2014",
        "Au,Au,Ma,0.50369,0.67635,2.1604"})
    void losses_and_surface_ionisation_at_15_kev(String host, String symbol, String name, double eta,
                                                 double remaining, double phi0) {
        Backscatter backscatter = Backscatter.of(Samples.pure(host));
        double u = Samples.line(symbol, name).overvoltage(15);
        assertThat(backscatter.coefficient()).isCloseTo(eta, within(1e-5));
        assertThat(backscatter.remainingShare(u)).isCloseTo(remaining, within(1e-5));
        assertThat(backscatter.surfaceIonisation(u)).isCloseTo(phi0, within(1e-4));
    }
}
