package surfeit.report.figure;

import java.util.List;
import surfeit.element.Element;
import surfeit.report.Digits;
import surfeit.report.figure.Drawing.Stroke;

/**
 * The triangle itself with grid, values and the names of its sides; first element at the lower left, second at the
 * lower right, third at the top.
 */
final class TrianglePicture {
    private static final double SIDE = 440;
    private static final double HEIGHT = SIDE * Math.sqrt(3) / 2;
    private static final double TILT = 60;

    private final TriangleFrame frame;
    private final double left;
    private final double top;

    TrianglePicture(TriangleFrame frame, double left, double top) {
        this.frame = frame;
        this.left = left;
        this.top = top;
    }

    double bottom() {
        return top + HEIGHT;
    }

    double right() {
        return left + SIDE;
    }

    double x(double[] composition) {
        return left + SIDE * (frame.weight(composition, 1) + frame.weight(composition, 2) / 2);
    }

    double y(double[] composition) {
        return top + HEIGHT * (1 - frame.weight(composition, 2));
    }

    void draw(List<Element> elements, Drawing drawing) {
        for (int element = 0; element < elements.size(); element++) {
            grid(element, drawing);
        }
        outline(left, top, SIDE, Ink.TEXT, drawing);
        double middle = left + SIDE / 2;
        drawing.text(middle, bottom() + 38, "\u2190 " + elements.get(0) + ", at%", Type.BODY.middle());
        double away = 44;
        double half = top + HEIGHT / 2;
        drawing.turned(left + SIDE * 0.75 + away * 0.87, half - away / 2, elements.get(1) + ", at% \u2192",
            Type.BODY.middle(), TILT);
        drawing.turned(left + SIDE * 0.25 - away * 0.87, half - away / 2, elements.get(2) + ", at% \u2192",
            Type.BODY.middle(), -TILT);
        if (frame.isWhole()) {
            drawing.text(left - 16, bottom() + 6, elements.get(0).symbol(), Type.BODY.strong().end());
            drawing.text(right() + 16, bottom() + 6, elements.get(1).symbol(), Type.BODY.strong());
            drawing.text(middle, top - 10, elements.get(2).symbol(), Type.BODY.strong().middle());
        }
    }

    /** Keeps names off the sides and off the values below and to the left. */
    void occupy(FreeNames names) {
        int parts = 48;
        names.take(left - 9, bottom() + 14, 9);
        for (int i = 0; i <= parts; i++) {
            double along = SIDE * i / parts;
            double up = HEIGHT * i / parts;
            names.take(left + along, bottom(), 2);
            names.take(left + along, bottom() + 14, 6);
            names.take(left + along / 2, bottom() - up, 2);
            names.take(left + along / 2 - 16, bottom() - up - 6, 7);
            names.take(right() - along / 2, bottom() - up, 2);
        }
    }

    /** An empty triangle that stands on its side. */
    static void outline(double left, double top, double side, Ink ink, Drawing drawing) {
        double height = side * Math.sqrt(3) / 2;
        double bottom = top + height;
        double[] corners = {left, bottom, left + side, bottom, left + side / 2, top, left, bottom};
        drawing.polyline(corners, Stroke.of(ink, 1.1));
    }

    /** The lines along which one element keeps its share, each with its value where it leaves the triangle. */
    private void grid(int element, Drawing drawing) {
        List<Double> values = frame.grid(element);
        for (int i = 0; i < values.size(); i++) {
            double value = values.get(i);
            double[] labelled = end(element, value, (element + 1) % 3, (element + 2) % 3);
            double[] other = end(element, value, (element + 2) % 3, (element + 1) % 3);
            if (i > 0 && i < values.size() - 1) {
                drawing.line(x(labelled), y(labelled), x(other), y(other), Stroke.of(Ink.RULE, 0.8));
            }
            if (!frame.isWhole() || i > 0 && i < values.size() - 1) {
                label(element, x(labelled), y(labelled), Digits.setting(value * 100), drawing);
            }
        }
    }

    /** The composition on the edge where {@code least} is at its least and {@code rest} takes what remains. */
    private double[] end(int element, double value, int rest, int least) {
        double[] composition = new double[3];
        composition[element] = value;
        composition[least] = frame.least()[least];
        composition[rest] = 1 - value - frame.least()[least];
        return composition;
    }

    private static void label(int element, double x, double y, String value, Drawing drawing) {
        Type type = Type.SMALL.in(Ink.TEXT);
        Stroke stroke = Stroke.of(Ink.TEXT, 1);
        switch (element) {
            case 0 -> {
                drawing.line(x, y, x - 2.5, y + 4.5, stroke);
                drawing.text(x - 4, y + 17, value, type.middle());
            }
            case 1 -> {
                drawing.line(x, y, x + 5, y, stroke);
                drawing.text(x + 9, y + 4, value, type);
            }
            default -> {
                drawing.line(x, y, x - 2.5, y - 4.5, stroke);
                drawing.text(x - 6, y - 5, value, type.end());
            }
        }
    }
}
