package surfeit.spot;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the workstation reported of one element at one spot: a number, below a limit, not detected, or nothing.
 *
 * <p>Zero, below a limit, not detected and not reported are four different things and stay so. Fractions are of the
 * spot's basis. Every kind keeps the text as it was reported, so that nothing is altered on the way in or out.
 */
public sealed interface ReportedValue {

    /** The text as it was reported: {@code 62,40}, {@code <0.3}, {@code n.d.}, or empty. */
    String asReported();

    /**
     * A number, also zero or slightly negative.
     *
     * @param fraction    the value as a fraction of the spot's basis (0.624 for 62.4 %)
     * @param sigma       its standard uncertainty (1 sigma) as a fraction; NaN where none is stated
     * @param counts      net and background counts behind it, if stated
     * @param limit       the detection limit reported with it as a fraction, if any
     * @param line        the X-ray line it was read from, as reported, if stated
     */
    record Measured(double fraction, String asReported, double sigma, Optional<Counts> counts, OptionalDouble limit,
                    Optional<String> line) implements ReportedValue {
        public Measured {
            if (!Double.isFinite(fraction)) {
                throw new IllegalArgumentException("A measured value is a finite number, got " + fraction + ".");
            }
            if (sigma < 0 || Double.isInfinite(sigma)) {
                throw new IllegalArgumentException("An uncertainty is a finite number of at least 0, got " + sigma + ".");
            }
            requireLimit(limit);
        }

        /** A number and what is stated beside it. */
        public Measured(double fraction, String asReported, OptionalDouble uncertainty, Optional<Counts> counts,
                        OptionalDouble limit, Optional<String> line) {
            this(fraction, asReported, sigma(uncertainty), counts, limit, line);
        }

        private static double sigma(OptionalDouble uncertainty) {
            if (uncertainty.isPresent() && Double.isNaN(uncertainty.getAsDouble())) {
                throw new IllegalArgumentException("An uncertainty is a finite number of at least 0, got NaN.");
            }
            return uncertainty.orElse(Double.NaN);
        }

        /** Its standard uncertainty as a fraction, if stated. */
        public OptionalDouble uncertainty() {
            return Double.isNaN(sigma) ? OptionalDouble.empty() : OptionalDouble.of(sigma);
        }

        /** A number without anything beside it. */
        public static Measured of(double fraction, String asReported) {
            return new Measured(fraction, asReported, OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty(),
                Optional.empty());
        }

        /** Step of the last printed digit, as a fraction: 0.0001 for 62.40 %. */
        public double roundingStep() {
            int decimals = 0;
            boolean afterMark = false;
            for (int i = 0; i < asReported.length(); i++) {
                char c = asReported.charAt(i);
                if (c == 'e' || c == 'E') {
                    return new BigDecimal(asReported.strip().replace(',', '.')).ulp().movePointLeft(2).doubleValue();
                }
                decimals += afterMark && c >= '0' && c <= '9' ? 1 : 0;
                afterMark |= c == '.' || c == ',';
            }
            return STEP[Math.min(decimals, STEP.length - 1)];
        }

        private static final double[] STEP = {1e-2, 1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9, 1e-10, 1e-11, 1e-12};
    }

    /** The element lies below a stated limit, {@code <0.3}. */
    record BelowLimit(double limitFraction, String asReported) implements ReportedValue {
        public BelowLimit {
            requireLimit(OptionalDouble.of(limitFraction));
        }
    }

    /** The element was looked for and not detected; the limit of doing so may be stated. */
    record NotDetected(OptionalDouble limitFraction, String asReported) implements ReportedValue {
        public NotDetected {
            requireLimit(limitFraction);
        }
    }

    /** The element is in the table, but this spot says nothing of it. */
    record NotReported() implements ReportedValue {
        @Override
        public String asReported() {
            return "";
        }
    }

    private static void requireLimit(OptionalDouble limit) {
        if (limit.isPresent() && !(limit.getAsDouble() > 0 && limit.getAsDouble() <= 1)) {
            throw new IllegalArgumentException("A detection limit lies above 0 and at most at 100 %, got "
                + limit.getAsDouble() * 100 + " %.");
        }
    }
}
