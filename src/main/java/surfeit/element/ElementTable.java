package surfeit.element;

import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The elements hydrogen to californium with standard atomic weights (IUPAC/CIAAW 2021) and densities.
 *
 * <p>The weight is the published full-precision value; for elements whose standard weight is an interval, the
 * abridged conventional value; for elements without a stable isotope, the mass number. Immutable, thread-safe.
 */
public final class ElementTable {
    /** Year of the standard atomic weights, echoed in every answer. */
    public static final String WEIGHTS_YEAR = "2021";

    private final Map<String, Element> bySymbol = new LinkedHashMap<>();
    private final String sha256;

    private ElementTable(ReferenceTable table) {
        sha256 = table.sha256();
        for (Map<String, String> row : table.rows()) {
            bySymbol.put(row.get("symbol"), element(row));
        }
    }

    /** The packaged table, read once. */
    public static ElementTable standard() {
        return Holder.STANDARD;
    }

    /** The element with exactly this symbol, if there is one. */
    public Optional<Element> bySymbol(String symbol) {
        return Optional.ofNullable(bySymbol.get(symbol));
    }

    /** All elements, by atomic number. */
    public Collection<Element> all() {
        return bySymbol.values();
    }

    /** SHA-256 of the packaged table. */
    public String sha256() {
        return sha256;
    }

    /** The symbol a mistyped text most likely meant: same letters in other case first, then one letter off. */
    public Optional<String> nearestSymbol(String text) {
        String wanted = text.strip().toLowerCase(Locale.ROOT);
        return bySymbol.values().stream()
            .map(element -> Map.entry(element.symbol(), distance(wanted, element)))
            .filter(entry -> entry.getValue() <= 1)
            .min(Comparator.comparingInt(Map.Entry::getValue))
            .map(Map.Entry::getKey);
    }

    private static int distance(String wanted, Element element) {
        String symbol = element.symbol().toLowerCase(Locale.ROOT);
        if (symbol.equals(wanted) || element.name().equals(wanted)) {
            return 0;
        }
        if (symbol.length() == 2 && wanted.length() == 2 && symbol.charAt(0) == wanted.charAt(0)) {
            return 1;
        }
        return 2;
    }

    private static Element element(Map<String, String> row) {
        OptionalDouble full = number(row, "full_precision_2021");
        double weight = full.isPresent() ? full.getAsDouble() : Double.parseDouble(row.get("atomic_weight"));
        return new Element(Integer.parseInt(row.get("Z")), row.get("symbol"), row.get("name"), weight,
            number(row, "weight_uncertainty"), number(row, "density_g_cm3_at_20C"), row.get("state_20C").equals("gas"));
    }

    private static OptionalDouble number(Map<String, String> row, String column) {
        String text = row.getOrDefault(column, "");
        return text.isBlank() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(text));
    }

    private static final class Holder {
        private static final ElementTable STANDARD = new ElementTable(ReferenceTable.packaged("elements.csv"));
    }
}
