package surfeit.report.figure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import surfeit.report.figure.Drawing.Stroke;

/**
 * Named places along an axis, written above the picture with a line down to it; where two names would touch, the
 * second goes one line higher. For one axis.
 */
final class Flags {
    private static final double LINE = 14;
    private static final double GAP = 7;
    private static final int MOST_LINES = 4;

    private final List<Flag> flags = new ArrayList<>();
    private final double left;
    private final double right;

    /** A name at x, with a line below it or none. */
    private record Flag(double x, String name, Type type, Optional<Stroke> pole) {
        double width() {
            return TextWidth.of(name, type);
        }
    }

    /** Flags of an axis from left to right; names may stand out a little beyond. */
    Flags(double left, double right) {
        this.left = left - 12;
        this.right = right + 12;
    }

    /** Adds a name at a value; beyond the end of the axis an arrow stands in place of the line. */
    void add(Scale scale, double value, String name, Type type, Optional<Stroke> pole) {
        if (scale.holds(value)) {
            flags.add(new Flag(scale.at(value), name, type, pole));
        } else {
            boolean before = value < scale.low();
            flags.add(new Flag(before ? left : right, before ? "\u2190 " + name : name + " \u2192", type,
                Optional.empty()));
        }
    }

    /** Draws the flags downwards from a height and tells where the picture may begin. */
    double draw(double top, Drawing drawing) {
        List<Flag> order = flags.stream().sorted(Comparator.comparingDouble(Flag::x)).toList();
        double[] ends = new double[MOST_LINES];
        Arrays.fill(ends, Double.NEGATIVE_INFINITY);
        int[] lines = new int[order.size()];
        int highest = 0;
        for (int i = 0; i < lines.length; i++) {
            double start = start(order.get(i));
            lines[i] = 0;
            while (lines[i] < MOST_LINES - 1 && start < ends[lines[i]] + GAP) {
                lines[i]++;
            }
            ends[lines[i]] = Math.max(ends[lines[i]], start + order.get(i).width());
            highest = Math.max(highest, lines[i]);
        }
        double bottom = top + (highest + 1) * LINE;
        for (int i = 0; i < lines.length; i++) {
            Flag flag = order.get(i);
            double from = bottom - lines[i] * LINE;
            flag.pole.ifPresent(pole -> drawing.vertical(flag.x, from, bottom + 4, pole));
        }
        for (int i = 0; i < lines.length; i++) {
            Flag flag = order.get(i);
            double baseline = bottom - lines[i] * LINE - 4;
            drawing.rectangle(start(flag) - 2, baseline - 10, flag.width() + 4, 12.5, Ink.PAPER);
            drawing.text(start(flag), baseline, flag.name, flag.type);
        }
        return bottom + 4;
    }

    private double start(Flag flag) {
        return Math.max(left, Math.min(flag.x - flag.width() / 2, right - flag.width()));
    }
}
