package surfeit.intake;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Tells the rows that a workstation or spreadsheet adds below the spots: totals, means, standard deviations, extremes,
 * in English and German. Only the whole name counts, so that a spot called "P1 mean" stays a spot.
 */
final class SummaryRows {
    private static final Set<String> NAMES = Set.of(
        "mean", "meanvalue", "average", "avg", "ave", "arithmeticmean", "median", "mittelwert", "mittel",
        "durchschnitt", "arithmetischesmittel",
        "stddev", "stdev", "stddeviation", "standarddeviation", "sd", "sigma", "\u03C3", "sigmamean",
        "1sigma", "2sigma", "3sigma",
        "standarderror", "stderror", "sem", "rsd", "relstddev", "cv", "variance",
        "standardabweichung", "stdabw", "stdabweichung", "standardabw", "standardfehler", "varianz", "relstdabw",
        "total", "totals", "sum", "summe", "gesamt", "gesamtsumme",
        "max", "maximum", "min", "minimum", "range", "spannweite", "count", "anzahl");

    private static final int LONGEST = 40;

    private SummaryRows() {
    }

    /** The name a summary row goes by; empty where the row is none. */
    static Optional<String> name(List<String> cells, TableHeader header) {
        int label = header.column(SpotField.LABEL);
        if (label < cells.size() && !CellText.isBlank(cells.get(label))) {
            return isName(cells.get(label)) ? Optional.of(CellText.strip(cells.get(label))) : Optional.empty();
        }
        return cells.stream().filter(SummaryRows::isName).findFirst().map(CellText::strip);
    }

    private static boolean isName(String cell) {
        if (cell.isEmpty() || cell.length() > LONGEST || Character.isDigit(cell.charAt(cell.length() - 1))) {
            return false;
        }
        StringBuilder name = new StringBuilder();
        for (char c : cell.toLowerCase(Locale.ROOT).toCharArray()) {
            if (Character.isLetterOrDigit(c)) {
                name.append(c);
            }
        }
        return NAMES.contains(name.toString());
    }
}
