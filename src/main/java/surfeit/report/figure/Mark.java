package surfeit.report.figure;

import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.Verdict;

/** The signs that stand for verdicts, the same in every figure; each has a shape of its own. */
enum Mark {
    /** Triangle that points up, filled: more. */
    MORE(Ink.MORE, Ink.PAPER),
    /** Triangle that points down, filled: less. */
    LESS(Ink.LESS, Ink.PAPER),
    /** Filled square: shown to lie inside the margin. */
    SAME(Ink.TEXT, Ink.PAPER),
    /** Open circle: not decided. */
    OPEN(Ink.PAPER, Ink.TEXT),
    /** Open triangle that points left: below its limit, somewhere from here to nothing. */
    BELOW(Ink.PAPER, Ink.MUTED);

    /** Half the width of a sign that is read at a glance. */
    static final double SIZE = 5.1;
    private static final double SMALL = 3;

    private final Ink fill;
    private final Ink outline;

    Mark(Ink fill, Ink outline) {
        this.fill = fill;
        this.outline = outline;
    }

    static Mark of(Verdict verdict) {
        return switch (verdict) {
            case ENRICHED -> MORE;
            case DEPLETED -> LESS;
            case CONSISTENT -> SAME;
            case INCONCLUSIVE -> OPEN;
        };
    }

    static Mark of(Contrast.Word word) {
        return switch (word) {
            case HIGHER -> MORE;
            case LOWER -> LESS;
            case EQUIVALENT -> SAME;
            case INCONCLUSIVE -> OPEN;
        };
    }

    /** The ink of what goes with the sign. */
    Ink ink() {
        return fill == Ink.PAPER ? outline : fill;
    }

    /** Draws the sign around a place; small ones go without the gap that keeps them apart. */
    void draw(double x, double y, double size, Drawing drawing) {
        double side = size * 1.1;
        double half = size * 0.85;
        Ink rim = size < SMALL && outline == Ink.PAPER ? fill : outline;
        switch (this) {
            case MORE -> drawing.polygon(fill, rim, x, y - size, x + side, y + size * 0.8, x - side, y + size * 0.8);
            case LESS -> drawing.polygon(fill, rim, x, y + size, x + side, y - size * 0.8, x - side, y - size * 0.8);
            case SAME -> drawing.polygon(fill, rim, x - half, y - half, x + half, y - half, x + half, y + half,
                x - half, y + half);
            case OPEN -> drawing.circle(x, y, size * 0.9, fill, rim);
            case BELOW -> drawing.polygon(fill, rim, x - size, y, x + size * 0.8, y - side, x + size * 0.8, y + side);
        }
    }
}
