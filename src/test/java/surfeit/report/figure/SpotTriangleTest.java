package surfeit.report.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static surfeit.report.figure.InventedReadings.phase;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import surfeit.composition.Phase;

class SpotTriangleTest {

    private static Picture picture(InventedReadings readings, List<Phase> phases) {
        return Picture.of(SpotFigure.of(readings.points(), phases, "Sample S1").svg()).isProper();
    }

    /** Corners: lower left, lower right, top, from the outline: the closed line of four points. */
    private static double[] corners(Picture picture) {
        return picture.drawn("polyline", "s-text").stream().map(Picture::points).filter(points -> points.length == 8)
            .findFirst()
            .orElseThrow();
    }

    @Test
    void a_spot_lies_at_the_centre_of_gravity_of_its_fractions() {
        Picture picture = picture(new InventedReadings("Bi:40,Pb:30,Sn:30").add("grain", "P1", "Bi 10, Pb 20, Sn 70")
            .add("other", "P1", "Bi 80, Pb 5, Sn 15"), List.of());
        double[] corner = corners(picture);
        Element spot = picture.drawn("circle", "f-text").get(0);
        assertThat(Picture.number(spot, "cx")).isCloseTo(0.1 * corner[0] + 0.2 * corner[2] + 0.7 * corner[4],
            within(0.02));
        assertThat(Picture.number(spot, "cy")).isCloseTo(0.1 * corner[1] + 0.2 * corner[3] + 0.7 * corner[5],
            within(0.02));
        assertThat(picture.text("Bi").x()).isLessThan(corner[0]);
        assertThat(picture.text("Pb").x()).isGreaterThan(corner[2]);
        assertThat(picture.allText()).contains("Bi, at%", "Pb, at%", "Sn, at%", "n = 1 spot on 1 particle", "nominal");
    }

    @Test
    void a_phase_lies_at_its_composition_and_is_named() {
        Picture picture = picture(new InventedReadings("Bi:40,Pb:30,Sn:30").add("grain", "P1", "Bi 10, Pb 20, Sn 70")
            .add("other", "P1", "Bi 80, Pb 5, Sn 15"), List.of(phase("Bi-Pb", "epsilon", "Bi", 0.37, "Pb", 0.63)));
        double[] corner = corners(picture);
        assertThat(picture.drawn("circle", "s-muted")).anySatisfy(sign ->
            assertThat(Picture.number(sign, "cx")).isCloseTo(0.37 * corner[0] + 0.63 * corner[2], within(0.02)));
        assertThat(picture.allText()).contains("epsilon");
    }

    @Test
    void spots_close_together_show_that_part_of_the_triangle_and_where_it_lies() {
        Picture picture = picture(new InventedReadings("Sn:95.8,Ag:3.3,Cu:0.9").add("matrix", "P1", "Sn 96, Ag 3, Cu 1")
            .add("matrix", "P2", "Sn 95, Ag 4, Cu 1"), List.of(phase("Ag-Sn", "Ag3Sn", "Ag", 0.75, "Sn", 0.25)));
        assertThat(picture.allText()).contains("the part drawn", "Outside the part drawn: Ag3Sn", "95", "100");
        double[] corner = corners(picture);
        Element spot = picture.drawn("circle", "f-text").get(0);
        TriangleFrame frame =
            TriangleFrame.around(List.of(new double[] {0.958, 0.033, 0.009}, new double[] {0.96, 0.03, 0.01},
            new double[] {0.95, 0.04, 0.01}));
        double[] weights = {(0.96 - frame.least()[0]) / frame.side(), (0.03 - frame.least()[1]) / frame.side(),
            (0.01 - frame.least()[2]) / frame.side()};
        assertThat(Picture.number(spot, "cx"))
            .isCloseTo(weights[0] * corner[0] + weights[1] * corner[2] + weights[2] * corner[4], within(0.02));
    }

    @Test
    void the_part_drawn_holds_all_and_has_round_sides() {
        List<double[]> near = List.of(new double[] {0.96, 0.03, 0.01}, new double[] {0.94, 0.045, 0.015});
        TriangleFrame frame = TriangleFrame.around(near);
        assertThat(near).allSatisfy(composition -> assertThat(frame.holds(composition)).isTrue());
        assertThat(frame.side()).isEqualTo(0.05);
        assertThat(frame.least()[0] + frame.least()[1] + frame.least()[2] + frame.side()).isCloseTo(1, within(1e-12));
        assertThat(TriangleFrame.around(List.of(new double[] {1, 0, 0}, new double[] {0, 1, 0}, new double[] {0, 0, 1}))
            .isWhole())
            .isTrue();
        assertThat(frame.holds(new double[] {0.25, 0.75, 0})).isFalse();
    }

    @Test
    void features_differ_by_shape_and_more_than_eight_by_letters() {
        InventedReadings readings = new InventedReadings("Bi:40,Pb:30,Sn:30");
        for (int i = 0; i < 10; i++) {
            readings.add("feature " + i, "P1", "Bi " + (10 + 5 * i) + ", Pb 20, Sn " + (70 - 5 * i));
        }
        Picture picture = picture(readings, List.of());
        assertThat(picture.texts()).extracting(Picture.Text::shown).contains("a", "b", "feature 9");
    }

    @Test
    void a_spot_without_one_of_the_elements_is_counted_not_drawn() {
        Picture picture = picture(new InventedReadings("Bi:40,Pb:30,Sn:30").add("grain", "P1", "Bi 40, Pb 30, Sn 30")
            .add("rim", "P1", "Bi 60, Sn 40"), List.of());
        assertThat(picture.allText()).contains("1 spot not drawn: one of the three elements is not measured there.");
    }
}
