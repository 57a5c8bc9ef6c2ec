package surfeit.statistics;

/**
 * The mean of particle means and its standard error, from two sums that can be kept up to date.
 *
 * <pre>    S1 = Σ(x - c)    S2 = Σ(x - c)²    mean = c + S1/k    s² = (S2 - S1²/k) / (k (k-1))</pre>
 *
 * c is any value near the x (the nominal, say): the nearer, the less the difference cancels. Immutable.
 */
public record OffsetSums(double offset, long count, double sum, double sumOfSquares) {

    public OffsetSums {
        if (count < 0 || !(sumOfSquares >= 0)) {
            throw new IllegalArgumentException("Count " + count + " and sum of squares " + sumOfSquares
                + " must be 0 or above.");
        }
        if (!Double.isFinite(offset) || !Double.isFinite(sum) || !Double.isFinite(sumOfSquares)) {
            throw new IllegalArgumentException("Offset " + offset + ", sum " + sum + " and sum of squares "
                + sumOfSquares + " must be finite.");
        }
    }

    /** No value yet. */
    public static OffsetSums around(double offset) {
        return new OffsetSums(offset, 0, 0, 0);
    }

    public OffsetSums plus(double value) {
        double distance = value - offset;
        return new OffsetSums(offset, count + 1, sum + distance, sumOfSquares + distance * distance);
    }

    /** Without a value that was added before. @throws IllegalStateException where nothing is left to remove */
    public OffsetSums minus(double value) {
        if (count == 0) {
            throw new IllegalStateException("No value to remove: the count is 0.");
        }
        double distance = value - offset;
        return count == 1 ? around(offset)
            : new OffsetSums(offset, count - 1, sum - distance, Math.max(sumOfSquares - distance * distance, 0));
    }

    /** @throws IllegalStateException for no value */
    public double mean() {
        if (count == 0) {
            throw new IllegalStateException("The mean needs at least 1 value, found 0.");
        }
        return offset + sum / count;
    }

    /** The standard error of the mean. @throws IllegalStateException for fewer than two values */
    public RandomPart randomPart() {
        if (count < 2) {
            throw new IllegalStateException("A standard error needs at least 2 values, found " + count + ".");
        }
        double squares = Math.max(sumOfSquares - sum * sum / count, 0);
        return new RandomPart(Math.sqrt(squares / count / (count - 1)), count - 1);
    }
}
