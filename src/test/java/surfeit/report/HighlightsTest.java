package surfeit.report;

import static org.assertj.core.api.Assertions.assertThat;
import static surfeit.report.OutcomeBuilder.consistent;
import static surfeit.report.OutcomeBuilder.depleted;
import static surfeit.report.OutcomeBuilder.enriched;
import static surfeit.report.OutcomeBuilder.inconclusive;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import surfeit.report.figure.FactorStrip;
import surfeit.rival.Rival.CouldExplain;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.Verdict;

/** Invented answers. */
class HighlightsTest {
    private static Highlights of(Interpretation answer) {
        return Highlights.of(answer, Signs.UNICODE);
    }

    private static GroupBuilder group(String name, double p, double factor) {
        return new GroupBuilder(name, 12, "P1", "P2", "P3")
            .element("Ag", 0.601, depleted(0.2, 0.01).factor(0.3, 0.2, 0.4).p(p))
            .element("Cu", 0.399, enriched(0.8, 0.01).factor(factor, factor * 0.9, factor * 1.1).p(p));
    }

    @Test
    void the_surest_flag_comes_first_and_of_equally_sure_ones_the_largest() {
        assertThat(of(Invented.answer(Invented.AG_CU, Invented.matrix().build(), group("rim", 0.01, 1.5).build(),
            group("patch", 0.001, 1.3).build(), group("needle", 0.01, 2).build())).lines())
            .extracting(Highlight::group).containsExactly("patch", "needle", "rim");
    }

    @Test
    void two_elements_are_one_line_that_of_the_minor_one() {
        Highlights highlights = of(Invented.answer(Invented.AG_CU, group("rim", 0.001, 1.96).build()));
        assertThat(highlights.lines()).singleElement().satisfies(line -> {
            assertThat(line.element()).isEqualTo("Cu");
            assertThat(line.words()).isEqualTo("enriched");
            assertThat(line.size()).startsWith("\u00d71.96 (");
            assertThat(line.howSure()).isEqualTo("1 in 1000");
        });
        assertThat(highlights.tests()).containsExactly(java.util.Map.entry(Verdict.ENRICHED, 1));
        assertThat(highlights.spotCount()).isEqualTo(24);
    }

    @Test
    void consistent_goes_before_inconclusive_and_neither_before_a_flag() {
        GroupBuilder open = new GroupBuilder("a", 12, "P1", "P2", "P3")
            .element("Ag", 0.601, inconclusive(0.61, 0.02)).element("Cu", 0.399, inconclusive(0.39, 0.02));
        GroupBuilder shown = new GroupBuilder("b", 12, "P1", "P2", "P3")
            .element("Ag", 0.601, consistent(0.6, 0.001)).element("Cu", 0.399, consistent(0.4, 0.001));
        assertThat(of(Invented.answer(Invented.AG_CU, open.build(), shown.build(), group("c", 0.04, 1.1).build()))
            .lines())
            .extracting(Highlight::group).containsExactly("c", "b", "a");
    }

    @Test
    void one_particle_says_so_and_another_cause_that_could_make_all_of_it_is_named() {
        GroupBuilder one = new GroupBuilder("patch", 3, "P1")
            .element("Ag", 0.601, depleted(0.2, 0.01).factor(0.3, 0.2, 0.4).p(0.01))
            .element("Cu", 0.399, enriched(0.8, 0.01).factor(2, 1.8, 2.2).p(0.01))
            .rival(Invented.rival("tilt of the local surface", CouldExplain.IN_PART, 1.2))
            .rival(Invented.rival("residue of a polishing medium", CouldExplain.YES, 2.5))
            .caveat(Caveat.warning("low-total", "The totals are low")).caveat(Caveat.note("x", "y"));
        Highlights highlights = of(Invented.answer(Invented.AG_CU, one.build()));
        assertThat(highlights.lines()).singleElement().satisfies(line -> {
            assertThat(line.words()).isEqualTo("enriched on one particle");
            assertThat(line.rival()).hasValue("residue of a polishing medium");
        });
        assertThat(highlights.warningCount()).isEqualTo(1);
    }

    @Test
    void the_margin_is_one_of_odds() {
        Highlight line = of(Invented.answer(Invented.AG_CU, group("rim", 0.001, 1.96).build())).lines().get(0);
        // odds 0.399/0.601 times and over 1.25, as a fraction over 0.399; worked by hand
        double odds = 0.399 / 0.601;
        assertThat(line.margin().high()).isCloseTo(odds * 1.25 / (1 + odds * 1.25) / 0.399, Offset.offset(1e-12));
        assertThat(line.margin().low()).isCloseTo(odds / 1.25 / (1 + odds / 1.25) / 0.399, Offset.offset(1e-12));
    }

    @Test
    void an_answer_without_spots_has_no_lines() {
        assertThat(of(Invented.answer(Invented.AG_CU)).lines()).isEmpty();
    }

    @Test
    void a_strip_shows_what_lies_beyond_its_ends_with_an_arrow() {
        String inside = FactorStrip.of(of(Invented.answer(Invented.AG_CU, group("rim", 0.001, 1.96).build())).lines()
            .get(0));
        String beyond = FactorStrip.of(of(Invented.answer(Invented.AG_CU, group("rim", 0.001, 9).build())).lines()
            .get(0));
        assertThat(inside).contains("aria-hidden=\"true\"").doesNotContain("NaN");
        assertThat(polygons(inside)).as("the sign of more").isEqualTo(1);
        assertThat(polygons(beyond)).as("the arrow alone").isEqualTo(1);
        assertThat(beyond).isNotEqualTo(inside);
        assertThat(FactorStrip.head()).contains(">0.2<", ">1<", ">5<");
    }

    private static long polygons(String svg) {
        return svg.split("<polygon", -1).length - 1;
    }
}
