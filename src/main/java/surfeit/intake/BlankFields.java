package surfeit.intake;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import surfeit.spot.Spot;

/**
 * Counts the spots that name no particle or feature in a table that names some: cells merged over several spots leave it
 * so, and then the spots would be of none in silence. Spots on a reference piece are of none anyway. Not thread-safe: one
 * per table.
 */
final class BlankFields {
    private static final Map<SpotField, Function<Spot, Optional<String>>> FIELDS =
        new EnumMap<>(Map.of(SpotField.PARTICLE, Spot::particle, SpotField.FEATURE, Spot::feature));

    private final Map<SpotField, Long> blanks = new EnumMap<>(SpotField.class);
    private long spots;

    void count(Spot spot) {
        if (spot.isReference()) {
            return;
        }
        spots++;
        FIELDS.forEach((field, of) -> {
            if (of.apply(spot).isEmpty()) {
                blanks.merge(field, 1L, Long::sum);
            }
        });
    }

    /** Tells of each field that some spots name and others do not. */
    void tell(HeaderCells cells, TableHeader header, SpotIntake intake) {
        for (SpotField field : List.of(SpotField.PARTICLE, SpotField.FEATURE)) {
            long blank = blanks.getOrDefault(field, 0L);
            if (header.column(field) >= 0 && blank > 0 && blank < spots) {
                intake.leaveOut(cells.leftOut(header.column(field), "blank for " + blank + " of " + spots
                    + " spots, which then name no " + field.text() + "; fill merged cells in"));
            }
        }
    }
}
