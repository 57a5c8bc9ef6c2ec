package surfeit.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import surfeit.element.Spelling;
import surfeit.spot.Counts;
import surfeit.spot.ReportedValue;

/**
 * Reads what a workstation printed of one element: {@code 62,40}, {@code <0.3}, {@code n.d.}, or nothing.
 *
 * <ul>
 * <li>A number in percent, from -10 to 150; a small negative one is a measurement.
 * <li>{@code <0.3}, also {@code ≤}: below that limit.
 * <li>{@code n.d.}, {@code nd}, {@code n/d}, {@code bdl}, {@code <LOD}, {@code n.n.} and their like, in any case and
 *     with or without points and blanks: looked for, not detected.
 * <li>Empty, a dash, {@code n.a.}, {@code n/a}, {@code n.b.}, {@code k.A.}: the spot says nothing of the element. A dash
 *     is no zero and no limit.
 * </ul>
 * Everything else is refused. The text is kept without the blanks around it. An uncertainty is divided by the level it
 * is given at. Not thread-safe: one per upload.
 */
public final class ReportedValueReader {
    /** Lowest value that can be a measurement, as a fraction. */
    public static final double LOWEST = -0.10;
    /** Highest value that can be a measurement, as a fraction. */
    public static final double HIGHEST = 1.50;

    /** Longest name of an X-ray line; IUPAC names such as L3-M4,5 have seven characters. Judgement. */
    private static final int LINE_LENGTH_MAX = 20;
    private static final ReportedValue NOT_REPORTED = new ReportedValue.NotReported();
    private static final Set<String> NOT_DETECTED_WORDS = Set.of("nd", "n/d", "notdetected", "undetected", "bdl", "b/d",
        "belowdetectionlimit", "<lod", "<dl", "<mdl", "<lld", "<lloq", "<nwg", "nn",
        "nichtnachgewiesen", "nichtnachweisbar");
    private static final Set<String> NOT_REPORTED_WORDS = Set.of("-", "--", "---", "\u2013", "\u2014", "\u2212",
        "na", "n/a", "notanalysed", "notanalyzed", "notreported", "notmeasured", "nb", "nichtbestimmt",
        "nichtgemessen", "ka", "keineangabe");

    private final NumberReader numbers;
    private final int uLevel;

    /** @param uLevel how many standard uncertainties a stated uncertainty means: 1, 2 or 3 */
    public ReportedValueReader(NumberReader numbers, int uLevel) {
        this.numbers = numbers;
        this.uLevel = uLevel;
    }

    /**
     * What stands beside a value; a value that is no number keeps of it the limit alone.
     *
     * @param uncertainty standard uncertainty as a fraction
     * @param limit       detection limit as a fraction
     */
    public record Beside(OptionalDouble uncertainty, Optional<Counts> counts, OptionalDouble limit,
                         Optional<String> line) {
        public static final Beside NOTHING =
            new Beside(OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty(), Optional.empty());
    }

    /** The value a text says, with nothing beside it. @throws Refusal if the text is none */
    public ReportedValue value(String raw) {
        String text = CellText.strip(raw);
        if (text.isEmpty()) {
            return NOT_REPORTED;
        }
        if (startsNumber(text)) {
            refuseTwoInOne(text);
            return ReportedValue.Measured.of(measured(text), text);
        }
        String word = word(text);
        if (NOT_DETECTED_WORDS.contains(word)) {
            return new ReportedValue.NotDetected(OptionalDouble.empty(), text);
        }
        if (NOT_REPORTED_WORDS.contains(word)) {
            return NOT_REPORTED;
        }
        if (text.charAt(0) == '<' || text.charAt(0) == '\u2264') {
            int from = text.startsWith("<=") ? 2 : 1;
            return new ReportedValue.BelowLimit(limit(text.substring(from)), text);
        }
        throw PrintedNumber.isDate(text) ? NumberReader.date(text) : Refusal.expected(FaultCode.VALUE_OUT_OF_RANGE,
            "a number in percent, a limit such as <0.3, n.d., or nothing", Spelling.quoted(text));
    }

    /** A value together with what stands beside it. */
    public static ReportedValue with(ReportedValue value, Beside beside) {
        if (value instanceof ReportedValue.Measured measured) {
            return new ReportedValue.Measured(measured.fraction(), measured.asReported(), beside.uncertainty(),
                beside.counts(), beside.limit(), beside.line());
        }
        return value instanceof ReportedValue.NotDetected notDetected && beside.limit().isPresent()
            ? new ReportedValue.NotDetected(beside.limit(), notDetected.asReported())
            : value;
    }

    /** What of an uncertainty, of counts and of a limit a value cannot keep, in words; nothing for a measured one. */
    public static List<String> notKept(ReportedValue value, Beside beside) {
        if (value instanceof ReportedValue.Measured) {
            return List.of();
        }
        List<String> words = new ArrayList<>();
        beside.uncertainty().ifPresent(u -> words.add("u"));
        beside.counts().ifPresent(counts -> words.add("counts"));
        if (beside.limit().isPresent() && !limitOf(value).equals(beside.limit())) {
            words.add("limit");
        }
        return words;
    }

