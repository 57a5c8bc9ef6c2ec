package surfeit.rival;

import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;

/**
 * One element's shift from nominal that asks for an explanation. Immutable, thread-safe.
 *
 * <p>Sizes are natural logarithms of odds. A cause explains the shift alone where it reaches what is
 * {@link #needed()}: the whole shift less the half width of the random part of its 95 % interval, but at least half of
 * it. The calibration error is no part of the allowance: a cause that only suffices together with an error of
 * calibration does not do it alone. From a tenth of the shift on a cause explains it in part (judgement, both).
 *
 * @param index      place of the element in the group's list
 * @param direction  1 for more than nominal, -1 for less
 * @param nominal    the nominal limit it was compared with, an atomic fraction above 0 and below 1
 * @param size       distance of the group mean from nominal, above 0
 * @param random     half width of the 95 % interval from the random part alone, 0 or more
 * @param shared     standard uncertainty shared by all spots
 * @param carrier    the particle furthest in this direction and what is left without it; from two particles on
 * @param limit      how the element was not found, where some spots have it below its limit
 */
public record Shift(int index, Element element, int direction, double nominal, double size, double random,
                    double shared, Optional<Carrier> carrier, Optional<Limit> limit) {
    /** Judgement: what reaches less than half of a shift does not explain it alone, however wide the scatter. */
    static final double LEAST_SHARE_ALONE = 0.5;
    /** Judgement: less than a tenth of a shift is not worth a reader's time. */
    static final double LEAST_SHARE = 0.1;

    /** The particle that is furthest from nominal in the shift's direction; {@code left} is the signed rest. */
    public record Carrier(String particle, int particles, double left) {
    }

    /** Spots below the limit, the largest limit as an atomic fraction, whether it was assumed, and whether nominal is a range. */
    public record Limit(long spots, double fraction, boolean assumed, boolean ofRange) {
    }

    public Shift {
        boolean holds = Math.abs(direction) == 1 && nominal > 0 && nominal < 1 && size > 0 && random >= 0
            && shared >= 0;
        if (!holds) {
            throw new IllegalArgumentException("A shift has a direction of 1 or -1, a nominal between 0 and 1, a size "
                + "above 0 and uncertainties of at least 0, got " + direction + ", " + nominal + ", " + size
                + ", " + random + ", " + shared + ".");
        }
    }

    /** What a cause must reach to explain it alone. */
    public double needed() {
        return Math.max(size * LEAST_SHARE_ALONE, size - random);
    }

    /** Whether a cause that can move the log odds this far in the shift's direction explains it. */
    public Rival.CouldExplain couldExplain(double reach) {
        if (reach >= needed()) {
            return Rival.CouldExplain.YES;
        }
        return reach >= size * LEAST_SHARE ? Rival.CouldExplain.IN_PART : Rival.CouldExplain.NO;
    }

    /**
     * Apparent enrichment factor a cause with this reach makes of the nominal; empty where nothing bounds the reach.
     */
    public OptionalDouble factor(double reach) {
        return Double.isFinite(reach)
            ? OptionalDouble.of(LogOdds.fraction(LogOdds.of(nominal) + direction * Math.max(reach, 0)) / nominal)
            : OptionalDouble.empty();
    }

    boolean up() {
        return direction > 0;
    }
}
