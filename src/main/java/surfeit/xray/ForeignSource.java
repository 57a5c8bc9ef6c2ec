package surfeit.xray;

import java.util.Collections;
import java.util.SortedSet;
import java.util.TreeSet;
import surfeit.element.Element;

/**
 * Where elements in a spectrum may come from besides the sample, with the elements to expect.
 *
 * <p>Common practice, no source. Immutable, thread-safe.
 */
public enum ForeignSource {
    COATING("conductive coating", "C", "Cr", "Pd", "W", "Os", "Ir", "Pt", "Au"),
    MOUNT("stub, grid, holder or adhesive", "C", "O", "Al", "Fe", "Ni", "Cu", "Zn"),
    POLISHING("polishing medium", "C", "O", "Na", "Mg", "Al", "Si", "Ce"),
    RESIDUE("residue of oil, etching or cleaning", "C", "O", "F", "Na", "Si", "P", "S", "Cl", "K", "Ca"),
    TOOL("tools and milling media", "Fe", "Co", "Zr", "Mo", "W"),
    DETECTOR("detector and chamber", "C", "O", "Al", "Si", "Fe", "Cu", "Zn");

    private final String description;
    private final SortedSet<Element> elements;

    ForeignSource(String description, String... symbols) {
        this.description = description;
        SortedSet<Element> set = new TreeSet<>();
        for (String symbol : symbols) {
            set.add(Element.of(symbol));
        }
        elements = Collections.unmodifiableSortedSet(set);
    }

    public String description() {
        return description;
    }

    public SortedSet<Element> elements() {
        return elements;
    }

    /** Every element that some foreign source may bring. */
    public static SortedSet<Element> allElements() {
        SortedSet<Element> all = new TreeSet<>();
        for (ForeignSource source : values()) {
            all.addAll(source.elements);
        }
        return Collections.unmodifiableSortedSet(all);
    }
}
