package surfeit.element;

import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The elements hydrogen to californium with standard atomic weights (IUPAC/CIAAW 2021) and densities.
 *
 * <p>The weight is the published full-precision value; for elements whose standard weight is an interval, the
 * abridged conventional value; for elements without a standard weight, the mass number. Immutable, thread-safe.
 * Source: Prohaska et al., Pure Appl. Chem. 94 (2022) 573-600, Table 1.
 */
public final class ElementTable {
    /** Year of the standard atomic weights, echoed in every answer. */
    public static final String WEIGHTS_YEAR = "2021";
    private static final Map<String, String> OTHER_SPELLINGS =
        Map.of("aluminum", "Al", "cesium", "Cs", "sulphur", "S");

    private final Map<String, Element> bySymbol;
    private final String sha256;

    private ElementTable(ReferenceTable table) {
        Map<String, Element> elements = new LinkedHashMap<>();
        for (Map<String, String> row : table.rows()) {
            elements.put(row.get("symbol"), element(row));
        }
        bySymbol = Collections.unmodifiableMap(elements);
        sha256 = table.sha256();
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

    /**
     * The symbol a mistyped text most likely meant: the symbol in other case or the element's name first, then a
     * misspelt name, then a symbol with another second letter.
     */
    public Optional<String> nearestSymbol(String text) {
        String wanted = text.strip().toLowerCase(Locale.ROOT);
        return sameLetters(wanted)
            .or(() -> Optional.ofNullable(OTHER_SPELLINGS.get(wanted)))
            .or(() -> misspeltName(wanted))
            .or(() -> otherSecondLetter(wanted));
    }

    private Optional<String> sameLetters(String wanted) {
        return all().stream()
            .filter(element -> element.name().equals(wanted)
                || element.symbol().toLowerCase(Locale.ROOT).equals(wanted))
            .map(Element::symbol).findFirst();
    }

    private Optional<String> misspeltName(String wanted) {
        List<String> names = all().stream().map(Element::name).toList();
        return wanted.length() < 3 ? Optional.empty()
            : Spelling.nearest(wanted, names, 1).stream().findFirst().flatMap(this::sameLetters);
    }

    private Optional<String> otherSecondLetter(String wanted) {
        return wanted.length() != 2 ? Optional.empty() : all().stream().map(Element::symbol)
            .filter(symbol -> symbol.length() == 2 && symbol.toLowerCase(Locale.ROOT).charAt(0) == wanted.charAt(0))
            .findFirst();
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
