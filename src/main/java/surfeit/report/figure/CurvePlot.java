package surfeit.report.figure;

import java.util.List;
import surfeit.report.figure.Drawing.Stroke;

/**
 * Curves over one pair of axes, told apart by dashes, and a key beside them with a line of figures for each.
 *
 * @param x     the axis to the right
 * @param xName what it is, with unit
 * @param y     the axis upwards; its coordinates are below the top of the plot
 * @param yName what it is, with unit
 */
record CurvePlot(Scale x, String xName, Scale y, String yName) {
    static final double LEFT = Sheet.LEFT + 56;
    static final double RIGHT = 500;
    private static final double KEY = 526;
    private static final double KEY_SAMPLE = 34;
    private static final double KEY_LINE = 17;

    /**
     * A curve.
     *
     * @param series its dashes and its sign
     * @param width  its weight
     * @param points values x, y, x, y ... in rising x
     * @param signs  values x, y ... of the places on it that carry its sign
     * @param name   its name
     * @param detail what is read off it, in words
     */
    record Curve(Series series, double width, double[] points, double[] signs, String name, String detail) {
    }

    /** How the level across the plot is drawn; its meaning belongs into a legend. */
    static Stroke levelLine() {
        return Stroke.of(Ink.TEXT, 1).dashed("1.5 3");
    }

    /**
     * Draws the plot with its upper edge at a height and the key below a heading, and tells where all ends.
     *
     * @param level a value across the plot
     * @param names whether the axis to the right is written
     */
    double draw(List<Curve> curves, double level, String keyHeading, double top, boolean names, Drawing drawing) {
        double bottom = top + y.at(y.low());
        for (Tick tick : x.ticks()) {
            double at = x.at(tick.value());
            drawing.vertical(at, top, bottom, Stroke.of(Ink.RULE, 0.7));
            drawing.vertical(at, bottom, bottom + 4, Stroke.of(Ink.TEXT, 1));
            if (names) {
                drawing.text(at, bottom + 17, tick.label(), Type.SMALL.in(Ink.TEXT).middle());
            }
        }
        for (Tick tick : y.ticks()) {
            double at = top + y.at(tick.value());
            drawing.horizontal(x.at(x.low()), x.at(x.high()), at, Stroke.of(Ink.RULE, 0.7));
            drawing.text(LEFT - 8, at + 4, tick.label(), Type.SMALL.in(Ink.TEXT).end());
        }
        drawing.horizontal(x.at(x.low()), x.at(x.high()), top + y.at(level), levelLine());
        drawing.horizontal(x.at(x.low()), x.at(x.high()), bottom, Stroke.of(Ink.TEXT, 1));
        drawing.turned(Sheet.LEFT + 12, (top + bottom) / 2, yName, Type.BODY.middle(), -90);
        curves.forEach(curve -> curve(curve, top, drawing));
        double end = bottom + 6;
        if (names) {
            drawing.text((LEFT + RIGHT) / 2, bottom + 34, xName, Type.BODY.middle());
            end = bottom + 42;
        }
        return Math.max(end, key(curves, keyHeading, top, drawing));
    }

    private void curve(Curve curve, double top, Drawing drawing) {
        double[] places = placed(curve.points(), top);
        Stroke stroke = curve.series().stroke();
        drawing.polyline(places, new Stroke(stroke.ink(), curve.width(), stroke.dashes()));
        double[] signs = placed(curve.signs(), top);
        for (int i = 0; i < signs.length; i += 2) {
            curve.series().draw(signs[i], signs[i + 1], drawing);
        }
    }

    private double[] placed(double[] values, double top) {
        double[] places = new double[values.length];
        for (int i = 0; i < values.length; i += 2) {
            places[i] = x.within(values[i]);
            places[i + 1] = top + y.within(values[i + 1]);
        }
        return places;
    }

    private double key(List<Curve> curves, String heading, double top, Drawing drawing) {
        double at = top + 4;
        drawing.fitted(KEY, at, heading, Type.BODY.strong(), Sheet.RIGHT - KEY);
        at += KEY_LINE + 3;
        for (Curve curve : curves) {
            Stroke stroke = curve.series().stroke();
            drawing.horizontal(KEY, KEY + KEY_SAMPLE - 8, at - 4,
                new Stroke(stroke.ink(), curve.width(), stroke.dashes()));
            if (curve.signs().length > 0) {
                curve.series().draw(KEY + (KEY_SAMPLE - 8) / 2, at - 4, drawing);
            }
            drawing.fitted(KEY + KEY_SAMPLE, at, curve.name(), Type.BODY, Sheet.RIGHT - KEY - KEY_SAMPLE);
            at += KEY_LINE - 1;
            drawing.fitted(KEY + KEY_SAMPLE, at, curve.detail(), Type.SMALL, Sheet.RIGHT - KEY - KEY_SAMPLE);
            at += KEY_LINE + 4;
        }
        return at;
    }
}
