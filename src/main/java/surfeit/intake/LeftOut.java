package surfeit.intake;

/** Something of a table that was seen, understood as no part of the measurement, and left out. */
public sealed interface LeftOut {

    /** Why, in a few words. */
    String reason();

    /** A row: a mean at the foot, or a spot that stands in the upload twice with the same values. */
    record Row(long line, String reason, String label) implements LeftOut {
    }

    /** A column, from 1. */
    record Column(int column, String columnName, String reason) implements LeftOut {
    }

    /** A spot of a JSON document that stands there twice with the same values. */
    record Spot(Place.Pointer place, String reason, String label) implements LeftOut {
    }
}
