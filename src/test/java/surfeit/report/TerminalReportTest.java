package surfeit.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static surfeit.report.FindingBuilder.finding;
import static surfeit.report.OutcomeBuilder.consistent;
import static surfeit.report.OutcomeBuilder.depleted;
import static surfeit.report.OutcomeBuilder.enriched;
import static surfeit.report.OutcomeBuilder.inconclusive;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import surfeit.rival.Rival.CouldExplain;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.Reason;

class TerminalReportTest {

    @Test
    void the_whole_answer_of_a_binary_fits_on_one_screen() throws IOException {
        Interpretation answer = Invented.answer(Invented.AG_CU, List.of(Invented.copperContrast()),
            Invented.copperRichPatches()
            .rival(Invented.rival("patch smaller than the interaction volume", CouldExplain.YES, 1.3)).build(),
            Invented.matrix().rival(Invented.rival("coating", CouldExplain.NO, Double.NaN))
                .caveat(Caveat.warning("limit-above-nominal", "A limit lies above nominal.")).build());
        assertThat(text(answer, Signs.ASCII)).isEqualTo("""
        Sample A7: 24 spots on 4 particles in 1 session
        Nominal in at%: Ag 60.1, Cu 39.9

        feature     element  nominal at%  found at% +- u  factor (low to high)    verdict                       how sure
        ----------  -------  -----------  --------------  ----------------------  ----------------------------  --------
        dark patch  Ag       60.1         21.9 +- 1.2     0.364 (0.284 to 0.457)  depleted                      1 in 830
                    Cu       39.9         78.1 +- 1.2     1.96 (1.71 to 2.15)     enriched, beyond the margin   1 in 830
        matrix      Ag       60.1         68.1 +- 4.3     1.13 (0.99 to 1.26)     inconclusive, leans enriched
                    Cu       39.9         31.9 +- 4.3     0.80 (0.61 to 1.01)     inconclusive, leans depleted

        - dark patch, on particles of this kind (4 measured): Cu enriched, x1.96 (1.71 to 2.15), Ag
          depleted with it, seen individually on 4 of 4 particles. If nothing differed, a result this
          strong would appear in at most 1 in 830 samples. Could alone be explained by: patch smaller than
          the interaction volume.
        - matrix, on particles of this kind (4 measured): Cu inconclusive, leans depleted, x0.80 (0.61 to
          1.01). The spots agree among themselves; a shift of 8.0 at% is no larger than the calibration
          error can make. Shifts beyond a factor (odds) of 1.86 are excluded. The shift repeats from spot
          to spot; whether it is chemistry or calibration cannot be told from these data. Measure 5 spots
          on a reference piece, or compare features.

        Against each other
        - dark patch against matrix: Cu higher, odds x3.1 (2.2 to 4.4), Ag lower with it, on the same 4
          particles. If nothing differed, a result this strong would appear in at most 1 in 500 samples.

        What else could explain it
        - dark patch: patch smaller than the interaction volume: yes, up to x1.3. Measure at 5 keV.
        - matrix: 1 other cause weighed, none could make these numbers.

        To know
        - warning: matrix: A limit lies above nominal.
        - note: All spots share one calibration error.

        Cautions
        - Fine powder: do not open in the open lab.

        How sure
        - u is the combined standard uncertainty; factors carry a 95 % interval.
        - Confidence is one minus the p value that carries the verdict. Enriched or depleted: if nothing
          differed, a result this strong would appear in at most 1 in N samples, with N = 1 / (1 -
          confidence), counted over all elements and groups of the answer together. Consistent: if the
          shift reached the margin, a result this close to nominal would appear in at most 1 in N samples.
          It is not the chance that the verdict is right: the more of your samples are truly nominal, the
          more of the flags are false. Inconclusive verdicts carry none.
        """);
    }

    @Test
    void limits_missing_elements_and_weak_groups_have_their_rows() throws IOException {
        GroupBuilder group = new GroupBuilder("rim", 6, "P1", "P2")
            .element(finding("Al", 0.87, inconclusive(0.88, 0.02).because(Reason.SCATTER)).these(enriched(0.88, 0.001)))
            .element(finding("Si", 0.12, consistent(0.119, 0.0011).factor(0.99, 0.97, 1.01).pEquivalence(0.002)
                .smallShift()).fragileWithout("P2").belowLimit(2, 0.003, false).these(consistent(0.119, 0.001)))
            .element(finding("Mg", 0.01, depleted(0, 0.001).p(0.001)).belowLimit(6, 0.003, true))
            .notMeasured("Fe");
        Interpretation answer = Invented.answer(Invented.atomic("Al", 86.5, "Si", 12.0, "Mg", 1.0, "Fe", 0.5), group
            .build());
        assertThat(text(answer, Signs.UNICODE).lines().filter(line -> line.contains("Si ") || line.contains("Mg ")
            || line.contains("Al ")
            || line.contains("Fe ")).map(line -> line.replaceAll(" {2,}", " | ")).toList()).contains(
            "rim | Al | 87 | 88.0 \u00b1 2.0 | inconclusive (weak; on these two enriched)",
            " | Si | 12 | 11.90 \u00b1 0.11 (2 of 6 below limit) | 0.990 (0.970 to 1.010) | consistent, small shift "
            + "detected, fragile (weak; on these two consistent) | 1 in 500",
            " | Mg | 1 | < 0.3 (assumed) | depleted (weak) | 1 in 1000",
            " | Fe | not measured");
    }

