package surfeit.http;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import surfeit.http.json.Numbers;

/** Cells of a CSV answer: numbers as they are, texts so that no spreadsheet runs them as a formula. */
final class CsvCell {
    private static final String FORMULA_STARTS = "=+-@\t\r\n";
    private static final Pattern NUMBER = Pattern.compile("[+-]?\\d+([.,]\\d+)?");

    private CsvCell() {
    }

    /**
     * A text; where it starts like a formula and is no number, with an apostrophe in front (OWASP, "CSV Injection",
     * from memory).
     */
    static String text(String text) {
        boolean formula = startsFormula(text) || startsFormula(text.strip());
        return formula && !NUMBER.matcher(text).matches() ? "'" + text : text;
    }

    private static boolean startsFormula(String text) {
        return !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0;
    }

    static String text(Optional<String> text) {
        return text.map(CsvCell::text).orElse("");
    }

    static String number(OptionalDouble value) {
        return value.isPresent() && Double.isFinite(value.getAsDouble()) ? Double.toString(value.getAsDouble()) : "";
    }

    static String percent(OptionalDouble fraction) {
        return fraction.isPresent() ? percent(fraction.getAsDouble()) : "";
    }

    static String percent(double fraction) {
        return number(OptionalDouble.of(Numbers.inPercent(fraction)));
    }
}
