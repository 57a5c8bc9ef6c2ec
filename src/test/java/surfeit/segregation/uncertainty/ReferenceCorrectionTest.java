package surfeit.segregation.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static surfeit.Vectors.tolerance;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.Vectors;
import surfeit.segregation.sums.Sums;

/** Corrections by reference spots; invented numbers, expected ones worked out by hand. */
class ReferenceCorrectionTest {
    private static final double[] NO_CERTIFICATE = new double[3];
    /** Means 0.55, 0.33 and 0.12; standard errors 0.05, 0.03 and 0.08, of which only the last is above a fifth. */
    private static final double[][] THIRD_IS_NOISE = {{0.50, 0.30, 0.20}, {0.60, 0.36, 0.04}};

    private static ReferenceCorrection of(double[][] spots, double[] certificate, boolean sameMaterial) {
        return ReferenceCorrection.of(spots, Optional.empty(), new double[] {0.4, 0.4, 0.2}, certificate, 0.9,
            Sums.constantFloor(0, 3), sameMaterial).orElseThrow();
    }

    /** Closed over the first two: certified 0.5 and 0.5, measured 0.625 and 0.375; gains 0.8, 4/3 and, unusable, 1. */
    @Test
    void an_element_read_too_wildly_is_left_alone_and_the_others_are_closed_without_it() {
        ReferenceCorrection correction = of(THIRD_IS_NOISE, NO_CERTIFICATE, false);
        assertThat(correction.usable()).containsExactly(true, true, false);
        assertThat(correction.gain()).containsExactly(new double[] {0.8, 4 / 3.0, 1}, within(1e-12));
    }

    /** 0.5 x 0.8, 0.3 x 4/3 and 0.3 add up to 1.1. */
    @Test
    void spots_are_multiplied_by_the_gains_and_closed_again() {
        ReferenceCorrection correction = of(THIRD_IS_NOISE, NO_CERTIFICATE, false);
        double[] spot = {0.5, 0.3, 0.3};
        assertThat(correction.corrected(spot))
            .containsExactly(new double[] {0.4 / 1.1, 0.4 / 1.1, 0.3 / 1.1}, within(1e-12));
        assertThat(correction.scale(spot, 0)).isCloseTo(0.8 / 1.1, within(1e-12));
        assertThat(correction.scale(spot, 1)).isCloseTo(4 / 3.0 / 1.1, within(1e-12));
    }

    /**
     * e 0.05, fraction 0.5, relative 0.08: 0.05^2 + 0.04^2 - 2 x 0.9 x 0.05 x 0.04 = 0.0005; a certificate of 2 % adds
     * 0.01^2.
     */
    @ParameterizedTest
    @CsvSource({"0, false, 0.0223607", "0.02, false, 0.0244949", "0.02, true, 0.0223607"})
    void the_certificates_own_error_joins_what_is_left_unless_the_piece_is_the_material(double certificate,
                                                                                        boolean sameMaterial,
                                                                                        double expected) {
        ReferenceCorrection correction =
            of(THIRD_IS_NOISE, new double[] {certificate, certificate, certificate}, sameMaterial);
        assertThat(correction.reducedError(0.05, 0.5, 0, 0.08)).isCloseTo(expected, within(1e-7));
        assertThat(correction.reducedError(0.05, 0.5, 2, 0.08)).as("not usable").isEqualTo(0.05);
    }

    /** Equal relative errors r of spot and piece leave r sqrt(2 (1 - rho)) of a fraction; worked out outside. */
    @Test
    void what_is_left_of_equal_errors_follows_from_their_correlation() {
        JsonNode vector = Vectors.read("78-residual-conversion");
        double[] relative = Vectors.doubles(vector.at("/input/r"));
        double[] correlation = Vectors.doubles(vector.at("/input/rho"));
        double[] residual = Vectors.doubles(vector.at("/expected/residual"));
        assertThat(residual).hasSize(3);
        for (int j = 0; j < residual.length; j++) {
            ReferenceCorrection correction = ReferenceCorrection.of(THIRD_IS_NOISE, Optional.empty(),
                new double[] {0.4, 0.4, 0.2}, NO_CERTIFICATE, correlation[j], Sums.constantFloor(0, 3), false).orElseThrow();
            assertThat(correction.reducedError(0.5 * relative[j], 0.5, 0, relative[j]) / 0.5)
                .isCloseTo(residual[j], tolerance(vector, residual[j]));
        }
    }

    @Test
    void one_usable_element_alone_corrects_nothing() {
        assertThat(ReferenceCorrection.of(THIRD_IS_NOISE, Optional.empty(), new double[] {0.5, 0, 0.5}, NO_CERTIFICATE,
            0.9, Sums.constantFloor(0, 3), false)).isEmpty();
    }

    @Test
    void without_an_element_gains_stay_and_fractions_are_closed_again() {
        double[][] uncertainties = {{0.01, 0.02, 0.03}, {0.04, 0.05, 0.06}};
        ReferenceCorrection rest = ReferenceCorrection.of(THIRD_IS_NOISE, Optional.of(uncertainties),
            new double[] {0.4, 0.4, 0.2}, new double[] {0.01, 0.02, 0.03}, 0.9, Sums.constantFloor(0, 3), false)
            .orElseThrow().without(0);
        assertThat(rest.gain()).containsExactly(new double[] {4 / 3.0, 1}, within(1e-12));
        assertThat(rest.usable()).containsExactly(true, false);
        assertThat(rest.mean()).containsExactly(new double[] {0.33 / 0.45, 0.12 / 0.45}, within(1e-12));
        assertThat(rest.trueFractions()).containsExactly(new double[] {2 / 3.0, 1 / 3.0}, within(1e-12));
        assertThat(rest.certificate()).containsExactly(0.02, 0.03);
        assertThat(rest.spots()[0]).containsExactly(new double[] {0.6, 0.4}, within(1e-12));
        assertThat(rest.spots()[1]).containsExactly(new double[] {0.9, 0.1}, within(1e-12));
        assertThat(rest.spotUncertainties().orElseThrow()).isDeepEqualTo(new double[][] {{0.02, 0.03}, {0.05, 0.06}});
    }

    /** Floor 0.03 over means 0.55 and 0.12: hypot(0.1, 0.0545455) = 0.113908, hypot(0.1, 0.25) = 0.269258. */
    @Test
    void the_reference_has_a_floor_of_its_own_unless_the_analysis_has_no_calibration_error() {
        ReferenceCorrection correction = ReferenceCorrection.of(THIRD_IS_NOISE, Optional.empty(),
            new double[] {0.4, 0.4, 0.2}, NO_CERTIFICATE, 0.9, Sums.constantFloor(0.03, 3), false).orElseThrow();
        assertThat(correction.relativeErrors(0.1)[0]).isCloseTo(0.113908, within(1e-6));
        assertThat(correction.relativeErrors(0.1)[2]).isCloseTo(0.269258, within(1e-6));
        assertThat(correction.relativeErrors(0)).containsExactly(0, 0, 0);
    }
}