    private static OptionalDouble limitOf(ReportedValue value) {
        return value instanceof ReportedValue.BelowLimit below ? OptionalDouble.of(below.limitFraction())
            : value instanceof ReportedValue.NotDetected not ? not.limitFraction() : OptionalDouble.empty();
    }

    /** A measured value that names its line, unless it does so already. */
    static ReportedValue withLine(ReportedValue value, Optional<String> line) {
        return value instanceof ReportedValue.Measured measured && measured.line().isEmpty() && line.isPresent()
            ? new ReportedValue.Measured(measured.fraction(), measured.asReported(), measured.uncertainty(),
                measured.counts(), measured.limit(), line)
            : value;
    }

    /** A standard uncertainty as a fraction, from one printed in percent at the upload's level. */
    public double uncertainty(String text) {
        return uncertainty(text, uLevel);
    }

    /** A standard uncertainty as a fraction, from one printed in percent at a level of its own. */
    double uncertainty(String raw, int level) {
        String text = CellText.strip(raw);
        double fraction = numbers.percentAsFraction(text);
        if (fraction < 0 || fraction > HIGHEST) {
            throw Refusal.expected(FaultCode.VALUE_OUT_OF_RANGE, "an uncertainty from 0 to 150 %",
                Spelling.quoted(text));
        }
        return level == 1 ? fraction : fraction / level;
    }

    /** A detection limit as a fraction, from one printed in percent. */
    public double limit(String raw) {
        String text = CellText.strip(raw);
        double fraction = numbers.percentAsFraction(text);
        if (!(fraction > 0 && fraction <= 1)) {
            throw Refusal.expected(FaultCode.VALUE_OUT_OF_RANGE, "a detection limit above 0 and at most at 100 %",
                Spelling.quoted(text));
        }
        return fraction;
    }

    /** Net counts; negative ones are what a background subtraction may leave. */
    public double netCounts(String text) {
        return numbers.number(CellText.strip(text));
    }

    /** Background counts. */
    public double backgroundCounts(String text) {
        double counts = numbers.number(CellText.strip(text));
        if (counts < 0) {
            throw Refusal.expected(FaultCode.VALUE_OUT_OF_RANGE, "background counts of at least 0",
                Spelling.quoted(text));
        }
        return counts;
    }

    /** The X-ray line a value was read from, in the workstation's own words; empty where none is named. */
    public Optional<String> line(String raw) {
        String text = CellText.strip(raw);
        if (text.length() > LINE_LENGTH_MAX || text.chars().anyMatch(Character::isISOControl)) {
            throw Refusal.expected(FaultCode.VALUE_OUT_OF_RANGE, "an X-ray line such as K or La1",
                Spelling.quoted(text));
        }
        return text.isEmpty() ? Optional.empty() : Optional.of(text);
    }

    /** True for a text that says of an element that it was not detected, not reported, or below a limit. */
    static boolean isWord(String raw) {
        String text = CellText.strip(raw);
        return !text.isEmpty() && (text.charAt(0) == '<' || text.charAt(0) == '\u2264'
            || NOT_DETECTED_WORDS.contains(word(text)) || NOT_REPORTED_WORDS.contains(word(text)));
    }

    private double measured(String text) {
        double fraction = numbers.percentAsFraction(text);
        if (!(fraction >= LOWEST && fraction <= HIGHEST)) {
            throw Refusal.expected(FaultCode.VALUE_OUT_OF_RANGE, "a value from -10 to 150 %", Spelling.quoted(text));
        }
        return fraction;
    }

    /** A value and its uncertainty in one cell: of how many standard uncertainties, the cell does not say. */
    private static void refuseTwoInOne(String text) {
        if (text.indexOf('\u00B1') > 0 || text.indexOf('(') > 0 || text.contains("+-") || text.contains("+/-")) {
            throw Refusal.expected(FaultCode.VALUE_OUT_OF_RANGE, "a number alone, and its uncertainty in a column of its "
                + "own such as \"Ag at% u\" or \"Ag at% 2 sigma\"", Spelling.quoted(text));
        }
    }

    private static boolean startsNumber(String text) {
        char first = text.charAt(0);
        boolean signed = first == '-' || first == '+' || first == '\u2212';
        char c = signed && text.length() > 1 ? text.charAt(1) : first;
        return c >= '0' && c <= '9' || c == '.' || c == ',';
    }

    private static String word(String text) {
        StringBuilder word = new StringBuilder();
        for (char c : text.toLowerCase(Locale.ROOT).toCharArray()) {
            if (c != '.' && !CellText.isBlank(c)) {
                word.append(c);
            }
        }
        return word.toString();
    }
}
