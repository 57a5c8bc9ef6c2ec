package surfeit.report.figure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Contrast after WCAG 2.2, "relative luminance" and "contrast ratio" (formulas from memory; black on white is 21).
 */
class InkTest {

    @Test
    void black_on_white_has_the_contrast_the_guideline_states() {
        assertThat(contrast("#000000", "#ffffff")).isEqualTo(21);
    }

    @ParameterizedTest
    @EnumSource(value = Ink.class, names = {"TEXT", "MUTED", "MORE", "LESS"})
    void every_ink_of_texts_and_signs_stands_out_from_paper_and_margin(Ink ink) {
        for (Ink ground : new Ink[] {Ink.PAPER, Ink.BAND}) {
            assertThat(contrast(ink.onLight(), ground.onLight())).as(ink + " on light " + ground)
                .isGreaterThanOrEqualTo(4.5);
            assertThat(contrast(ink.onDark(), ground.onDark())).as(ink + " on dark " + ground)
                .isGreaterThanOrEqualTo(4.5);
        }
    }

    @Test
    void the_margin_can_be_told_from_paper_in_print() {
        assertThat(luminance(Ink.PAPER.onLight()) - luminance(Ink.BAND.onLight())).isGreaterThan(0.15);
    }

    @Test
    void colours_are_written_for_readers_without_style_sheets_too() {
        assertThat(Ink.MORE.fill()).isEqualTo(" fill=\"" + Ink.MORE.onLight() + "\" class=\"f-more\"");
        assertThat(Ink.darkRules()).contains(".figure .f-more{fill:" + Ink.MORE.onDark() + "}");
    }

    private static double contrast(String one, String other) {
        double brighter = Math.max(luminance(one), luminance(other));
        double darker = Math.min(luminance(one), luminance(other));
        return (brighter + 0.05) / (darker + 0.05);
    }

    private static double luminance(String colour) {
        Function<Integer, Double> part = at -> {
            double share = Integer.parseInt(colour.substring(at, at + 2).toLowerCase(Locale.ROOT), 16) / 255.0;
            return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
        };
        return 0.2126 * part.apply(1) + 0.7152 * part.apply(3) + 0.0722 * part.apply(5);
    }
}
