package surfeit.report.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static surfeit.report.FindingBuilder.finding;
import static surfeit.report.OutcomeBuilder.consistent;
import static surfeit.report.OutcomeBuilder.depleted;
import static surfeit.report.OutcomeBuilder.enriched;
import static surfeit.report.OutcomeBuilder.inconclusive;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import surfeit.report.GroupBuilder;
import surfeit.report.Invented;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;

class FactorFigureTest {
    private static final double INFINITY = Double.POSITIVE_INFINITY;

    private static Interpretation patchesAndMatrix() {
        return Invented.answer(Invented.AG_CU, Invented.copperRichPatches().build(), Invented.matrix().build());
    }

    private static Picture picture(GroupFinding... groups) {
        return Picture.of(FactorFigure.of(Invented.answer(Invented.AG_CU, groups), "Sample A7").svg());
    }

    @Test
    void a_viewer_finds_title_counts_units_numbers_and_verdicts() {
        Picture picture = Picture.of(FactorFigure.of(patchesAndMatrix(), "Sample A7").svg()).isProper();
        assertThat(picture.title()).isEqualTo("Sample A7: enrichment factors by feature");
        assertThat(picture.allText()).contains("dark patch", "n = 12 spots on 4 particles", "1.96 (1.71 to 2.15)",
            "0.364 (0.284 to 0.457)", "nominal at%", "60.1", "enriched", "depleted", "inconclusive, leans enriched",
            "enrichment factor, found / nominal atomic fraction (no unit, log)",
            "margin: odds within a factor of 1.25 of nominal");
        assertThat(picture.description())
            .contains("dark patch (n = 12 spots on 4 particles): Ag depleted, 0.364 (0.284 to 0.457); "
            + "Cu enriched, 1.96 (1.71 to 2.15).");
    }

    @Test
    void factors_intervals_and_nominal_lie_where_the_axis_says() {
        Picture picture = Picture.of(FactorFigure.of(patchesAndMatrix(), "Sample A7").svg());
        Element up = picture.drawn("polygon", "f-more").get(0);
        assertThat(Picture.middle(up)).isCloseTo(picture.onLogAxis(1.957, "1", "2"), within(0.1));
        Element down = picture.drawn("polygon", "f-less").get(0);
        assertThat(Picture.middle(down)).isCloseTo(picture.onLogAxis(0.364, "0.5", "1"), within(0.1));
        Element interval = picture.drawn("line", "s-more").get(0);
        assertThat(Picture.number(interval, "x1")).isCloseTo(picture.onLogAxis(1.711, "1", "2"), within(0.1));
        assertThat(Picture.number(interval, "x2")).isCloseTo(picture.onLogAxis(2.154, "1", "2"), within(0.1));
        assertThat(picture.drawn("line", "s-text").stream()
            .filter(line -> line.getAttribute("x1").equals(line.getAttribute("x2")))
            .mapToDouble(line -> Picture.number(line, "x1"))).anySatisfy(x ->
                assertThat(x).isCloseTo(picture.onLogAxis(1, "1", "2"), within(0.1)));
    }

    @Test
    void the_margin_of_odds_is_drawn_as_the_factors_it_means_for_each_nominal() {
        Picture picture = Picture.of(FactorFigure.of(patchesAndMatrix(), "Sample A7").svg());
        // Nominal 0.399, odds ratio 1.25: odds 0.6639 * 1.25 = 0.8299, fraction 0.45352, factor 1.1366; and 0.8695
        // downwards.
        Element copper = picture.drawn("rect", "f-band").get(1);
        double from = Picture.number(copper, "x");
        assertThat(from).isCloseTo(picture.onLogAxis(0.8695, "0.5", "1"), within(0.1));
        assertThat(from + Picture.number(copper, "width")).isCloseTo(picture.onLogAxis(1.1366, "1", "2"), within(0.1));
    }

    @Test
    void verdicts_differ_by_shape_and_word_not_by_colour_alone() {
        Picture picture = picture(new GroupBuilder("rim", 9, "P1", "P2", "P3")
            .element("Ag", 0.601, consistent(0.6, 0.01).factor(1, 0.95, 1.05).pEquivalence(0.01))
            .element("Cu", 0.399, inconclusive(0.4, 0.01).factor(1.05, 0.9, 1.2)).build(), Invented.copperRichPatches()
            .build());
        assertThat(picture.drawn("polygon", "f-more").get(0).getAttribute("points").split(" ")).hasSize(3);
        assertThat(points(picture, "f-more", 1)).isLessThan(points(picture, "f-more", 3));
        assertThat(points(picture, "f-less", 1)).isGreaterThan(points(picture, "f-less", 3));
        assertThat(picture.drawn("polygon", "f-text").get(0).getAttribute("points").split(" ")).hasSize(4);
        assertThat(picture.drawn("circle", "f-paper")).isNotEmpty();
        assertThat(picture.allText()).contains("consistent", "inconclusive", "enriched", "depleted");
    }

