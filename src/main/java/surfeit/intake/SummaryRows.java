package surfeit.intake;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Tells the rows that a workstation, spreadsheet or chemist adds to the spots: totals, means, standard deviations,
 * extremes, what the alloy should hold, in English, German, French and Chinese (from memory). Only the whole name counts,
 * so that a spot called "P1 mean" stays a spot.
 */
final class SummaryRows {
    private static final Set<String> NAMES = Set.of(
        "mean", "meanvalue", "average", "avg", "ave", "arithmeticmean", "median", "mittelwert", "mittel",
        "durchschnitt", "\u00F8", "arithmetischesmittel", "mittelwerte", "mw", "means", "meanvalues",
        "stddev", "stdev", "stddeviation", "standarddeviation", "sd", "sigma", "\u03C3", "sigmamean",
        "1sigma", "2sigma", "3sigma",
        "standarderror", "stderror", "sem", "rsd", "relstddev", "cv", "variance",
        "standardabweichung", "stabw", "stabwn", "stdabw", "stdabweichung", "standardabw", "standardfehler", "varianz",
        "relstdabw",
        "total", "totals", "sum", "summe", "gesamt", "gesamtsumme",
        "difference", "differenz", "ratio", "verh\u00E4ltnis", "verhaeltnis",
        "max", "maximum", "min", "minimum", "range", "spannweite", "count", "anzahl",
        "moyenne", "\u00E9carttype", "ecarttype", "somme", "\u5E73\u5747\u503C", "\u6807\u51C6\u5DEE",
        "\u6807\u51C6\u504F\u5DEE", "\u6700\u5927\u503C", "\u6700\u5C0F\u503C", "\u603B\u8BA1");

    private static final Set<String> NOMINALS = Set.of("nominal", "nominalcomposition", "nominalvalue", "nominell",
        "nominalwert", "soll", "sollwert", "sollwerte", "sollzusammensetzung");
    private static final Set<String> TOTALS = Set.of("total", "totals", "sum", "summe", "gesamt", "somme");
    private static final int LONGEST = 40;
    /** How many spots a summary is of, behind its name: {@code Mean (n=3)}. */
    private static final Pattern NUMBER_OF_SPOTS =
        Pattern.compile("[(\\[]?\\s*[nN]\\s*=\\s*[0-9]{1,6}\\s*[)\\]]?\\s*$");
    /** Fewer words may be the label of a spot whose row was cut short. Judgement. */
    private static final int NOTE_WORDS = 3;

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

    /** The words of a row that holds nothing but them, as below a table; empty where the row may be a spot. */
    static Optional<String> note(List<String> cells) {
        List<String> filled = cells.stream().filter(cell -> !CellText.isBlank(cell)).map(CellText::strip).toList();
        return filled.size() == 1 && filled.get(0).split("[\\s\u00A0]+").length >= NOTE_WORDS
            ? Optional.of(filled.get(0)) : Optional.empty();
    }

    /** True for a cell that says of its row that it is the sum of those above. */
    static boolean isTotal(String cell) {
        return isName(cell) && TOTALS.contains(letters(cell));
    }

    /** True for a cell that says of what stands beside it that it is what the alloy should hold. */
    static boolean isNominal(String cell) {
        return isName(cell) && NOMINALS.contains(letters(cell));
    }

    /** True for the whole name of a summary, or of the nominal composition. */
    static boolean isName(String cell) {
        if (cell.isEmpty() || cell.length() > LONGEST) {
            return false;
        }
        String name = cell.indexOf('=') < 0 ? cell : CellText.strip(NUMBER_OF_SPOTS.matcher(cell).replaceFirst(""));
        if (name.isEmpty() || Character.isDigit(name.charAt(name.length() - 1))) {
            return false;
        }
        String letters = letters(name);
        return NAMES.contains(letters) || NOMINALS.contains(letters);
    }

    private static String letters(String cell) {
        StringBuilder name = new StringBuilder();
        for (char c : cell.toLowerCase(Locale.ROOT).toCharArray()) {
            if (Character.isLetterOrDigit(c)) {
                name.append(c);
            }
        }
        return name.toString();
    }
}
