package surfeit.report.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import surfeit.report.Invented;
import surfeit.segregation.Contrast.Word;
import surfeit.segregation.Estimate;
import surfeit.segregation.Interpretation;

class ContrastFigureTest {

    @Test
    void the_contrasts_of_an_answer_show_odds_ratios_words_and_how_many_particles() {
        Interpretation answer = Invented.answer(Invented.AG_CU, List.of(Invented.copperContrast()),
            Invented.copperRichPatches().build(), Invented.matrix().build());
        Picture picture = Picture.of(ContrastFigure.of("Sample A7: groups against each other", "24 spots.",
            ContrastPair.of(answer), 1.25).svg()).isProper();
        assertThat(picture.allText()).contains("dark patch against matrix", "n = 4 particles, paired",
            "3.1 (2.2 to 4.4)",
            "0.32 (0.23 to 0.45)", "higher", "lower", "odds ratio, first / second (no unit, log)",
            "at%, first | second",
            "margin: odds within a factor of 1.25");
        assertThat(Picture.middle(picture.drawn("polygon", "f-more").get(0)))
            .isCloseTo(picture.onLogAxis(3.12, "1", "2"), within(0.1));
        assertThat(picture.drawn("rect", "f-band").get(0)).satisfies(band ->
            assertThat(Picture.number(band, "x")).isCloseTo(picture.onLogAxis(0.8, "1", "2"), within(0.1)));
    }

    @Test
    void two_samples_are_compared_feature_by_feature_and_one_that_is_gone_is_named() {
        List<ContrastPair> pairs = List.of(
            new ContrastPair("dark patch", "n = 4 and 5 particles", List.of(Invented.contrasted("Cu", Word.EQUIVALENT,
                new Estimate(1.02, 0.9, 1.15), new Estimate(0.005, -0.02, 0.03), 0.8))),
            new ContrastPair("rim <b>", "gone: 6 spots before, none after", List.of()));
        Picture picture = Picture.of(ContrastFigure.of("As made (A7) against treated (A8)", "", pairs, 1.25).svg())
            .isProper();
        assertThat(picture.allText()).contains("equivalent", "rim <b>", "gone: 6 spots before, none after",
            "n = 4 and 5 particles");
    }

    @Test
    void unpaired_groups_tell_the_particles_of_each() {
        Interpretation paired = Invented.answer(Invented.AG_CU, List.of(Invented.copperContrast()),
            Invented.copperRichPatches().build(), Invented.matrix().build());
        surfeit.segregation.Contrast contrast = paired.contrasts().get(0);
        Interpretation separate =
            Invented.answer(Invented.AG_CU, List.of(new surfeit.segregation.Contrast("dark patch", "matrix",
            false, List.of(), List.of(), surfeit.segregation.Scope.THESE_PARTICLES, 0, contrast.note(),
            contrast.elements())),
            Invented.copperRichPatches().build(), Invented.matrix().build());
        assertThat(ContrastPair.of(separate).get(0).counts())
            .isEqualTo("n = 4 and 4 particles, not paired: speaks of these only");
    }
}