    private static double points(Picture picture, String styleClass, int at) {
        return Picture.points(picture.drawn("polygon", styleClass).get(0))[at];
    }

    @Test
    void ends_without_bound_and_far_ends_are_arrows() {
        Picture picture = picture(new GroupBuilder("rim", 9, "P1", "P2", "P3")
            .element("Ag", 0.601, inconclusive(0.6, 0.01).factor(1.2, 0, INFINITY))
            .element("Cu", 0.399, inconclusive(0.4, 0.01).factor(1.1, 0.9, 1.3)).build());
        assertThat(picture.drawn("polygon", "f-text")).filteredOn(polygon -> polygon.getAttribute("points").split(" ")
            .length == 3)
            .hasSize(3);
        assertThat(picture.allText()).contains("goes on beyond the axis, or has no bound", "no upper bound");
    }

    @Test
    void an_element_below_its_limit_everywhere_has_a_bound_and_no_sign() {
        Picture picture = picture(new GroupBuilder("rim", 9, "P1", "P2", "P3")
            .element("Ag", 0.601, enriched(0.99, 0.001).factor(1.65, 1.6, 1.66).p(0.01))
            .element(finding("Cu", 0.399, depleted(0, 0.001).factor(0, 0, 0.01).p(0.01)).belowLimit(9, 0.003, true))
            .build());
        assertThat(picture.isProper().allText()).contains("below limit, 0.3 at% (assumed)");
        assertThat(picture.drawn("polygon", "f-less")).as("sign beside the word, in the legend, and one arrow")
            .hasSize(3);
    }

    @Test
    void an_element_without_a_factor_has_a_row_and_no_bar() {
        Picture picture = picture(new GroupBuilder("rim", 9, "P1", "P2", "P3")
            .element("Ag", 0.601, inconclusive(0.6, 0.01).factor(Double.NaN, Double.NaN, Double.NaN))
            .element("Cu", 0, inconclusive(0.4, 0.01)).build());
        assertThat(picture.isProper().allText()).contains("no factor");
        assertThat(picture.drawn("rect", "f-band")).as("in the legend").hasSize(1);
    }

    @Test
    void two_particles_show_what_they_say_of_themselves_and_of_their_kind() {
        Picture picture = picture(new GroupBuilder("rim", 4, "P1", "P2")
            .element(finding("Ag", 0.601, inconclusive(0.3, 0.01).factor(0.5, 0.2, 0.9)).these(depleted(0.3, 0.01)
                .factor(0.5, 0.45, 0.55).p(0.01)))
            .element(finding("Cu", 0.399, inconclusive(0.7, 0.01).factor(1.75, 1.1, 2.2)).these(enriched(0.7, 0.01)
                .factor(1.75, 1.6, 1.9).p(0.01))).build());
        assertThat(picture.allText())
            .contains("n = 4 spots on 2 particles (weak)", "for the two measured particles themselves");
        assertThat(picture.drawn("line", "s-text").stream().filter(line -> line.hasAttribute("stroke-dasharray")
            && !line.getAttribute("stroke-dasharray").isEmpty())).isNotEmpty();
    }

    @Test
    void against_a_range_the_factor_is_that_over_the_nearest_limit_and_one_inside() {
        Picture picture = picture(new GroupBuilder("rim", 9, "P1", "P2", "P3")
            .element("Mn", 0.01, 0.02, consistent(0.015, 0.001).interval(0.013, 0.03).pEquivalence(0.01)).build());
        assertThat(picture.allText()).contains("inside its range", "1 to 2");
        Element square = picture.drawn("polygon", "f-text").get(0);
        assertThat(Picture.middle(square)).isCloseTo(picture.onLogAxis(1, "0.7", "1.5"), within(0.1));
        Element interval = picture.drawn("line", "s-text").stream()
            .filter(line -> line.getAttribute("y1").equals(line.getAttribute("y2"))
            && Picture.number(line, "stroke-width") == 1.6)
            .findFirst().orElseThrow();
        assertThat(Picture.number(interval, "x2")).isCloseTo(picture.onLogAxis(1.5, "0.7", "1.5"), within(0.1));
    }

    @Test
    void names_from_outside_are_shown_and_never_act() {
        Picture picture = picture(new GroupBuilder("</text><script>alert(1)</script> & \"x\" \u202e\u0007", 9, "P1",
            "P2", "P3")
            .element("Ag", 0.601, depleted(0.2, 0.01).factor(0.3, 0.2, 0.4).p(0.01))
            .element("Cu", 0.399, enriched(0.8, 0.01).factor(2, 1.9, 2.1).p(0.01)).build());
        picture.isProper();
        assertThat(picture.text("</text><script>alert(1)</script> & \"x\"").x()).isPositive();
    }

