package surfeit.element;

import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
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

    /** Longer words are no names of elements; protactinium has twelve letters. */
    private static final int LONGEST_NAME = 20;
    /** What a name of another language most likely means; a hint only. From memory. */
    private static final Map<String, String> OTHER_LANGUAGES = Map.ofEntries(
        Map.entry("silber", "Ag"), Map.entry("kupfer", "Cu"), Map.entry("zinn", "Sn"), Map.entry("wismut", "Bi"),
        Map.entry("bismut", "Bi"), Map.entry("blei", "Pb"), Map.entry("zink", "Zn"), Map.entry("eisen", "Fe"),
        Map.entry("silizium", "Si"), Map.entry("silicium", "Si"), Map.entry("kohlenstoff", "C"),
        Map.entry("sauerstoff", "O"), Map.entry("argent", "Ag"), Map.entry("cuivre", "Cu"), Map.entry("\u00E9tain", "Sn"),
        Map.entry("plomb", "Pb"), Map.entry("fer", "Fe"), Map.entry("carbone", "C"), Map.entry("oxyg\u00E8ne", "O"),
        Map.entry("\u94F6", "Ag"), Map.entry("\u94DC", "Cu"), Map.entry("\u9521", "Sn"), Map.entry("\u94CB", "Bi"),
        Map.entry("\u94C5", "Pb"), Map.entry("\u94DD", "Al"), Map.entry("\u7845", "Si"), Map.entry("\u950C", "Zn"),
        Map.entry("\u94C1", "Fe"), Map.entry("\u78B3", "C"), Map.entry("\u6C27", "O"));

    private final Map<String, Element> bySymbol;
    private final Map<String, Element> byName;
    private final String sha256;

    private ElementTable(ReferenceTable table) {
        Map<String, Element> elements = new LinkedHashMap<>();
        for (Map<String, String> row : table.rows()) {
            elements.put(row.get("symbol"), element(row));
        }
        bySymbol = Collections.unmodifiableMap(elements);
        Map<String, Element> names = new HashMap<>();
        elements.values().forEach(element -> names.put(element.name(), element));
        OTHER_SPELLINGS.forEach((name, symbol) -> names.put(name, elements.get(symbol)));
        byName = Map.copyOf(names);
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

    /** The element of this English name, in any case. */
    public Optional<Element> byName(String name) {
        return name.length() > LONGEST_NAME ? Optional.empty() : Optional.ofNullable(byName.get(name.toLowerCase(Locale.ROOT)));
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
     * The symbol a mistyped text most likely meant: the symbol in other case or the element's name first, then its
     * German, French or Chinese name, then a misspelt name, then a symbol with another second letter.
     */
    public Optional<String> nearestSymbol(String text) {
        String wanted = text.strip().toLowerCase(Locale.ROOT);
        return sameLetters(wanted)
            .or(() -> Optional.ofNullable(OTHER_SPELLINGS.get(wanted)))
            .or(() -> Optional.ofNullable(OTHER_LANGUAGES.get(wanted)))
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
