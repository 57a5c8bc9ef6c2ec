package surfeit.segregation.verdict;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import surfeit.segregation.answer.Outcome;
import surfeit.segregation.nominal.NominalTest;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.statistics.CombinedError;
import surfeit.statistics.NormalDistribution;

/**
 * What to measure next where the data cannot tell, in words.
 *
 * <p>The number of particles is the smallest k with {@code h(k) + z(0.8) sqrt(se(k)^2 + u^2) <= shift}, where
 * {@code se(k)^2 = s_b^2 / k + s_w^2 / (k n)} from the scatter seen so far and h is the half width of the 95 % interval:
 * a shift as large as the one seen (at least the margin) would then be shown four times out of five, roughly. Order of
 * advice settled by simulation on invented data: reference spots, then particles, last more spots on a particle.
 */
record NextSteps(double margin, double alpha) {
    private static final double POWER_Z = NormalDistribution.quantile(0.8);
    private static final int PARTICLES_MOST = 1000;
    private static final int REFERENCE_SPOTS = 5;

    /** Advice for one element of a group; empty for a settled verdict. */
    Optional<String> of(Outcome outcome, NominalTest test, GroupSums sums, int element, NominalTest.Limits limits,
                        boolean referenceUsed) {
        if (outcome.reason().isEmpty()) {
            return Optional.empty();
        }
        String step = switch (outcome.reason().get()) {
            case NO_REPEAT_AND_NO_SIGMA -> "Measure at least two more spots on this particle, or give the spot's uncertainty; "
                + "then two more particles.";
            case LIMIT_ABOVE_NOMINAL -> "Lower the detection limit below nominal: longer live time, higher beam current, or a "
                + "line that is excited better.";
            case CALIBRATION -> calibration(referenceUsed) + (referenceUsed ? "" : " More spots do not help.");
            case SCATTER, BETWEEN -> particles(test, sums, element, limits).orElseGet(() -> "No number of particles "
                + "shows " + wanted(test, limits) + " against this calibration error. " + calibration(referenceUsed));
            case CALIBRATION_AND_SCATTER -> calibration(referenceUsed) + particles(test, sums, element, limits)
                .map(words -> " Then: " + lowerFirst(words)).orElse("");
        };
        return Optional.of(step);
    }

    private static String calibration(boolean referenceUsed) {
        return referenceUsed
            ? "Reference spots are in use already; quantify with standards, or compare features of one session with each other."
            : "Measure " + REFERENCE_SPOTS + " spots on a piece of known composition in the same session, or compare features "
                + "of one session with each other.";
    }

    private static String lowerFirst(String sentence) {
        return Character.toLowerCase(sentence.charAt(0)) + sentence.substring(1);
    }

    /** How many particles more would show the shift; empty where no number does. */
    private Optional<String> particles(NominalTest test, GroupSums sums, int element, NominalTest.Limits limits) {
        int k = sums.particleCount();
        long spotsEach = Math.max(1, Math.round((double) sums.spotCount() / k));
        if (Double.isNaN(test.sTheta())) {
            return Optional.of("Count longer: the mean is not above zero, so that no factor can be planned for.");
        }
        if (k < 2) {
            return Optional.of(String.format(Locale.ROOT, "Measure %d more particles, %d spots each; the scatter between "
                + "particles is not known yet.", Math.max(3 - k, 1), Math.max(spotsEach, 3)));
        }
        OptionalInt needed = particlesFor(shift(test), test, sums, element, spotsEach);
        if (needed.isEmpty()) {
            return Optional.empty();
        }
        int more = Math.max(needed.getAsInt() - k, 1);
        return Optional.of(String.format(Locale.ROOT, "%d more particle%s (%d in all, %d spot%s each) would show %s.", more,
            more == 1 ? "" : "s", k + more, spotsEach, spotsEach == 1 ? "" : "s", wanted(test, limits)));
    }

    /** The shift to be shown, in log odds: the one seen, at least the margin. */
    private double shift(NominalTest test) {
        return Math.max(Math.abs(test.theta()), margin);
    }

    private String wanted(NominalTest test, NominalTest.Limits limits) {
        return factorWords(shift(test), test.direction(), limits);
    }

    private OptionalInt particlesFor(double shift, NominalTest test, GroupSums sums, int element, long spotsEach) {
        double q = test.mean() * (1 - test.mean());
        double within = sums.withinMeanSquare(element).orElse(0.0) / (q * q);
        double means = sums.betweenDeviation(element, sums.mean()[element]) / q;
        double step = sums.roundingStep()[element] / Math.sqrt(12) / q;
        double between = Math.max(means * means - within / spotsEach, 0);
        double variance = Math.max(between + within / spotsEach, step * step);
        double u = test.uTheta();
        int low = 2;
        int high = 3;
        while (!shows(shift, variance, high, u)) {
            low = high;
            high *= 2;
            if (high > PARTICLES_MOST) {
                return OptionalInt.empty();
            }
        }
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (shows(shift, variance, middle, u)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return OptionalInt.of(high);
    }

    private boolean shows(double shift, double variance, int k, double u) {
        double se = Math.sqrt(variance / k);
        return se + u == 0 || CombinedError.halfWidth(se, k - 1, u, 1 - alpha) + POWER_Z * Math.hypot(se, u) <= shift;
    }

    /** A shift in log odds as a factor on the nominal fraction, in the direction the data point to. */
    private static String factorWords(double shift, int direction, NominalTest.Limits limits) {
        double at = direction < 0 ? limits.low() : limits.high();
        if (!(at > 0 && at < 1)) {
            return "a shift of this size";
        }
        double factor = NominalTest.expit(NominalTest.logit(at) + (direction < 0 ? -shift : shift)) / at;
        return "a factor of " + (factor < 10 ? String.format(Locale.ROOT, "%.2f", factor) : String.format(Locale.ROOT, "%.0f", factor));
    }
}
