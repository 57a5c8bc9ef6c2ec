package surfeit.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import surfeit.composition.Basis;

/**
 * The unit that a title or a note says of the whole table: {@code All values in weight%}, {@code Angaben in Atom-%}.
 *
 * <p>Only where it says nothing else: {@code Ag-28Cu (wt%)} names an alloy, whose unit need not be that of the table.
 */
final class TitleUnit {
    private static final int LENGTH_MAX = 80;
    private static final int UNIT_WORDS_MAX = 3;
    /** Words that say of a unit no more than that it is one. English and German, common practice, no source. */
    private static final Set<String> FILLERS = Set.of("all", "results", "result", "values", "value", "data", "numbers",
        "concentration", "concentrations", "composition", "in", "as", "are", "given", "unit", "units", "of", "the",
        "normalised", "normalized", "quantification", "analysis", "table",
        "alle", "ergebnisse", "ergebnis", "werte", "angaben", "angabe", "daten", "zahlen", "konzentration",
        "konzentrationen", "zusammensetzung", "sind", "einheit", "einheiten", "normiert", "auf", "to", "tabelle", "100",
        "100%", "gehalt", "gehalte");

    private TitleUnit() {
    }

    /** The unit, where the text is about nothing else. */
    static Optional<Basis> of(String text) {
        if (text.length() > LENGTH_MAX) {
            return Optional.empty();
        }
        List<String> words = words(text);
        Optional<Basis> unit = take(words);
        return unit.filter(basis -> words.stream().allMatch(word -> FILLERS.contains(word.toLowerCase(Locale.ROOT))));
    }

    private static List<String> words(String text) {
        String spaced = text.replaceAll("[\\[\\](){}_:;,=/\\s\u00A0\u202F]+", " ").replace(" %", "%").strip();
        return new ArrayList<>(List.of(spaced.split(" ")));
    }

    private static Optional<Basis> take(List<String> words) {
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
        return Optional.empty();
    }
}
