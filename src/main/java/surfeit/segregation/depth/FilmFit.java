package surfeit.segregation.depth;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import surfeit.element.Element;
import surfeit.segregation.answer.DepthReading;
import surfeit.segregation.answer.Estimate;
import surfeit.statistics.StudentT;

/**
 * The film of a pure element on an alloy of nominal composition that fits the readings at several beam energies best.
 *
 * <pre>
 *     minimise  X(t) = sum_E (theta_E - model_E(t))^2 / (s_E^2 + u_E^2)
 *     interval  X(t) - X(t^) &lt;= t(0.975; nu)^2,  then 15 % wider on either side for the film model
 * </pre>
 * t mass thickness in g/cm², theta log odds against nominal, s random and u shared error, nu the fewest degrees of
 * freedom of any energy. Calibration errors at different energies are taken as independent: other lines, other depths.
 *
 * @param massThickness t^, g/cm²
 * @param low           lower end, 0 where no film is not excluded
 * @param high          upper end, infinite where the model sets none
 */
record FilmFit(double massThickness, double low, double high) {
    /** Within 15 % of Monte Carlo in all comparisons. */
    static final double MODEL_LOW = 0.85;
    static final double MODEL_HIGH = 1.15;
    private static final double SEARCHED_DEPTHS = 2;
    private static final int STEPS = 32;
    /** Relative accuracy of the interval's ends. */
    private static final double CLOSE = 1e-6;
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

    static FilmFit of(List<DepthPoint> points) {
        double most = SEARCHED_DEPTHS * points.stream().mapToDouble(DepthPoint::meanMassDepth).max().orElseThrow();
        DoubleUnaryOperator misfit = t -> misfit(points, t);
        double best = minimum(misfit, most);
        double fewest = points.stream().mapToDouble(DepthPoint::degreesOfFreedom).min().orElseThrow();
        double quantile = StudentT.quantile(0.975, fewest);
        double limit = misfit.applyAsDouble(best) + quantile * quantile;
        double low = misfit.applyAsDouble(0) <= limit ? 0 : crossing(misfit, limit, best, 0);
        double high = misfit.applyAsDouble(most) <= limit ? Double.POSITIVE_INFINITY
            : crossing(misfit, limit, best, most);
        return new FilmFit(best, low / MODEL_HIGH, high / MODEL_LOW);
    }

    private static double misfit(List<DepthPoint> points, double t) {
        double sum = 0;
        for (DepthPoint point : points) {
            double residual = (point.theta() - point.ofFilm(t)) / point.standardUncertainty();
            sum += residual * residual;
        }
        return sum;
    }

    /** Golden section: the misfit falls to one minimum and rises, since every model value rises with t. */
    private static double minimum(DoubleUnaryOperator misfit, double most) {
        double low = 0;
        double high = most;
        double left = high - GOLDEN * (high - low);
        double right = low + GOLDEN * (high - low);
        double atLeft = misfit.applyAsDouble(left);
        double atRight = misfit.applyAsDouble(right);
        for (int step = 0; step < STEPS; step++) {
            if (atLeft <= atRight) {
                high = right;
                right = left;
                atRight = atLeft;
                left = high - GOLDEN * (high - low);
                atLeft = misfit.applyAsDouble(left);
            } else {
                low = left;
                left = right;
                atLeft = atRight;
                right = low + GOLDEN * (high - low);
                atRight = misfit.applyAsDouble(right);
            }
        }
        return misfit.applyAsDouble(0) <= Math.min(atLeft, atRight) ? 0 : (low + high) / 2;
    }

    /** Where the misfit passes the limit, by false position (Illinois); it does so once between the two. */
    private static double crossing(DoubleUnaryOperator misfit, double limit, double inside, double outside) {
        double in = inside;
        double out = outside;
        double atIn = misfit.applyAsDouble(in) - limit;
        double atOut = misfit.applyAsDouble(out) - limit;
        int lastMoved = 0;
        double last = in;
        for (int step = 0; step < STEPS; step++) {
            double next = in - atIn * (out - in) / (atOut - atIn);
            double atNext = misfit.applyAsDouble(next) - limit;
            int moved = atNext > 0 ? 1 : -1;
            if (moved > 0) {
                out = next;
                atOut = atNext;
                atIn /= lastMoved == moved ? 2 : 1;
            } else {
                in = next;
                atIn = atNext;
                atOut /= lastMoved == moved ? 2 : 1;
            }
            if (Math.abs(next - last) <= CLOSE * Math.max(in, out)) {
                return next;
            }
            lastMoved = moved;
            last = next;
        }
        return last;
    }

    /** The film as it is told; empty where it is thicker than the model was compared for. */
    Optional<DepthReading.Film> film(List<DepthPoint> points) {
        Element element = points.get(0).symbol();
        double reach = points.stream().mapToDouble(point -> point.model().reach(element)).min().orElseThrow();
        if (massThickness > reach) {
            return Optional.empty();
        }
        Estimate mass = new Estimate(massThickness, low, high);
        OptionalDouble density = element.gasAtRoomTemperature() ? OptionalDouble.empty() : element.density();
        return Optional.of(new DepthReading.Film(mass, density.isEmpty() ? Optional.empty()
            : Optional.of(new Estimate(nm(massThickness, density), nm(low, density), nm(high, density)))));
    }

    private static double nm(double massThickness, OptionalDouble density) {
        return massThickness / density.getAsDouble() * 1e7;
    }
}
