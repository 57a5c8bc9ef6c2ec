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
    /** Conductive coating. */
    COATING("C", "Cr", "Pd", "W", "Os", "Ir", "Pt", "Au"),
    /** Stub, grid, holder or adhesive. */
    MOUNT("C", "O", "Al", "Fe", "Ni", "Cu", "Zn"),
    /** Polishing medium. */
    POLISHING("C", "O", "Na", "Mg", "Al", "Si", "Ce"),
    /** Residue of oil, etching or cleaning. */
    RESIDUE("C", "O", "F", "Na", "Si", "P", "S", "Cl", "K", "Ca"),
    /** Tools and milling media. */
    TOOL("Fe", "Co", "Zr", "Mo", "W"),
    /** Detector and chamber. */
    DETECTOR("C", "O", "Al", "Si", "Fe", "Cu", "Zn");

    private final SortedSet<Element> elements;

    ForeignSource(String... symbols) {
        SortedSet<Element> set = new TreeSet<>();
        for (String symbol : symbols) {
            set.add(Element.of(symbol));
        }
        elements = Collections.unmodifiableSortedSet(set);
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
