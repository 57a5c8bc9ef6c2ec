package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.special.Gamma;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChiSquareTest {

    /** The table found in every text book (NIST/SEMATECH e-Handbook 1.3.6.7.4; from memory). */
    @ParameterizedTest
    @CsvSource({"0.95, 1, 3.841", "0.95, 2, 5.991", "0.95, 10, 18.307", "0.05, 10, 3.940", "0.99, 5, 15.086",
        "0.95, 100, 124.342", "0.05, 2, 0.103"})
    void quantiles_are_those_of_the_table(double probability, double df, double expected) {
        assertThat(ChiSquare.quantile(probability, df)).isCloseTo(expected, within(5.1e-4));
    }

    /** Expected: scipy 1.17.1, chi2.ppf: the outermost of 400 midpoints and the median. */
    @ParameterizedTest
    @CsvSource({"0.00125, 1, 2.454371268595312e-06", "0.5, 1, 0.454936423119572", "0.99875, 1, 10.414938768876153",
        "0.00125, 2, 0.0025015638033052583", "0.99875, 2, 13.369223455335899", "0.00125, 3, 0.028216927259234966",
        "0.99875, 10, 28.99149754138654"})
    void quantiles_agree_with_an_independent_library(double probability, double df, double expected) {
        assertThat(ChiSquare.quantile(probability, df)).isCloseTo(expected, within(1e-11 * expected));
    }

    @Test
    void below_a_quantile_lies_its_share_by_the_incomplete_gamma_function() {
        for (double df : new double[]{0.4, 1, 2.5, 9, 80, 3000}) {
            for (double p = 1e-12; p < 1; p = p < 0.1 ? p * 4 : p + 0.07) {
                assertThat(Gamma.regularizedGammaP(df / 2, ChiSquare.quantile(p, df) / 2)).as("p %s, df %s", p, df)
                    .isCloseTo(p, within(1e-11 * p));
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"0, 3", "1, 3", "0.5, 0", "NaN, 3"})
    void senseless_arguments_are_refused(double probability, double df) {
        assertThatThrownBy(() -> ChiSquare.quantile(probability, df)).isInstanceOf(IllegalArgumentException.class);
    }
}
