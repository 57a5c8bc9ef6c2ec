package surfeit.statistics;

/**
 * The random error of a mean: its standard error, and how many degrees of freedom stand behind that figure.
 *
 * <p>It is the part that repeating the measurement shrinks. A standard error that is known rather than estimated (from
 * counting, say) has infinitely many degrees of freedom. Unit: that of the mean. Immutable.
 */
public record RandomPart(double standardError, double degreesOfFreedom) {

    public RandomPart {
        if (!(standardError >= 0 && standardError < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("Standard error is " + standardError
                + ", must be 0 or above and finite.");
        }
        if (!(degreesOfFreedom > 0)) {
            throw new IllegalArgumentException("Degrees of freedom are " + degreesOfFreedom + ", must be above 0.");
        }
    }

    /** A standard error taken as known. */
    public static RandomPart known(double standardError) {
        return new RandomPart(standardError, Double.POSITIVE_INFINITY);
    }

    /**
     * The standard error of the mean of independent values, {@code sd/√n} with n - 1 degrees of freedom.
     *
     * @throws IllegalArgumentException for fewer than two values
     */
    public static RandomPart ofMean(double... values) {
        Moments moments = Moments.of(values);
        return new RandomPart(Math.sqrt(moments.variance() / values.length), values.length - 1);
    }

    /** This and an independent error added: see {@link WelchSatterthwaite}. */
    public RandomPart plus(RandomPart other) {
        return WelchSatterthwaite.sum(this, other);
    }

    /** The same error after every value was multiplied by a factor. */
    public RandomPart times(double factor) {
        return new RandomPart(standardError * Math.abs(factor), degreesOfFreedom);
    }

    /** This, or {@code floor} where this is smaller: the rounding of what was read in cannot be averaged away. */
    public RandomPart atLeast(double floor) {
        return floor > standardError ? new RandomPart(floor, degreesOfFreedom) : this;
    }
}
