package surfeit.composition;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import surfeit.element.Element;
import surfeit.element.Spelling;

/**
 * A nominal composition in one line, in percent: {@code Ag:60.1,Cu:39.9+-0.5} or {@code Fe:bal;Cr:16-18}.
 *
 * <p>Elements are parted by commas or semicolons. After the colon stands a number, a range {@code 16-18}, a number
 * with its tolerance {@code 39.9+-0.5} (also {@code ±}), or {@code bal} or {@code balance}. Decimals are written
 * with a point. What could mean two things is refused, not guessed: a blank on one side of the dash only may be a plus
 * sign lost in an address.
 */
public final class NominalText {
    private static final String NUMBER = "(\\d{1,9}(?:\\.\\d{1,40})?|\\.\\d{1,40})";
    private static final Pattern PART = Pattern.compile("([^:]*?)\\s*:\\s*(.*)");
    private static final Pattern VALUE = Pattern.compile(NUMBER);
    private static final Pattern RANGE = Pattern.compile(NUMBER + "(?:[-–]|\\s+[-–]\\s+)" + NUMBER);
    private static final Pattern TOLERANCE = Pattern.compile(NUMBER + "\\s*(?:\\+-|±)\\s*" + NUMBER);
    private static final Pattern LOST_PLUS = Pattern.compile(NUMBER + "\\s+-" + NUMBER);
    private static final Pattern DIGITS = Pattern.compile("\\d+");

    private NominalText() {
    }

    /** Reads a nominal. @throws CompositionException what was expected, what came and in which part */
    public static Nominal parse(String text, Basis basis) {
        String[] items = text.split("[,;]", -1);
        Map<Element, NominalPart> parts = new LinkedHashMap<>();
        for (int i = 0; i < items.length; i++) {
            String item = items[i].strip();
            Matcher matcher = PART.matcher(item);
            if (!matcher.matches()) {
                String hint = DIGITS.matcher(item).matches() ? "; decimals are written with a point" : "";
                throw unreadable(i, "Expected an element with its percentage such as Ag:60.1, got "
                    + Spelling.quoted(item) + hint);
            }
            Element element = Element.of(matcher.group(1));
            if (parts.containsKey(element)) {
                throw unreadable(i, "Expected each element once, got " + element + " again");
            }
            parts.put(element, part(i, element, matcher.group(2)));
        }
        return new Nominal(basis, parts);
    }

    /** Writes a nominal so that {@link #parse} reads the very same from it. */
    public static String format(Nominal nominal) {
        return nominal.parts().entrySet().stream()
            .map(entry -> entry.getKey() + ":" + format(entry.getValue()))
            .collect(Collectors.joining(","));
    }

    private static NominalPart part(int index, Element element, String text) {
        if (List.of("bal", "balance").contains(text.toLowerCase(Locale.ROOT))) {
            return new NominalPart.Balance();
        }
        Matcher value = VALUE.matcher(text);
        if (value.matches()) {
            return NominalPart.Point.exact(fraction(value.group(1)));
        }
        Matcher range = RANGE.matcher(text);
        if (range.matches()) {
            return new NominalPart.Range(fraction(range.group(1)), fraction(range.group(2)));
        }
        Matcher tolerance = TOLERANCE.matcher(text);
        if (tolerance.matches()) {
            return new NominalPart.Point(fraction(tolerance.group(1)), fraction(tolerance.group(2)));
        }
        String hint = LOST_PLUS.matcher(text).matches() ? "; in an address a plus sign is written %2B" : "";
        throw unreadable(index, "Expected for " + element + " a number of percent, a range such as 16-18, a tolerance"
            + " such as 39.9+-0.5, or bal, got " + Spelling.quoted(text) + hint);
    }

    private static double fraction(String percent) {
        return Percent.toFraction(new BigDecimal(percent));
    }

    private static String format(NominalPart part) {
        if (part instanceof NominalPart.Point point) {
            return percent(point.value()) + (point.tolerance() == 0 ? "" : "+-" + percent(point.tolerance()));
        }
        return part instanceof NominalPart.Range range ? percent(range.low()) + "-" + percent(range.high()) : "bal";
    }

    private static String percent(double fraction) {
        return Percent.ofFraction(fraction).toPlainString();
    }

    private static CompositionException unreadable(int index, String message) {
        return new CompositionException(CompositionException.Kind.UNREADABLE,
            message + " (part " + (index + 1) + " of the nominal).");
    }
}
