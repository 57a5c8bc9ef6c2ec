package surfeit.xray;

import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import surfeit.element.Element;
import surfeit.element.ReferenceTable;

/**
 * Line energies of the X-ray Data Booklet, for the lines that matter in overlaps, keV.
 *
 * <p>The full line list is within a few eV for K and main L lines but puts M lines 3 to 5 eV low, so two lines are
 * compared by the booklet where it has both. X-Ray Data Booklet, table 1-3 (values of Bearden 1967).
 * Immutable, thread-safe.
 */
final class BookletEnergies {
    private static final double KEV_PER_EV = 1e-3;
    private final Map<String, Double> byLine = new HashMap<>();

    private BookletEnergies(ReferenceTable overlaps) {
        for (Map<String, String> row : overlaps.rows()) {
            put(row.get("elem_a"), row.get("line_a"), row.getOrDefault("eV_a_booklet", ""));
            put(row.get("elem_b"), row.get("line_b"), row.getOrDefault("eV_b_booklet", ""));
        }
    }

    /** The packaged table, read once. */
    static BookletEnergies standard() {
        return Holder.STANDARD;
    }

    /** Booklet energy of a line such as Au Ma or Si Ka1, if the table holds it. */
    OptionalDouble energyKev(Element element, String lineName) {
        Double energy = byLine.getOrDefault(key(element.symbol(), lineName), Double.NaN);
        return energy.isNaN() ? OptionalDouble.empty() : OptionalDouble.of(energy);
    }

    private void put(String symbol, String line, String electronVolt) {
        if (!electronVolt.isBlank()) {
            byLine.put(key(symbol, line), Double.parseDouble(electronVolt) * KEV_PER_EV);
        }
    }

    private static String key(String symbol, String line) {
        return symbol + " " + line;
    }

    private static final class Holder {
        private static final BookletEnergies STANDARD = new BookletEnergies(ReferenceTable.packaged("overlaps.csv"));
    }
}
