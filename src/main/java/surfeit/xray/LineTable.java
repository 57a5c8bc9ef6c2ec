package surfeit.xray;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import surfeit.element.Element;
import surfeit.element.ReferenceTable;

/**
 * The packaged X-ray lines: the analytical lines (Ka, La, Ma) and the full list of 0.1 to 30 keV, up to Cf.
 *
 * <p>Gaps of the full list: no Ma below La, no Lb2 and Lg from Zr to Ru, no Sc La, nothing below 0.1 keV.
 * Source: Elam, Ravel &amp; Sieber, Radiat. Phys. Chem. 63 (2002) 121-128, through XrayDB 4.4.7. Immutable,
 * thread-safe.
 */
public final class LineTable {
    private final SortedMap<Element, List<Line>> lines = new TreeMap<>();
    private final SortedMap<Element, List<Emission>> emissions = new TreeMap<>();
    private final SortedMap<Element, List<Peak>> peaks = new TreeMap<>();
    private final String mainSha256;
    private final String fullSha256;

    private LineTable(ReferenceTable main, ReferenceTable full) {
        mainSha256 = main.sha256();
        fullSha256 = full.sha256();
        main.rows().forEach(row -> add(lines, line(row).element(), line(row)));
        full.rows().forEach(row -> add(emissions, emission(row).element(), emission(row)));
        lines.replaceAll((element, list) -> List.copyOf(list));
        emissions.replaceAll((element, list) -> List.copyOf(list));
        emissions.forEach((element, list) -> peaks.put(element, peaks(list)));
    }

    /** The packaged tables, read once. */
    public static LineTable standard() {
        return Holder.STANDARD;
    }

    /** The analytical lines of an element, K before L before M; empty for H, He and Li. */
    public List<Line> lines(Element element) {
        return lines.getOrDefault(element, List.of());
    }

    /** The analytical line of this name, for example {@code La}, if the element has it below 30 keV. */
    public Optional<Line> line(Element element, String name) {
        return lines(element).stream().filter(line -> line.name().equals(name)).findFirst();
    }

    /** Every transition of an element in the full list. */
    public List<Emission> emissions(Element element) {
        return emissions.getOrDefault(element, List.of());
    }

    /** The full list with unresolvable doublets merged. */
    public List<Peak> peaks(Element element) {
        return peaks.getOrDefault(element, List.of());
    }

    /** The peak of the full list that an analytical line stands for. */
    Peak peakOf(Line line) {
        return peaks(line.element()).stream().filter(peak -> peak.name().equals(line.name())).findFirst()
            .orElseThrow(() -> new IllegalArgumentException("The line list has no " + line.label() + "."));
    }

    /** SHA-256 of the table of analytical lines. */
    public String mainLinesSha256() {
        return mainSha256;
    }

    /** SHA-256 of the full line list. */
    public String allLinesSha256() {
        return fullSha256;
    }

    private static List<Peak> peaks(List<Emission> list) {
        Map<String, List<Emission>> byName = new LinkedHashMap<>();
        list.forEach(emission -> byName
            .computeIfAbsent(emission.edge() + " " + emission.peakName(), name -> new ArrayList<>()).add(emission));
        return byName.values().stream().map(Peak::of).toList();
    }

    private static <T> void add(Map<Element, List<T>> map, Element element, T value) {
        map.computeIfAbsent(element, key -> new ArrayList<>()).add(value);
    }

    private static Line line(Map<String, String> row) {
        return new Line(Element.of(row.get("symbol")), Family.valueOf(row.get("family")), row.get("line"),
            number(row, "energy_keV"), row.get("edge"), number(row, "edge_energy_keV"),
            number(row, "fluorescence_yield"));
    }

    private static Emission emission(Map<String, String> row) {
        return new Emission(Element.of(row.get("symbol")), row.get("siegbahn_line"), row.get("iupac_line"),
            number(row, "energy_keV"), number(row, "relative_intensity"), row.get("edge"),
            number(row, "edge_energy_keV"), number(row, "fluorescence_yield"));
    }

    private static double number(Map<String, String> row, String column) {
        return Double.parseDouble(row.get(column));
    }

    private static final class Holder {
        private static final LineTable STANDARD =
            new LineTable(ReferenceTable.packaged("main-lines.csv"), ReferenceTable.packaged("lines.csv"));
    }
}