    @Test
    void twelve_groups_with_long_names_keep_apart_and_a_cut_name_shows_whole_on_pointing() {
        String longName = "grey needles ".repeat(20).strip();
        GroupFinding[] groups = IntStream.range(0, 12)
            .mapToObj(i -> new GroupBuilder(longName + " " + i, 12345, "P1", "P2", "P3")
            .element("Ag", 0.601, inconclusive(0.2, 0.01).factor(0.333, 0.225, 0.444)
            .lean(surfeit.segregation.answer.Verdict.DEPLETED))
            .element("Cu", 0.399, enriched(0.8, 0.01).factor(2, 1.9, 2.1).p(0.01)).build())
            .toArray(GroupFinding[]::new);
        Picture picture = picture(groups).isProper();
        List<Picture.Text> texts = picture.texts();
        for (int i = 0; i < texts.size(); i++) {
            for (int j = i + 1; j < texts.size(); j++) {
                Picture.Text one = texts.get(i);
                Picture.Text other = texts.get(j);
                if (Math.abs(one.y() - other.y()) < 9) {
                    assertThat(one.span()[1] <= other.span()[0] || other.span()[1] <= one.span()[0])
                        .as(one + " and " + other + " keep apart").isTrue();
                }
            }
        }
        assertThat(texts).anySatisfy(text -> assertThat(text.shown()).startsWith("grey needles").endsWith("\u2026"));
        assertThat(picture.allText()).contains(longName + " 11");
    }

    @Test
    void where_there_are_too_many_groups_those_with_a_finding_stay_and_the_figure_says_so() {
        GroupFinding[] groups = IntStream.range(0, 60).mapToObj(i -> i == 59 ? Invented.copperRichPatches().build()
            : new GroupBuilder("P" + i, 3, "P" + i)
                .element("Ag", 0.601, inconclusive(0.6, 0.01).factor(1, 0.9, 1.1))
                .element("Cu", 0.399, inconclusive(0.4, 0.01).factor(1, 0.9, 1.1)).build())
                .toArray(GroupFinding[]::new);
        Picture picture = picture(groups).isProper();
        assertThat(picture.allText()).contains("dark patch", "Drawn are 36 of 60 groups").doesNotContain("P50");
    }

    @Test
    void the_same_answer_gives_the_same_picture() {
        assertThat(FactorFigure.of(patchesAndMatrix(), "Sample A7"))
            .isEqualTo(FactorFigure.of(patchesAndMatrix(), "Sample A7"));
    }

    @Test
    void the_words_above_the_axis_keep_clear_of_the_columns_beside_it() {
        for (double[] factor : new double[][] {{0.0005, 0.0004, 0.0006}, {2000, 1900, 2100}}) {
            List<Picture.Text> texts = picture(new GroupBuilder("rim", 9, "P1", "P2", "P3")
                .element("Cu", 0.01, inconclusive(0.4, 0.01).factor(factor[0], factor[1], factor[2])).build()).texts();
            List<Picture.Text> above = texts.stream().filter(text -> text.shown().matches(
                "nominal at%|\u2190 less|more \u2192|factor \\(95 % interval\\)"))
                .sorted(Comparator.comparingDouble(text -> text.span()[0])).toList();
            assertThat(above).hasSize(4);
            for (int i = 1; i < above.size(); i++) {
                assertThat(above.get(i).span()[0] - above.get(i - 1).span()[1]).isGreaterThan(6);
            }
        }
    }

    @Test
    void many_groups_become_figures_of_one_printed_page_each_on_one_axis() {
        // the printed page of the report is 176 mm wide and leaves 215 mm of height to a figure
        double mostHeight = 215.0 / 176 * Sheet.WIDTH;
        GroupFinding[] groups = IntStream.range(0, 40).mapToObj(i -> new GroupBuilder("spot " + (char) ('A' + i), 6, "P1",
            "P2", "P3").element("Ag", 0.601, inconclusive(0.6, 0.01).factor(1, 0.9, 1.1))
            .element("Cu", 0.399, inconclusive(0.4, 0.01).factor(1 + i / 10.0, 0.9, 1.2 + i / 5.0)).build())
            .toArray(GroupFinding[]::new);
        List<Figure> pages = FactorFigure.pages(Invented.answer(Invented.AG_CU, groups), "Sample A7");
        assertThat(pages).hasSize(4).allSatisfy(page -> {
            assertThat(page.height() - page.headHeight()).isLessThanOrEqualTo((int) mostHeight);
            Picture picture = Picture.of(page.svg()).isProper();
            assertThat(picture.allText()).contains("Drawn are 36 of 40 groups");
            assertThat(picture.onLogAxis(3, "1", "5")).isEqualTo(Picture.of(pages.get(0).svg()).onLogAxis(3, "1", "5"));
        });
        assertThat(pages.get(1).title()).isEqualTo("Sample A7: enrichment factors by feature (2 of 4)");
        List<String> named = pages.stream().flatMap(page -> Picture.of(page.svg()).allText().lines())
            .filter(line -> line.startsWith("spot ")).toList();
        assertThat(named).hasSize(36).doesNotHaveDuplicates();
        assertThat(FactorFigure.pages(patchesAndMatrix(), "Sample A7"))
            .containsExactly(FactorFigure.of(patchesAndMatrix(), "Sample A7"));
    }
}
