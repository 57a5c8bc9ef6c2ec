package surfeit.http;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import surfeit.http.json.Numbers;
import surfeit.spot.FormulaGuard;

/** Cells of a CSV answer: numbers as they are, words so that no spreadsheet runs them as a formula. */
final class CsvCell {
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+[.,]?\\d*|[.,]\\d+)([eE][+-]?\\d{1,2})?");

    private CsvCell() {
    }

    /** Words; the table reader takes off again what is put before them. */
    static String text(String text) {
        return FormulaGuard.guarded(text);
    }

    static String text(Optional<String> text) {
        return text.map(CsvCell::text).orElse("");
    }

    /** A value as it was printed: a number stays one. */
    static String printed(String text) {
        return NUMBER.matcher(text).matches() ? text : FormulaGuard.guarded(text);
    }

    static String number(OptionalDouble value) {
        return value.isPresent() && Double.isFinite(value.getAsDouble()) ? Double.toString(value.getAsDouble()) : "";
    }

    /** A fraction that was stated as percent. */
    static String stated(OptionalDouble fraction) {
        return fraction.isPresent() ? stated(fraction.getAsDouble()) : "";
    }

    static String stated(double fraction) {
        return number(OptionalDouble.of(Numbers.stated(fraction)));
    }
}
