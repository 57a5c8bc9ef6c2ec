package surfeit.report.figure;

import java.util.ArrayList;
import java.util.List;
import surfeit.report.Digits;

/** An axis of equal ratios, from {@code low} at the coordinate {@code from} to {@code high} at {@code to}. */
record LogScale(double low, double high, double from, double to) implements Scale {
    private static final double ROUNDING = 1e-9;
    /** Coarsest first; the finest whose marks leave room for their labels is taken. */
    private static final double[][] MARKS = {
        {1}, {1, 3}, {1, 2, 5}, {1, 1.5, 2, 3, 5, 7},
        {1, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2, 2.5, 3, 4, 5, 6, 7, 8, 9}};
    /** Least distance of two labels. */
    private static final double ROOM = 34;

    LogScale {
        if (!(low > 0 && low < high && high < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("A logarithmic axis runs from a low to a high value above 0, got " + low
                + " to " + high + ".");
        }
    }

    @Override
    public double at(double value) {
        return from + Math.log(value / low) / Math.log(high / low) * (to - from);
    }

    @Override
    public List<Tick> ticks() {
        for (int i = MARKS.length - 1; i > 0; i--) {
            List<Tick> ticks = ticks(MARKS[i]);
            if (ticks.size() >= 2 && leavesRoom(ticks)) {
                return ticks;
            }
        }
        return ticks(MARKS[0]);
    }

    private List<Tick> ticks(double[] marks) {
        List<Tick> ticks = new ArrayList<>();
        for (int power = (int) Math.floor(Math.log10(low)); power <= Math.ceil(Math.log10(high)); power++) {
            for (double mark : marks) {
                double value = power < 0 ? mark / Math.pow(10, -power) : mark * Math.pow(10, power);
                if (value >= low * (1 - ROUNDING) && value <= high * (1 + ROUNDING)) {
                    ticks.add(new Tick(value, Digits.setting(value)));
                }
            }
        }
        return ticks;
    }

    private boolean leavesRoom(List<Tick> ticks) {
        for (int i = 1; i < ticks.size(); i++) {
            if (Math.abs(at(ticks.get(i).value()) - at(ticks.get(i - 1).value())) < ROOM) {
                return false;
            }
        }
        return true;
    }
}
