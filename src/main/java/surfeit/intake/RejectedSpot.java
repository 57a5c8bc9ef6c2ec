package surfeit.intake;

import java.util.List;

/** Rows of a table that became no spot, or of a spot that cannot be taken, and why. */
public record RejectedSpot(List<CsvRow> rows, List<Fault> faults) {
    public RejectedSpot {
        rows = List.copyOf(rows);
        faults = List.copyOf(faults);
    }
}
