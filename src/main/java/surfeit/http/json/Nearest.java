package surfeit.http.json;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Finds the known word a mistyped one most likely meant, by the fewest letters to change. */
public final class Nearest {
    private Nearest() {
    }

    /** The end of a refusal: {@code "; nearest known: tilt_deg."}, or all known words where none is near. */
    public static String hint(String word, Collection<String> known) {
        return of(word, known).map(nearest -> "; nearest known: " + nearest + ".")
            .orElse(known.isEmpty() ? "; none is known here." : "; known: " + String.join(", ", known) + ".");
    }

    /** The nearest known word, if at most half of its letters differ. */
    public static Optional<String> of(String word, Collection<String> known) {
        String wanted = plain(word);
        return known.stream()
            .map(candidate -> Map.entry(candidate, score(wanted, plain(candidate))))
            .filter(entry -> 2 * entry.getValue() <= Math.max(wanted.length(), 2))
            .min(Comparator.comparingInt(Map.Entry::getValue))
            .map(Map.Entry::getKey);
    }

    private static String plain(String word) {
        return word.toLowerCase(Locale.ROOT).replace('-', '_').replace(' ', '_');
    }

    /** A word that only lacks its unit, "beam_energy" for "beam_energy_kev", counts as one letter off. */
    private static int score(String wanted, String candidate) {
        boolean unitMissing = wanted.length() >= 4 && (candidate.startsWith(wanted + "_") || wanted.startsWith(candidate + "_"));
        return unitMissing ? 1 : distance(wanted, candidate);
    }

    /** Letters to insert, drop or change (Levenshtein 1966), over at most the first 64. */
    private static int distance(String a, String b) {
        int columns = Math.min(b.length(), 64);
        int[] row = new int[columns + 1];
        for (int j = 0; j <= columns; j++) {
            row[j] = j;
        }
        for (int i = 1; i <= Math.min(a.length(), 64); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= columns; j++) {
                int change = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(change, 1 + Math.min(diagonal, row[j - 1]));
            }
        }
        return row[columns] + Math.max(a.length() - 64, 0);
    }
}
