package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TakeOffTest {

    // Geometry, take-off 35 degrees.
    @ParameterizedTest
    @CsvSource({"0,0,35", "20,0,55", "-20,0,15", "20,180,15", "20,90,32.61", "45,0,80"})
    void tilt_of_a_flat_surface(double tilt, double azimuth, double expected) {
        assertThat(TakeOff.tiltedDeg(35, tilt, azimuth)).isCloseTo(expected, within(0.01));
    }

    // Geometry, take-off 35 degrees, detector along x; the last lies in shadow.
    @ParameterizedTest
    @CsvSource({"0,35", ".25,49.48", ".5,65.00", ".7,79.43", "-.25,20.52", "-.5,5.00", "-.7,-9.43"})
    void a_sphere_seen_from_its_top_outwards(double x, double expected) {
        assertThat(TakeOff.onSphereDeg(35, x, 0, 0)).isCloseTo(expected, within(0.01));
        assertThat(TakeOff.onSphereDeg(35, 0, x, 90)).isCloseTo(expected, within(0.01));
    }

    // Geometry: radius 5 um, 0.2 um deep.
    @ParameterizedTest
    @CsvSource({"0,.3355", ".5,.1876", "-.5,1.0188"})
    void way_out_of_a_sphere(double x, double expectedUm) {
        assertThat(5 * TakeOff.pathOutOfSphere(35, x, 0, 0.2 / 5, 0)).isCloseTo(expectedUm, within(1e-4));
    }

    @Test
    void a_great_sphere_is_flat() {
        assertThat(1e4 * TakeOff.pathOutOfSphere(35, 0, 0, 0.2 / 1e4, 0)).isCloseTo(0.3487, within(1e-4));
    }

    @Test
    void places_beside_the_sphere_are_refused() {
        assertThatThrownBy(() -> TakeOff.onSphereDeg(35, 0.9, 0.9, 0)).hasMessageContaining("(0.9, 0.9)");
        assertThatThrownBy(() -> TakeOff.pathOutOfSphere(35, 0, 0, 2.5, 0)).hasMessageContaining("2.5 radii");
        assertThatThrownBy(() -> TakeOff.tiltedDeg(0, 10, 0)).hasMessageContaining("0.0 degrees");
    }

    @ParameterizedTest
    @CsvSource({"0,0", "0.25,0", "0.5,60", "0.5,180", "0.7,90"})
    void a_place_on_a_sphere_is_a_tilt_with_an_azimuth(double xOverRadius, double azimuth) {
        double tilt = TakeOff.tiltOnSphereDeg(20, 10 * xOverRadius);
        assertThat(TakeOff.tiltedDeg(35, tilt, azimuth))
            .isCloseTo(TakeOff.onSphereDeg(35, xOverRadius, 0, azimuth), within(1e-9));
    }

    @Test
    void a_beam_that_passes_the_sphere_by_meets_no_surface() {
        assertThatThrownBy(() -> TakeOff.tiltOnSphereDeg(20, 10)).hasMessageContaining("less than the radius");
    }
}
