package surfeit.report.figure;

import java.util.ArrayList;
import java.util.List;
import surfeit.report.Digits;

/** An axis of equal steps, from {@code low} at the coordinate {@code from} to {@code high} at {@code to}. */
record LinearScale(double low, double high, double from, double to, double step) implements Scale {
    private static final double ROUNDING = 1e-9;

    LinearScale {
        if (!(low < high) || !(step > 0) || !Double.isFinite(high - low)) {
            throw new IllegalArgumentException("An axis runs from a low to a high value in steps, got " + low + " to "
                + high + " in steps of " + step + ".");
        }
    }

    /** Exactly these ends, with about so many round steps between them. */
    static LinearScale between(double low, double high, double from, double to, int steps) {
        return new LinearScale(low, high, from, to, roundStep((high - low) / steps));
    }

    /** The ends moved outwards to round values, but not beyond the limits. */
    static LinearScale around(double low, double high, double least, double most, double from, double to, int steps) {
        double step = roundStep((high - low) / steps);
        return new LinearScale(Math.max(least, Math.floor(low / step + ROUNDING) * step),
            Math.min(most, Math.ceil(high / step - ROUNDING) * step), from, to, step);
    }

    @Override
    public double at(double value) {
        return from + (value - low) / (high - low) * (to - from);
    }

    @Override
    public List<Tick> ticks() {
        List<Tick> ticks = new ArrayList<>();
        for (long i = (long) Math.ceil(low / step - ROUNDING); i * step <= high + ROUNDING * step; i++) {
            ticks.add(new Tick(i * step, Digits.setting(i * step)));
        }
        return ticks;
    }

    /** 1, 2 or 5 times a power of ten, the least that is not below the wish. */
    static double roundStep(double wish) {
        double power = Math.pow(10, Math.floor(Math.log10(wish)));
        for (double times : new double[] {1, 2, 5}) {
            if (times * power >= wish * (1 - ROUNDING)) {
                return times * power;
            }
        }
        return 10 * power;
    }
}
