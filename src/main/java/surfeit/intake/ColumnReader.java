package surfeit.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import surfeit.composition.Basis;
import surfeit.element.Element;
import surfeit.element.ElementTable;

/**
 * Reads one column header: a field of the spot, or element, unit and quantity in any order.
 *
 * <p>{@code Ag at%}, {@code Ag (at.%)}, {@code Ag [wt%]}, {@code Ag K atomic %}, {@code at% Ag}, {@code Ag at% u},
 * {@code Ag at% 2 sigma}, {@code Cu net counts}, {@code Cu background counts}, {@code Cu at% limit}, {@code AgL at%},
 * {@code silver at%}. Symbols are matched exactly: CO is not cobalt. Brackets, underscores, colons and slashes count as blanks.
 */
final class ColumnReader {
    private static final Pattern LINE = Pattern.compile("[KLMN]([abg\u03B1\u03B2\u03B3][0-9]{0,2}([,-][0-9])?)?");
    private static final Pattern LINE_SUFFIX = Pattern.compile("(?i)series|shell|lines?|serie|linie");
    private static final Pattern ELEMENT_NAMES =
        Pattern.compile("elements?|elemente|elem\\.?|el\\.?|symbol|\u00E9l\u00E9ment|\u5143\u7D20",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    private static final int UNIT_WORDS_MAX = 3;
    /** Longer texts are no names of columns. Judgement; it bounds the work a header can cause. */
    private static final int LENGTH_MAX = 200;
    private static final Map<String, ColumnMeaning.Kind> KINDS = Map.ofEntries(
        Map.entry("", ColumnMeaning.Kind.VALUE),
        Map.entry("value", ColumnMeaning.Kind.VALUE),
        Map.entry("concentration", ColumnMeaning.Kind.VALUE),
        Map.entry("conc", ColumnMeaning.Kind.VALUE),
        Map.entry("conc.", ColumnMeaning.Kind.VALUE),
        Map.entry("u", ColumnMeaning.Kind.UNCERTAINTY),
        Map.entry("uncertainty", ColumnMeaning.Kind.UNCERTAINTY),
        Map.entry("standard uncertainty", ColumnMeaning.Kind.UNCERTAINTY),
        Map.entry("sigma", ColumnMeaning.Kind.UNCERTAINTY),
        Map.entry("\u03C3", ColumnMeaning.Kind.UNCERTAINTY),
        Map.entry("net", ColumnMeaning.Kind.NET_COUNTS),
        Map.entry("net counts", ColumnMeaning.Kind.NET_COUNTS),
        Map.entry("background", ColumnMeaning.Kind.BACKGROUND_COUNTS),
        Map.entry("background counts", ColumnMeaning.Kind.BACKGROUND_COUNTS),
        Map.entry("bkg counts", ColumnMeaning.Kind.BACKGROUND_COUNTS),
        Map.entry("limit", ColumnMeaning.Kind.LIMIT),
        Map.entry("detection limit", ColumnMeaning.Kind.LIMIT),
        Map.entry("lod", ColumnMeaning.Kind.LIMIT),
        Map.entry("mdl", ColumnMeaning.Kind.LIMIT),
        Map.entry("line", ColumnMeaning.Kind.LINE),
        Map.entry("x-ray line", ColumnMeaning.Kind.LINE));

    private ColumnReader() {
    }

    static ColumnMeaning read(String header) {
        String text = CellText.strip(header);
        if (text.isEmpty()) {
            return new ColumnMeaning.Nameless();
        }
        if (text.length() > LENGTH_MAX) {
            return new ColumnMeaning.Other();
        }
        Optional<SpotField> field = SpotField.named(text);
        if (field.isPresent()) {
            return new ColumnMeaning.Field(field.get(), field.get().isOwnName(text));
        }
        List<String> words = words(text);
        if (words.size() == 1 && ELEMENT_NAMES.matcher(words.get(0)).matches()) {
            return new ColumnMeaning.ElementNames();
        }
        Optional<Basis> basis = takeUnit(words);
        Optional<Element> element = takeElement(words, basis.isPresent());
        Optional<String> line = element.isPresent() ? takeLine(words) : Optional.empty();
        int level = takeLevel(words);
        return meaning(element, basis, line, level, words);
    }

    private static ColumnMeaning meaning(Optional<Element> element, Optional<Basis> basis, Optional<String> line,
                                         int level, List<String> words) {
        String rest = String.join(" ", words);
        ColumnMeaning.Kind kind = KINDS.getOrDefault(rest.toLowerCase(Locale.ROOT), ColumnMeaning.Kind.UNCLEAR);
        boolean unclear = kind == ColumnMeaning.Kind.UNCLEAR || level > 0 && kind != ColumnMeaning.Kind.UNCERTAINTY;
        if (unclear && element.isEmpty() && basis.isPresent()) {
            return new ColumnMeaning.UnknownElement(rest, nearest(words));
        }
        boolean saysNothing = element.isEmpty() && basis.isEmpty() && rest.isEmpty();
        if (unclear && (element.isEmpty() || basis.isEmpty()) || saysNothing) {
            return new ColumnMeaning.Other();
        }
        return new ColumnMeaning.Quantity(
            element, unclear ? ColumnMeaning.Kind.UNCLEAR : kind, basis, level, line, rest);
    }

    private static Optional<String> nearest(List<String> words) {
        return words.stream().findFirst().flatMap(ElementTable.standard()::nearestSymbol);
    }

    private static List<String> words(String text) {
        String spaced = text.replace('\uFF05', '%').replaceAll("-\\s*%", "%")
            .replaceAll("[\\[\\](){}_:/\\s\u00A0\u202F\uFF08\uFF09]+", " ");
        return new ArrayList<>(List.of(spaced.strip().split(" ")));
    }

    private static Optional<Basis> takeUnit(List<String> words) {
        for (int count = Math.min(UNIT_WORDS_MAX, words.size()); count >= 1; count--) {
            for (int from = 0; from + count <= words.size(); from++) {
                List<String> some = words.subList(from, from + count);
                Optional<Basis> basis = UnitWords.basis(String.join("", some));
                if (basis.isPresent()) {
                    some.clear();
                    return basis;
                }
            }
        }
        words.remove("%");
        return Optional.empty();
    }

    /** @param sure true where a unit tells that this is a column of an element */
    private static Optional<Element> takeElement(List<String> words, boolean sure) {
        for (int i = 0; i < words.size(); i++) {
            String word = words.get(i);
            int dash = word.indexOf('-');
            Optional<ElementText> read = ElementText.read(dash > 0 ? word.substring(0, dash) : word)
                .filter(text -> sure || text.isCertainAlone());
            if (read.isPresent()) {
                words.remove(i);
                if (dash > 0) {
                    words.add(i, word.substring(dash + 1));
                }
                read.get().line().ifPresent(line -> words.add(0, line));
                return Optional.of(read.get().element());
            }
        }
        return Optional.empty();
    }

    /** The element of a cell such as {@code Ag}, {@code AgL}, {@code Ag La1} or {@code silver}. */
    static Optional<ElementText> element(String cell) {
        List<String> words = words(cell);
        Optional<ElementText> first = ElementText.read(words.get(0));
        if (first.isEmpty() || words.size() == 1) {
            return first;
        }
        words.remove(0);
        Optional<String> line = takeLine(words);
        return first.filter(text -> line.isPresent() && words.isEmpty() && text.line().isEmpty())
            .map(text -> new ElementText(text.element(), line, true));
    }

    private static Optional<String> takeLine(List<String> words) {
        for (int i = 0; i < words.size(); i++) {
            if (LINE.matcher(words.get(i)).matches()) {
                String line = words.remove(i);
                if (i < words.size() && LINE_SUFFIX.matcher(words.get(i)).matches()) {
                    words.remove(i);
                }
                return Optional.of(line);
            }
        }
        return Optional.empty();
    }

    /** Takes the number out of {@code 2 sigma} and {@code 2σ}; 0 where there is none. */
    private static int takeLevel(List<String> words) {
        for (int i = 0; i < words.size(); i++) {
            String word = words.get(i);
            if (!word.isEmpty() && word.charAt(0) >= '1' && word.charAt(0) <= '3'
                && word.substring(1).matches("(?i)|sigma|\u03C3")) {
                words.set(i, word.substring(1));
                if (words.get(i).isEmpty()) {
                    words.remove(i);
                }
                return word.charAt(0) - '0';
            }
        }
        return 0;
    }
}
