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

    // Geometry, take-off 35 degrees, detector along the way out from the top or away from it; the last lies in shadow.
    @ParameterizedTest
    @CsvSource({"0,0,35", ".25,0,49.48", ".5,0,65.00", ".7,0,79.43", ".25,180,20.52", ".5,180,5.00", ".7,180,-9.43"})
    void a_sphere_seen_from_its_top_outwards(double xOverRadius, double azimuth, double expected) {
        double tilt = TakeOff.tiltOnSphereDeg(20, 10 * xOverRadius);
        assertThat(TakeOff.tiltedDeg(35, tilt, azimuth)).isCloseTo(expected, within(0.01));
    }

    @Test
    void a_take_off_angle_of_nothing_is_refused() {
        assertThatThrownBy(() -> TakeOff.tiltedDeg(0, 10, 0)).hasMessageContaining("0.0 degrees");
    }

    @Test
    void a_beam_that_passes_the_sphere_by_meets_no_surface() {
        assertThatThrownBy(() -> TakeOff.tiltOnSphereDeg(20, 10)).hasMessageContaining("less than the radius");
    }
}
