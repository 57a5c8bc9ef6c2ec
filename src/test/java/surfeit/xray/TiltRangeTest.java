package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TiltRangeTest {

    @Test
    void on_a_particle_anything_from_grazing_to_straight_on_is_possible() {
        TiltRange range = TiltRange.anywhere(35);
        assertThat(range.lowDeg()).isEqualTo(TiltRange.LOWEST_DEG);
        assertThat(range.highDeg()).isCloseTo(90, within(1e-6));
        assertThat(range.shadowPossible()).isTrue();
    }

    @Test
    void a_polished_piece_stays_near_level() {
        TiltRange range = TiltRange.polished(35);
        assertThat(range.lowDeg()).isCloseTo(33, within(1e-6));
        assertThat(range.highDeg()).isCloseTo(37, within(1e-6));
        assertThat(range.shadowPossible()).isFalse();
    }

    @Test
    void a_stated_tilt_without_a_direction_leaves_both_ways_open() {
        TiltRange range = TiltRange.statedTilt(35, 20, 0);
        assertThat(range.lowDeg()).isCloseTo(15, within(1e-6));
        assertThat(range.highDeg()).isCloseTo(55, within(1e-6));
    }

    @Test
    void a_stated_direction_leaves_one_way_open() {
        assertThat(TiltRange.stated(35, 20, 0, TiltRange.Facing.TOWARDS_DETECTOR).lowDeg()).isGreaterThan(35);
        assertThat(TiltRange.stated(35, 20, 0, TiltRange.Facing.AWAY_FROM_DETECTOR).highDeg()).isLessThan(35);
        TiltRange side = TiltRange.stated(35, 20, 0, TiltRange.Facing.SIDE);
        assertThat(side.lowDeg()).isLessThan(32.61);
        assertThat(side.highDeg()).isGreaterThan(32.61);
    }

    /**
     * By hand: towards, 35 + 25 at most; at least sin a = sin 35 cos 15 + cos 35 sin 15 cos 45, 44.74 degrees. Away, 35 - 15
     * at least; at most sin a = sin 35 cos 5 - cos 35 sin 5 cos 45, 31.39 degrees. A slope of 55 of the 55 to 65 degrees
     * looks straight at the detector.
     */
    @Test
    void the_width_of_a_stated_tilt_counts_both_ways() {
        TiltRange towards = TiltRange.stated(35, 20, 5, TiltRange.Facing.TOWARDS_DETECTOR);
        assertThat(towards.highDeg()).isCloseTo(60, within(1e-6));
        assertThat(towards.lowDeg()).isCloseTo(44.74, within(0.01));
        TiltRange away = TiltRange.stated(35, 10, 5, TiltRange.Facing.AWAY_FROM_DETECTOR);
        assertThat(away.lowDeg()).isCloseTo(20, within(1e-6));
        assertThat(away.highDeg()).isCloseTo(31.39, within(0.01));
        assertThat(TiltRange.statedTilt(35, 60, 5).highDeg()).isCloseTo(90, within(1e-6));
    }

    @Test
    void a_surface_that_faces_fully_away_is_held_at_the_lowest_angle_and_flagged() {
        TiltRange range = TiltRange.within(35, 60, 70, 180, 180);
        assertThat(range.lowDeg()).isEqualTo(range.highDeg()).isEqualTo(TiltRange.LOWEST_DEG);
        assertThat(range.shadowPossible()).isTrue();
    }

    @ParameterizedTest
    @CsvSource({"0,90,0,180", "5,40,0,45", "10,60,45,135", "0,30,100,170", "30,80,20,20"})
    void the_range_holds_every_angle_of_a_fine_grid_and_no_more(double t0, double t1, double d0, double d1) {
        TiltRange range = TiltRange.within(35, t0, t1, d0, d1);
        double low = 90;
        double high = -90;
        for (int i = 0; i <= 200; i++) {
            for (int j = 0; j <= 200; j++) {
                double angle = TakeOff.tiltedDeg(35, t0 + (t1 - t0) * i / 200, d0 + (d1 - d0) * j / 200);
                low = Math.min(low, angle);
                high = Math.max(high, angle);
            }
        }
        assertThat(range.highDeg()).isCloseTo(Math.max(10, high), within(0.3));
        assertThat(range.lowDeg()).isCloseTo(Math.max(10, low), within(0.3));
    }

    @Test
    void limits_the_wrong_way_round_are_refused() {
        assertThatThrownBy(() -> TiltRange.within(35, 50, 20, 0, 180)).hasMessageContaining("low to high");
    }
}
