package surfeit.report.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static surfeit.report.figure.InventedReadings.phase;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import surfeit.composition.Phase;
import surfeit.segregation.answer.Verdict;

class SpotFigureTest {
    private static final List<Phase> PHASES = List.of(phase("Ag-Cu", "(Ag)", "Ag", 0.86, "Cu", 0.14),
        phase("Ag-Cu", "(Cu)", "Ag", 0.05, "Cu", 0.95));

    private static InventedReadings brazingPowder() {
        return new InventedReadings("Ag:60.1,Cu:39.9")
            .add("matrix", "P1", "Cu 38.0, Ag 62.0").add("matrix", "P2", "Cu 37.0, Ag 63.0")
            .add("dark patch", "P1", "Cu 78.8, Ag 21.2", Verdict.ENRICHED)
            .add("dark patch", "P2", "Cu 75.0, Ag 25.0", Verdict.ENRICHED);
    }

    private static Picture picture(InventedReadings readings, List<Phase> phases) {
        return Picture.of(SpotFigure.of(readings.points(), phases, "Sample A7").svg()).isProper();
    }

    @Test
    void two_elements_share_one_axis_with_nominal_phases_features_and_particles() {
        Picture picture = picture(brazingPowder(), PHASES);
        assertThat(picture.allText()).contains("Cu, at%", "nominal 39.9", "(Ag) 14", "(Cu) 95", "matrix", "dark patch",
            "n = 2 spots on 2 particles", "P1", "P2", "enriched", "inconclusive", "at 779 \u00b0C, from memory");
        assertThat(picture.description())
            .contains("dark patch (n = 2 spots on 2 particles): Ag 21.2 to 25 at%, Cu 75 to 78.8 at%.");
    }

    @Test
    void spots_nominal_and_phases_lie_where_the_axis_says() {
        Picture picture = picture(brazingPowder(), PHASES);
        List<Element> enriched = picture.drawn("polygon", "f-more");
        assertThat(Picture.middle(enriched.get(0))).isCloseTo(picture.onAxis(78.8, "20", "80"), within(0.1));
        assertThat(Picture.middle(enriched.get(1))).isCloseTo(picture.onAxis(75, "20", "80"), within(0.1));
        assertThat(Picture.number(picture.drawn("circle", "f-paper").get(0), "cx"))
            .isCloseTo(picture.onAxis(38, "20", "80"), within(0.1));
        assertThat(picture.text("nominal 39.9").span()[0]).isLessThan(picture.onAxis(39.9, "20", "80"));
        assertThat(xOfVerticals(picture, "s-text")).anySatisfy(x ->
            assertThat(x).isCloseTo(picture.onAxis(39.9, "20", "80"), within(0.1)));
        assertThat(xOfVerticals(picture, "s-muted")).anySatisfy(x ->
            assertThat(x).isCloseTo(picture.onAxis(14, "20", "80"), within(0.1)));
    }

    private static List<Double> xOfVerticals(Picture picture, String styleClass) {
        return picture.drawn("line", styleClass).stream()
            .filter(line -> line.getAttribute("x1").equals(line.getAttribute("x2")))
            .map(line -> Picture.number(line, "x1")).toList();
    }

    @Test
    void where_all_lies_close_together_that_part_is_drawn_and_phases_beyond_are_named_at_the_side() {
        Picture picture = picture(new InventedReadings("Ag:60.1,Cu:39.9").add("matrix", "P1", "Cu 38.0, Ag 62.0")
            .add("matrix", "P2", "Cu 41.0, Ag 59.0"), PHASES);
        assertThat(picture.allText()).contains("\u2190 (Ag) 14", "(Cu) 95 \u2192").doesNotContain("\n80\n");
    }

    @Test
    void where_nothing_tells_the_scatter_the_figure_says_why_every_sign_is_the_same() {
        String note = "Nothing tells the scatter of these spots";
        Picture without = picture(new InventedReadings("Ag:60.1,Cu:39.9").withoutScatter().add("matrix", "P1", "Cu 38, Ag 62")
            .add("dark patch", "P1", "Cu 95, Ag 5"), List.of());
        assertThat(without.allText()).contains(note);
        assertThat(picture(brazingPowder(), PHASES).allText()).doesNotContain(note);
    }

    @Test
    void a_value_below_its_limit_is_drawn_at_the_limit_with_a_sign_of_its_own() {
        Picture picture = picture(new InventedReadings("Al:88,Si:12").add("surface", "P1", "Si <2, Al 99")
            .add("surface", "P1", "Si 11, Al 89"), List.of());
        assertThat(picture.allText()).contains("below its limit, drawn at the limit");
        Element sign = picture.drawn("polygon", "s-muted").get(0);
        assertThat(Picture.points(sign)[0]).isLessThan(picture.onAxis(2, "0", "6"));
        assertThat(Picture.middle(sign)).isCloseTo(picture.onAxis(2, "0", "6"), within(1.0));
    }

    @Test
    void more_than_three_elements_have_an_axis_each_and_unmeasured_ones_none() {
        Picture picture = picture(new InventedReadings("Fe:67,Cr:18,Ni:12,Mo:2,S:1")
            .add("surface", "P1", "Fe 68, Cr 18, Ni 12, Mo 2").add("surface", "P2", "Fe 66, Cr 20, Ni 12, Mo 2"),
            List.of());
        assertThat(picture.allText()).contains("Fe, at%", "Cr, at%", "Ni, at%", "Mo, at%").doesNotContain("S, at%");
        assertThat(picture.drawn("circle", "f-paper")).as("four signs for each of two spots, one in the legend")
            .hasSize(9);
    }

