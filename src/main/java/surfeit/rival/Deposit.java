package surfeit.rival;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import surfeit.element.Element;
import surfeit.xray.Residue;
import surfeit.xray.ResidueTable;

/**
 * A compound of the table of residues as one alloy sees it: what it adds to its elements, and what gives it away.
 *
 * @param residue the compound
 * @param counts  atoms of each closed element in its formula
 * @param markers atoms of its other elements, hydrogen left out: no X-ray shows it
 * @param symbols the same as words, {@code C, O}
 */
record Deposit(Residue residue, double[] counts, SortedMap<Element, Integer> markers, String symbols) {
    private static final int HYDROGEN = 1;
    /** The closed atoms cannot all be residue: some alloy is left. */
    private static final double MOST = 0.99;
    /** Thickness taken for an oil film and for anything else nobody measured, nm (judgement). */
    private static final double OIL_NM = 50;
    private static final double OTHER_NM = 5;

    /** The residues that hold an element of the alloy. */
    static List<Deposit> on(List<Element> elements) {
        List<Deposit> deposits = new ArrayList<>();
        for (Residue residue : ResidueTable.standard().all()) {
            if (residue.atoms().keySet().stream().anyMatch(elements::contains)) {
                deposits.add(of(residue, elements));
            }
        }
        return List.copyOf(deposits);
    }

    private static Deposit of(Residue residue, List<Element> elements) {
        double[] counts = new double[elements.size()];
        SortedMap<Element, Integer> markers = new TreeMap<>();
        residue.atoms().forEach((element, count) -> {
            int at = elements.indexOf(element);
            if (at >= 0) {
                counts[at] = count;
            } else if (element.atomicNumber() != HYDROGEN) {
                markers.put(element, count);
            }
        });
        return new Deposit(residue, counts, Collections.unmodifiableSortedMap(markers),
            markers.keySet().stream().map(Element::symbol).collect(Collectors.joining(", ")));
    }

    /**
     * How far it moves the log odds of an element of the nominal when so many formula units lie beside each closed
     * atom.
     */
    double change(double[] nominal, double units, int element) {
        double atoms = 0;
        for (double count : counts) {
            atoms += count * units;
        }
        double scale = atoms < MOST ? units : units * MOST / atoms;
        double rest = 1 - Math.min(atoms, MOST);
        double[] amounts = new double[counts.length];
        for (int j = 0; j < amounts.length; j++) {
            amounts[j] = counts[j] * scale / rest;
        }
        return LogOdds.added(nominal, amounts, element);
    }

    boolean isMedium() {
        return residue.kind().equals("polishing medium");
    }

    /** Oil and carbon gather under the beam without anybody bringing them. */
    boolean gathersUnasked() {
        return residue.kind().equals("oil") || residue.kind().equals("carbon");
    }

    /** Thickness of a film taken where nothing tells how much there is, nm. */
    double usualThicknessNm() {
        return residue.kind().equals("oil") ? OIL_NM : OTHER_NM;
    }
}
