package surfeit.statistics;

/**
 * Count, mean and sum of squared deviations of values, given at once or one by one.
 *
 * <p>Adding keeps the deviations from the running mean, so a large common offset does no harm. Source: Welford,
 * Technometrics 4 (1962) 419 (from memory). Mutable, not thread-safe.
 */
public final class Moments {

    private long count;
    private double mean;
    private double squaredDeviations;

    /** The moments of given values, by two passes: more exact than adding them one by one. */
    public static Moments of(double... values) {
        Moments moments = new Moments();
        if (values.length == 0) {
            return moments;
        }
        double sum = 0;
        for (double value : values) {
            sum += requireFinite(value);
        }
        double rough = sum / values.length;
        double rest = 0;
        double squares = 0;
        for (double value : values) {
            double deviation = value - rough;
            rest += deviation;
            squares += deviation * deviation;
        }
        moments.count = values.length;
        moments.mean = rough + rest / values.length;
        moments.squaredDeviations = Math.max(squares - rest * rest / values.length, 0);
        return moments;
    }

    /** The moments of values already summed up. @throws IllegalArgumentException for sums no values can have */
    public static Moments ofSums(long count, double mean, double sumOfSquaredDeviations) {
        if (count < 1 || !Double.isFinite(mean)
            || !(sumOfSquaredDeviations >= 0 && sumOfSquaredDeviations < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("Expected a count of 1 or more, a finite mean and a sum of squares of 0"
                + " or above, got " + count + ", " + mean + " and " + sumOfSquaredDeviations + ".");
        }
        Moments moments = new Moments();
        moments.count = count;
        moments.mean = mean;
        moments.squaredDeviations = count == 1 ? 0 : sumOfSquaredDeviations;
        return moments;
    }

    public void add(double value) {
        double deviation = requireFinite(value) - mean;
        count++;
        mean += deviation / count;
        squaredDeviations += deviation * (value - mean);
    }

    public long count() {
        return count;
    }

    /** @throws IllegalStateException for no value */
    public double mean() {
        if (count == 0) {
            throw new IllegalStateException("The mean needs at least 1 value, found 0.");
        }
        return mean;
    }

    /** Σ(x - mean)². */
    public double sumOfSquaredDeviations() {
        return squaredDeviations;
    }

    /** Σ(x - mean)²/(n-1). @throws IllegalStateException for fewer than two values */
    public double variance() {
        if (count < 2) {
            throw new IllegalStateException("The variance needs at least 2 values, found " + count + ".");
        }
        return squaredDeviations / (count - 1);
    }

    private static double requireFinite(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("Value is " + value + ", must be a finite number.");
        }
        return value;
    }
}
