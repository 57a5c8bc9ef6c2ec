package surfeit.report.figure;

import java.util.List;

/** Where the values of an axis lie in the picture. */
interface Scale {
    /** The value at the beginning of the axis. */
    double low();

    double high();

    /** The coordinate of a value, also of one beyond the ends. */
    double at(double value);

    /** The values to mark, in rising order. */
    List<Tick> ticks();

    default boolean holds(double value) {
        return value >= low() && value <= high();
    }

    /** The coordinate of a value, or of the nearer end where it lies beyond. */
    default double within(double value) {
        return at(Math.min(Math.max(value, low()), high()));
    }
}
