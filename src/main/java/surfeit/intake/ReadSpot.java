package surfeit.intake;

import java.util.List;
import surfeit.spot.Spot;

/**
 * A spot as it was read, with where it stood.
 *
 * @param place row or pointer at which it begins
 * @param rows  the rows of the table it was read from; none for a JSON document
 */
public record ReadSpot(Spot spot, Place place, List<CsvRow> rows) {
    public ReadSpot {
        rows = List.copyOf(rows);
    }
}
