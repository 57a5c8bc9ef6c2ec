package surfeit.intake;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * Words which say that numbers stand beside those of a spot, as its uncertainty or what it was before normalising, and
 * are no spot themselves: {@code Error 1}, {@code Spot 1 (1σ)}, {@code normalised}. English and German, common practice,
 * no source.
 */
final class BesideWords {
    /** Words that are no label, with a number or without. */
    private static final Set<String> NO_LABELS = Set.of("sigma", "\u03C3", "error", "err", "fehler", "uncertainty",
        "unsicherheit", "deviation", "abweichung", "\u00B1", "+-", "+/-", "counts", "cps", "intensity",
        "intensit\u00E4t", "norm", "normalised", "normalized", "normiert", "unnormalized", "unnormiert", "conc",
        "concentration", "konz", "konzentration");
    /** Words that may be the label of a spot where none other has the same one without them. */
    private static final Set<String> BESIDE = Set.of("u", "net", "background", "limit", "lod", "line", "std", "stdev",
        "stddev", "stdabw", "stabw", "sd", "dev");
    /** Those of them that may say where a spot lies. */
    private static final Set<String> PLACES = Set.of("net", "background", "line", "limit");
    private static final Pattern WORD = Pattern.compile("\\p{L}+|\\p{N}+|\u00B1|\\+/?-");
    /** The factor before a sigma; not the number of a spot, as in {@code P1 sigma} and {@code Spot 1 sigma}. */
    private static final Pattern FACTOR = Pattern.compile(
        "(?<![\\p{L}\\p{N}])[1-3](?=sigma|\u03C3)|\\([1-3]\\s+(?=sigma|\u03C3)");
    private static final String SIGNS = "\u00B1+/-";
    /** The usual symbol of a concentration. */
    private static final String CONCENTRATION = "c";
    /** Cut short in many ways. */
    private static final String NOT_NORMALISED = "unnormalised";
    private static final int SHORTEST = 3;

    private BesideWords() {
    }

    /** True for a text of nothing but such words and numbers, such as {@code Error 1}. */
    static boolean areAllOf(String text) {
        List<String> words = words(text);
        return words.stream().anyMatch(BesideWords::isNoLabel) && words.stream().allMatch(word ->
            isNoLabel(word) || word.equals(CONCENTRATION) || Character.isDigit(word.charAt(0)));
    }

    private static boolean isNoLabel(String word) {
        return NO_LABELS.contains(word) || word.length() >= SHORTEST && NOT_NORMALISED.startsWith(word);
    }

    /**
     * True for a row that holds no spot below that of a label: {@code P1 error} below {@code P1}, {@code ±} below any. With
     * a number behind it, as in {@code sigma 1}, such a word may be the name of a phase; {@code P1 background} may lie
     * beside P1.
     */
    static boolean areBelow(String spot, String label) {
        boolean mayBe = label.length() > spot.length() && label.contains(spot) || isNoLabel(firstWord(label));
        return mayBe && (areAllOf(label) && label.chars().noneMatch(Character::isDigit)
            || words(label).stream().noneMatch(PLACES::contains)
            && without(label).filter(rest -> rest.equals(words(spot))).isPresent());
    }

    private static String firstWord(String label) {
        int end = 0;
        while (end < label.length() && (Character.isLetter(label.charAt(end)) || SIGNS.indexOf(label.charAt(end)) >= 0)) {
            end++;
        }
        return label.substring(0, end).toLowerCase(Locale.ROOT);
    }

    /** The words of a label but for such words, where it has some: of {@code Spot 1 error} those of {@code Spot 1}. */
    static Optional<List<String>> without(String label) {
        List<String> words = words(label);
        List<String> rest = words.stream().filter(word -> !isNoLabel(word) && !BESIDE.contains(word)).toList();
        return rest.isEmpty() || rest.size() == words.size() ? Optional.empty() : Optional.of(rest);
    }

    /** Runs of letters, runs of digits, and signs of plus and minus; without the factor before a sigma. */
    static List<String> words(String text) {
        String plain = FACTOR.matcher(text.toLowerCase(Locale.ROOT)).replaceAll(" ");
        return WORD.matcher(plain).results().map(MatchResult::group).toList();
    }
}
