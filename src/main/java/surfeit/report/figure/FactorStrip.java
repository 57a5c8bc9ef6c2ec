package surfeit.report.figure;

import surfeit.report.Highlight;
import surfeit.segregation.answer.Estimate;

/**
 * The enrichment factor of one finding as a strip for a line of a list: sign, interval, nominal and margin on a log
 * axis that is the same for every line, a fifth to five fold. What lies beyond is drawn at the end, with an arrow.
 *
 * <p>A page that holds strips carries {@link Figure#STYLE}. The words beside a strip say the same.
 */
public final class FactorStrip {
    private static final int WIDTH = 190;
    private static final int HEIGHT = 20;
    private static final int HEAD_HEIGHT = 15;
    private static final double MIDDLE = HEIGHT / 2.0;
    private static final double LEAST = 0.2;
    private static final double MOST = 5;
    private static final LogScale SCALE = new LogScale(LEAST, MOST, 12, WIDTH - 12);
    private static final double[] MARKED = {0.2, 0.5, 1, 2, 5};
    private static final String[] MARKS = {"0.2", "0.5", "1", "2", "5"};

    private FactorStrip() {
    }

    /** The axis above the strips. */
    public static String head() {
        Drawing drawing = new Drawing();
        for (int i = 0; i < MARKED.length; i++) {
            drawing.text(SCALE.at(MARKED[i]), 11, MARKS[i], Type.SMALL.middle());
        }
        return svg(HEAD_HEIGHT, drawing);
    }

    /** The strip of a finding; one without a factor shows nominal alone. */
    public static String of(Highlight highlight) {
        Drawing drawing = new Drawing();
        double left = SCALE.at(within(highlight.margin().low()));
        drawing.rectangle(left, 2, SCALE.at(within(highlight.margin().high())) - left, HEIGHT - 4, Ink.BAND);
        drawing.vertical(SCALE.at(1), 0, HEIGHT, Drawing.Stroke.of(Ink.TEXT, 1));
        highlight.factor().ifPresent(factor -> interval(factor, Mark.of(highlight.verdict()), drawing));
        return svg(HEIGHT, drawing);
    }

    private static void interval(Estimate factor, Mark mark, Drawing drawing) {
        Ink ink = mark.ink();
        double low = SCALE.at(within(factor.low()));
        double high = SCALE.at(within(factor.high()));
        drawing.horizontal(low, high, MIDDLE, Drawing.Stroke.of(ink, 1.5));
        if (factor.low() < LEAST) {
            drawing.polygon(ink, ink, low - 7, MIDDLE, low, MIDDLE - 4, low, MIDDLE + 4);
        }
        if (factor.high() > MOST) {
            drawing.polygon(ink, ink, high + 7, MIDDLE, high, MIDDLE - 4, high, MIDDLE + 4);
        }
        if (factor.value() >= LEAST && factor.value() <= MOST) {
            mark.draw(SCALE.at(factor.value()), MIDDLE, Mark.SIZE, drawing);
        }
    }

    private static double within(double factor) {
        return Math.max(LEAST, Math.min(MOST, factor));
    }

    private static String svg(int height, Drawing drawing) {
        return "<svg class=\"figure strip\" viewBox=\"0 0 " + WIDTH + ' ' + height + "\" width=\"" + WIDTH
            + "\" height=\"" + height + "\" aria-hidden=\"true\" font-family=\"sans-serif\">" + drawing.elements()
            .strip()
            + "</svg>";
    }
}