    @Test
    void very_many_spots_are_thinned_evenly_and_the_figure_says_so() {
        InventedReadings readings = new InventedReadings("Ag:60.1,Cu:39.9");
        for (int i = 0; i < 9000; i++) {
            readings.add("matrix", "P" + i % 60, "Cu " + (37 + i % 7) + ", Ag " + (63 - i % 7));
        }
        Picture picture = picture(readings, List.of());
        assertThat(picture.allText())
            .contains("of 9000 spots are drawn, thinned evenly; of each feature the first 40 particles",
            "n = 9000 spots on more than 40 particles");
        assertThat(picture.drawn("circle", "f-paper")).hasSizeBetween(500, DrawnSpots.MOST_SIGNS);
    }

    @Test
    void many_features_become_figures_of_one_printed_page_each_on_the_same_axes() {
        // the printed page of the report is 176 mm wide and leaves 215 mm of height to a figure
        int mostHeight = (int) (215.0 / 176 * Sheet.WIDTH);
        InventedReadings readings = new InventedReadings("Ag:60.1,Cu:39.9");
        for (int i = 0; i < 24 * 4; i++) {
            readings.add("feature " + (char) ('A' + i / 4), "P" + i % 4, "Cu " + (20 + i / 2) + ", Ag " + (80 - i / 2));
        }
        List<Figure> pages = SpotFigure.pages(readings.points(), PHASES, "Sample A7");
        assertThat(pages).hasSize(2).allSatisfy(page -> {
            assertThat(page.height() - page.headHeight()).isLessThanOrEqualTo(mostHeight);
            Picture picture = Picture.of(page.svg()).isProper();
            assertThat(picture.allText()).contains("Cu, at%", "nominal 39.9", "(Ag) 14");
            assertThat(picture.onAxis(39.9, "20", "60"))
                .isEqualTo(Picture.of(pages.get(0).svg()).onAxis(39.9, "20", "60"));
        });
        assertThat(pages).extracting(Figure::title).containsExactly(
            "Sample A7: every spot, by feature and particle (1 of 2)", "Sample A7: every spot, by feature and particle (2 of 2)");
        assertThat(pages.get(1).description()).contains("feature X (n = 4 spots").doesNotContain("feature A (n");
        List<String> named = pages.stream().flatMap(page -> Picture.of(page.svg()).allText().lines())
            .filter(line -> line.startsWith("feature ")).toList();
        assertThat(named).hasSize(24).doesNotHaveDuplicates();
    }

    /** Two rows of axes, each with all features: a page may end within a row or between them. */
    @Test
    void many_features_of_many_elements_are_on_one_page_or_another_along_every_axis() {
        InventedReadings readings = new InventedReadings("Fe:67,Cr:18,Ni:12,Mo:2,S:1");
        for (int i = 0; i < 24; i++) {
            readings.add("feature " + (char) ('A' + i), "P1", "Fe 67, Cr 18, Ni 12, Mo 2, S 1");
        }
        List<Figure> pages = SpotFigure.pages(readings.points(), List.of(), "Sample A7");
        assertThat(pages).hasSize(4);
        List<String> lines = pages.stream().flatMap(page -> Picture.of(page.svg()).allText().lines()).toList();
        for (int i = 0; i < 24; i++) {
            assertThat(lines).filteredOn(("feature " + (char) ('A' + i))::equals).hasSize(2);
        }
        assertThat(pages.stream().mapToInt(page -> Picture.of(page.svg()).drawn("circle", "f-paper").size()).sum())
            .as("a sign for each element of each spot, one in the legend of each page").isEqualTo(24 * 5 + 4);
    }

    @Test
    void what_fits_a_printed_page_is_one_figure() {
        assertThat(SpotFigure.pages(brazingPowder().points(), PHASES, "Sample A7"))
            .containsExactly(SpotFigure.of(brazingPowder().points(), PHASES, "Sample A7"));
        SpotPoints none = new InventedReadings("Ag:60.1,Cu:39.9").points();
        assertThat(SpotFigure.pages(none, PHASES, "Sample A7")).containsExactly(SpotFigure.of(none, PHASES, "Sample A7"));
    }

    @Test
    void names_from_outside_are_shown_and_never_act() {
        String hostile = "<g onload=\"x\">&amp;\u0000";
        Picture picture = picture(new InventedReadings("Ag:60.1,Cu:39.9").add(hostile, hostile, "Cu 38.0, Ag 62.0"),
            List.of());
        assertThat(picture.allText()).contains("<g onload=\"x\">&amp;");
    }

    @Test
    void without_spots_the_nominal_stands_alone() {
        Picture picture = picture(new InventedReadings("Ag:60.1,Cu:39.9"), PHASES);
        assertThat(picture.allText()).contains("0 spots", "nominal 39.9");
    }

    @Test
    void the_same_readings_give_the_same_picture() {
        assertThat(SpotFigure.of(brazingPowder().points(), PHASES, "Sample A7"))
            .isEqualTo(SpotFigure.of(brazingPowder().points(), PHASES, "Sample A7"));
    }
}
