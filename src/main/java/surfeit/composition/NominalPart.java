package surfeit.composition;

/** What the nominal says of one element, as fractions of its basis: a point, a range, or the balance. */
public sealed interface NominalPart {

    /** One value; the lot lies within plus or minus the tolerance, every value in it equally likely. */
    record Point(double value, double tolerance) implements NominalPart {
        public Point {
            requireFraction("A nominal value", value);
            requireFraction("A nominal tolerance", tolerance);
        }

        /** A value without a stated tolerance. */
        public static Point exact(double value) {
            return new Point(value, 0);
        }
    }

    /** Anything from low to high is in order. */
    record Range(double low, double high) implements NominalPart {
        public Range {
            requireFraction("The low limit of a nominal range", low);
            requireFraction("The high limit of a nominal range", high);
            if (low > high) {
                throw new CompositionException(CompositionException.Kind.VALUE_OUT_OF_RANGE, "A nominal range runs from"
                    + " low to high, got " + Percent.text(low) + " to " + Percent.text(high) + ".");
            }
        }
    }

    /** Whatever the other elements leave. */
    record Balance() implements NominalPart {
    }

    private static void requireFraction(String what, double value) {
        if (!(value >= 0 && value <= 1)) {
            throw new CompositionException(CompositionException.Kind.VALUE_OUT_OF_RANGE,
                what + " lies between 0 and 100 %, got " + Percent.text(value) + ".");
        }
    }
}
