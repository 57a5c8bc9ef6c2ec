package surfeit.lab;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import surfeit.intake.FaultCode;
import surfeit.intake.Place.Cell;
import surfeit.intake.Place.Pointer;
import surfeit.intake.Place.Row;

/** Faults and places as the reader of uploads has them, in the words of the lab. */
public final class IntakeFaults {
    private IntakeFaults() {
    }

    /** The problem a kind of fault means; both have the same code. */
    public static Problem problem(FaultCode code) {
        return Problem.ofCode(code.text())
            .orElseThrow(() -> new IllegalStateException("No problem has the code " + code + "."));
    }

    /** The fault as answers tell it. */
    public static Fault fault(surfeit.intake.Fault fault) {
        return new Fault(problem(fault.code()), fault.detail(), place(fault.place()), value(fault.place()),
            Optional.empty(), fault.setting());
    }

    static Place place(surfeit.intake.Place place) {
        if (place instanceof Cell cell) {
            return Place.cell(cell.line(), cell.column(), cell.columnName());
        }
        if (place instanceof Row row) {
            return Place.line(row.line());
        }
        Pointer pointer = (Pointer) place;
        return pointer.line().isPresent()
            ? Place.pointerInLine(pointer.line().getAsLong(), pointer.pointer()) : Place.pointer(pointer.pointer());
    }

    private static Optional<String> value(surfeit.intake.Place place) {
        String value = place instanceof Cell cell ? cell.value()
            : place instanceof Pointer pointer ? pointer.value() : "";
        return value.isEmpty() ? Optional.empty() : Optional.of(value);
    }

    static LeftOut leftOut(surfeit.intake.LeftOut part) {
        if (part instanceof surfeit.intake.LeftOut.Row row) {
            return new LeftOut(Place.line(row.line()), row.reason(), Optional.of(row.label()));
        }
        if (part instanceof surfeit.intake.LeftOut.Column column) {
            return new LeftOut(new Place(Optional.empty(), OptionalLong.empty(), OptionalInt.of(column.column()),
                Optional.of(column.columnName())), column.reason(), Optional.empty());
        }
        surfeit.intake.LeftOut.Spot spot = (surfeit.intake.LeftOut.Spot) part;
        return new LeftOut(place(spot.place()), spot.reason(), Optional.of(spot.label()));
    }
}