    @Test
    void names_from_outside_cannot_move_the_cursor_or_forge_a_line() throws IOException {
        Interpretation answer = Invented.answer(Invented.AG_CU,
            new GroupBuilder("evil\u001b[2Jpatch\nmatrix\u202e", 12, "P1", "P2", "P3")
            .element("Ag", 0.601, depleted(0.2, 0.01).factor(0.3, 0.2, 0.4).p(0.01))
            .element("Cu", 0.399, enriched(0.8, 0.01).factor(2, 1.9, 2.1).p(0.01)).build());
        String text = text(answer, Signs.ASCII);
        assertThat(text.codePoints()
            .filter(c -> c != '\n' && (c < 32 || c == 127 || Character.getType(c) == Character.FORMAT))).isEmpty();
        assertThat(text).contains("evil [2Jpatch matrix").contains("- evil [2Jpatch matrix, on particles");
    }

    @Test
    void a_long_name_stands_above_its_numbers_and_pushes_none_off_the_screen() throws IOException {
        String name = "dark patches at the rim of the sphere, upper left";
        Interpretation answer = Invented.answer(Invented.AG_CU, new GroupBuilder(name, 12, "P1", "P2", "P3")
            .element("Ag", 0.601, depleted(0.2, 0.01).factor(0.3, 0.2, 0.4).p(0.01))
            .element("Cu", 0.399, enriched(0.8, 0.01).factor(2, 1.9, 2.1).p(0.01)).build());
        List<String> lines = text(answer, Signs.ASCII).lines().toList();
        int at = lines.indexOf(name);
        assertThat(at).isPositive();
        assertThat(lines.get(at + 1)).matches(" +Ag .*depleted.*").hasSizeLessThan(100);
        assertThat(lines.get(at + 2)).matches(" +Cu .*enriched.*");
    }

    @Test
    void a_caveat_of_several_groups_is_said_once() throws IOException {
        Caveat normalised = Caveat.note("already-normalised", "Every spot adds up to 100 %.");
        Interpretation answer = Invented.answer(Invented.AG_CU, Invented.copperRichPatches().caveat(normalised).build(),
            Invented.matrix().caveat(normalised).build());
        assertThat(text(answer, Signs.ASCII)).containsOnlyOnce("Every spot adds up")
            .contains("- note: dark patch and matrix: Every spot adds up to 100 %.");
    }

    @Test
    void a_single_spot_shows_that_its_interval_is_calibration_only() throws IOException {
        Interpretation answer = Invented.answer(Invented.AG_CU, new GroupBuilder("dark patch", 1, "P1")
            .element("Ag", 0.601, inconclusive(0.25, 0.006).factor(0.4, 0.3, 0.5)
            .because(Reason.NO_REPEAT_AND_NO_SIGMA))
            .element("Cu", 0.399, inconclusive(0.75, 0.006).factor(1.9, 1.8, 2).beyondMargin()
                .because(Reason.NO_REPEAT_AND_NO_SIGMA)).build());
        assertThat(text(answer, Signs.ASCII)).contains("75.00 +- 0.60 (calibration only)").doesNotContain("beyond the");
    }

    @Test
    void a_row_of_another_length_is_refused() {
        assertThatThrownBy(() -> new TextTable(List.of("a", "b")).row(List.of("1")))
            .hasMessage("A row of this table has 2 cells, got 1.");
    }

    @Test
    void the_signs_follow_the_character_set_of_the_terminal() {
        assertThat(Signs.forCharset(StandardCharsets.US_ASCII)).isEqualTo(Signs.ASCII);
        assertThat(Signs.forCharset(StandardCharsets.ISO_8859_1)).isEqualTo(Signs.UNICODE);
        assertThat(Signs.forCharset(StandardCharsets.UTF_8)).isEqualTo(Signs.UNICODE);
    }

    private static String text(Interpretation answer, Signs signs) throws IOException {
        StringBuilder out = new StringBuilder();
        TerminalReport.write(answer, "Sample A7", signs, out);
        return out.toString();
    }

    @Test
    void units_are_shown_in_signs_that_the_terminal_can_show() throws IOException {
        Interpretation answer = Invented.answer(Invented.AG_CU, Invented.copperRichPatches()
            .caveat(Caveat.note("invented", "A film of 2.7 \u00b5g/cm\u00b2 on patches of 3.2 \u00b5m.")).build());
        assertThat(text(answer, Signs.UNICODE)).contains("2.7 \u00b5g/cm\u00b2 on patches of 3.2 \u00b5m.");
        assertThat(text(answer, Signs.ASCII)).contains("2.7 ug/cm2 on patches of 3.2 um.");
    }
}
