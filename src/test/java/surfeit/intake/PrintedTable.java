package surfeit.intake;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import surfeit.spot.FormulaGuard;

/** Prints spots as tables in every dialect, for reading them back. */
record PrintedTable(List<PrintedSpot> spots, char delimiter, char decimal, String lineEnd, Encoding encoding,
    boolean sepLine,
                    boolean quoteAll) {

    /** How the text becomes bytes; windows-1252 must be stated, since its bytes can happen to be valid UTF-8. */
    enum Encoding {
        UTF_8(StandardCharsets.UTF_8, false), UTF_8_MARKED(StandardCharsets.UTF_8, true),
        UTF_16LE_MARKED(StandardCharsets.UTF_16LE, true), UTF_16BE_MARKED(StandardCharsets.UTF_16BE, true),
        WINDOWS_1252(Charset.forName("windows-1252"), false);

        private final Charset charset;
        private final boolean marked;

        Encoding(Charset charset, boolean marked) {
            this.charset = charset;
            this.marked = marked;
        }
    }

    /** What a table says of one spot; values as printed with a decimal point, empty where there is none. */
    record PrintedSpot(String label, String particle, String feature, Map<String, String> values, Map<String,
        String> us) {
    }

    StatedDialect stated() {
        return encoding == Encoding.WINDOWS_1252 ? StatedDialect.NOTHING.withCharset("windows-1252")
            : StatedDialect.NOTHING;
    }

    /** One spot a row. */
    byte[] wide() {
        Set<String> elements = new LinkedHashSet<>();
        spots.forEach(spot -> elements.addAll(spot.values().keySet()));
        List<String> header = new ArrayList<>(List.of("label", "particle", "feature"));
        elements.forEach(element -> header.addAll(List.of(element + " at%", element + " at% u")));
        List<List<String>> rows = new ArrayList<>(List.of(header));
        for (PrintedSpot spot : spots) {
            List<String> row = new ArrayList<>(words(spot));
            for (String element : elements) {
                row.add(number(spot.values().getOrDefault(element, "")));
                row.add(number(spot.us().getOrDefault(element, "")));
            }
            rows.add(row);
        }
        return bytes(rows);
    }

    /** One element a row. */
    byte[] inLongForm() {
        List<List<String>> rows = new ArrayList<>(List.of(List.of("label", "particle", "feature", "element", "at%",
            "u")));
        for (PrintedSpot spot : spots) {
            spot.values().forEach((element, value) -> {
                List<String> row = new ArrayList<>(words(spot));
                row.addAll(List.of(element, number(value), number(spot.us().getOrDefault(element, ""))));
                rows.add(row);
            });
        }
        return bytes(rows);
    }

    /** A value as this dialect prints it. */
    String number(String value) {
        return value.startsWith("n") ? value : value.replace('.', decimal);
    }

    private static List<String> words(PrintedSpot spot) {
        return List.of(FormulaGuard.guarded(spot.label()), FormulaGuard.guarded(spot.particle()),
            FormulaGuard.guarded(spot.feature()));
    }

    private byte[] bytes(List<List<String>> rows) {
        StringBuilder text = new StringBuilder(encoding.marked ? "\uFEFF" : "");
        if (sepLine) {
            text.append("sep=").append(delimiter).append(lineEnd);
        }
        for (List<String> row : rows) {
            text.append(String.join(String.valueOf(delimiter), row.stream().map(this::quoted).toList()))
                .append(lineEnd);
        }
        return text.toString().getBytes(encoding.charset);
    }

    private String quoted(String cell) {
        return quoteAll || cell.indexOf(delimiter) >= 0 || cell.indexOf('"') >= 0 ? '"' + cell.replace("\"", "\"\"")
            + '"' : cell;
    }

    /** The texts a spot should be read with, element by element. */
    Map<String, String> expectedTexts(PrintedSpot spot) {
        Map<String, String> texts = new LinkedHashMap<>();
        spot.values().forEach((element, value) -> texts.put(element, number(value)));
        return texts;
    }

    Optional<Character> expectedDecimal() {
        boolean marked = spots.stream().anyMatch(spot -> spot.values().values().stream()
            .anyMatch(value -> value.matches("[<-]*\\d+\\.\\d+"))
            || spot.us().values().stream().anyMatch(u -> u.contains(".")));
        return marked ? Optional.of(decimal) : Optional.empty();
    }
}
