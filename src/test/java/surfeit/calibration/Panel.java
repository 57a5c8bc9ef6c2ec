package surfeit.calibration;

import java.util.Locale;

/** One column of the chart: a horizontal axis from one percentage to another, and what is drawn along it. */
record Panel(Svg svg, String title, double left, double width, double from, double to, double tick) {

    double x(double value) {
        return left + width * (Math.max(from, Math.min(to, value)) - from) / (to - from);
    }

    /** Axis lines and numbers at both ends of the rows. */
    void axis(double top, double bottom) {
        svg.words(left + width / 2, top - 22, title, 12, "middle", true);
        for (double value = from; value <= to + 1e-9; value += tick) {
            svg.line(x(value), top, x(value), bottom, Svg.PALE, 1);
            String number = String.format(Locale.ROOT, value == Math.rint(value) ? "%.0f" : "%.1f", value);
            svg.words(x(value), top - 6, number, 10, "middle", false);
            svg.words(x(value), bottom + 14, number, 10, "middle", false);
        }
    }

    void target(double value, double top, double bottom) {
        svg.line(x(value), top, x(value), bottom, Svg.MID, 1.5);
    }

    void range(double low, double high, double y) {
        svg.line(x(low), y, x(high), y, Svg.MID, 2);
    }

    /** A value with its Monte Carlo error; at the edge where it lies beyond. */
    void value(Share share, double y, Mark mark) {
        if (!share.isKnown()) {
            return;
        }
        double percent = share.percent();
        svg.line(x(percent - share.error()), y, x(percent + share.error()), y, Svg.INK, 1);
        if (percent < from || percent > to) {
            svg.beyond(x(percent), y, percent > to);
        } else {
            mark.draw(svg, x(percent), y);
        }
    }

    /** What stands at a value. */
    interface Mark {
        void draw(Svg svg, double x, double y);
    }
}
