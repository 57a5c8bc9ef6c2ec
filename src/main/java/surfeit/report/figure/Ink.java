package surfeit.report.figure;

import java.util.Locale;

/**
 * The inks of a figure, each for a light and for a dark page.
 *
 * <p>Texts stand out from both papers by a contrast of 4.5 and more (WCAG 2.2, criterion 1.4.3), marks by 3 and more
 * (criterion 1.4.11). Orange red for more and blue for less stay apart for colour-blind readers; every mark has a shape
 * of its own besides.
 */
enum Ink {
    TEXT("#1b1d20", "#e8e8e3"),
    MUTED("#565b62", "#a9aeb4"),
    RULE("#d3d5d0", "#3d4247"),
    BAND("#e3e6dd", "#2c3236"),
    PAPER("#ffffff", "#17191b"),
    MORE("#a63c06", "#f2a56f"),
    LESS("#17578f", "#86bdf0");

    private final String onLight;
    private final String onDark;

    Ink(String onLight, String onDark) {
        this.onLight = onLight;
        this.onDark = onDark;
    }

    String onLight() {
        return onLight;
    }

    String onDark() {
        return onDark;
    }

    /** For an area or a text; the colour itself serves readers of SVG that know no style sheets. */
    String fill() {
        return " fill=\"" + onLight + "\" class=\"f-" + word() + '"';
    }

    /** For a line. */
    String stroke() {
        return " stroke=\"" + onLight + "\" class=\"s-" + word() + '"';
    }

    /** For an area with an outline of another ink. */
    String fillWithOutline(Ink outline) {
        return " fill=\"" + onLight + "\" stroke=\"" + outline.onLight + "\" class=\"f-" + word() + " s-"
            + outline.word() + '"';
    }

    /** Rules that turn every ink to its dark form; for a style sheet. */
    static String darkRules() {
        StringBuilder rules = new StringBuilder();
        for (Ink ink : values()) {
            rules.append(".figure .f-").append(ink.word()).append("{fill:").append(ink.onDark).append('}')
                .append(".figure .s-").append(ink.word()).append("{stroke:").append(ink.onDark).append('}');
        }
        return rules.toString();
    }

    private String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
