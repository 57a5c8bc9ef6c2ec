package surfeit.composition;

/**
 * The tie line between two phases: how much of each a composition on it is made of, and how far beside it one lies.
 *
 * <pre>
 *     f = (C - Ca).(Cb - Ca) / |Cb - Ca|²,     distance = |C - Ca - f (Cb - Ca)|
 * </pre>
 * f fraction of the second phase, C composition, Ca and Cb those of the phases. With two
 * elements this is the lever rule f = (C0 - Ca)/(Cb - Ca); with more it is the least-squares point of the line. All
 * in one basis: atomic fractions give the share of the atoms, mass fractions of the mass. f is not cut to 0..1:
 * a composition beyond an end is told, not hidden. Immutable, thread-safe.
 */
public final class LeverRule {
    private final double[] alpha;
    private final double[] direction;
    private final double squaredLength;

    private LeverRule(double[] alpha, double[] direction, double squaredLength) {
        this.alpha = alpha;
        this.direction = direction;
        this.squaredLength = squaredLength;
    }

    /** The tie line between two compositions over the same elements in the same basis. */
    public static LeverRule between(double[] alpha, double[] beta) {
        requireSameSize(alpha, beta);
        double[] direction = new double[alpha.length];
        double squaredLength = 0;
        for (int i = 0; i < alpha.length; i++) {
            direction[i] = beta[i] - alpha[i];
            squaredLength += direction[i] * direction[i];
        }
        if (!(squaredLength > 0) || Double.isInfinite(squaredLength)) {
            throw new CompositionException("A tie line joins two different compositions, got the same one twice.");
        }
        return new LeverRule(alpha.clone(), direction, squaredLength);
    }

    /** Fraction of the second phase; below 0 or above 1 where the composition lies beyond an end of the line. */
    public double fractionOfBeta(double[] composition) {
        requireSameSize(alpha, composition);
        double along = 0;
        for (int i = 0; i < alpha.length; i++) {
            along += (composition[i] - alpha[i]) * direction[i];
        }
        return along / squaredLength;
    }

    /** The composition made of this fraction of the second phase. */
    public double[] compositionAt(double fractionOfBeta) {
        double[] composition = new double[alpha.length];
        for (int i = 0; i < composition.length; i++) {
            composition[i] = alpha[i] + fractionOfBeta * direction[i];
        }
        return composition;
    }

    /** Distance of a composition beside the line: root of the summed squares over the elements. Zero in a binary. */
    public double distance(double[] composition) {
        double fraction = fractionOfBeta(composition);
        double squares = 0;
        for (int i = 0; i < composition.length; i++) {
            double beside = composition[i] - alpha[i] - fraction * direction[i];
            squares += beside * beside;
        }
        return Math.sqrt(squares);
    }

    private static void requireSameSize(double[] expected, double[] got) {
        if (expected.length != got.length) {
            throw new IllegalArgumentException(
                "Expected a composition of " + expected.length + " elements, got " + got.length + ".");
        }
    }
}
