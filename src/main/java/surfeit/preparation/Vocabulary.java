package surfeit.preparation;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import surfeit.element.Element;
import surfeit.element.ReferenceTable;

/**
 * The packaged words for mounts, media, residues, reagents and steps, and how they are found in a lab's free text.
 *
 * <p>Case, hyphens, punctuation and the spelling of umlauts do not matter; whole words only; of several phrases that
 * start at one word the longest counts, so "hot silicone oil" is not also "silicone oil". Bare materials ("copper")
 * count only where a mount is asked for: elsewhere they may name anything. Immutable, thread-safe.
 */
public final class Vocabulary {
    private final List<Substance> substances;
    private final Map<String, List<Phrase>> byFirstWord = new HashMap<>();

    /** A substance's word or synonym, taken apart. */
    private record Phrase(List<String> words, Substance substance, boolean onlyAsMount) {
        boolean startsAt(List<String> text, int at) {
            return at + words.size() <= text.size() && text.subList(at, at + words.size()).equals(words);
        }
    }

    private Vocabulary(ReferenceTable table) {
        List<Substance> all = new ArrayList<>();
        for (Map<String, String> row : table.rows()) {
            Substance substance = substance(row);
            all.add(substance);
            add(substance.word(), substance, false);
            substance.synonyms().forEach(synonym -> add(synonym, substance, false));
            list(row, "mount_words").forEach(bare -> add(bare, substance, true));
        }
        substances = List.copyOf(all);
        Comparator<Phrase> longestFirst = Comparator.comparingInt(phrase -> -phrase.words().size());
        byFirstWord.values().forEach(phrases -> phrases.sort(longestFirst));
    }

    private void add(String text, Substance substance, boolean onlyAsMount) {
        List<String> words = words(text);
        byFirstWord.computeIfAbsent(words.get(0), first -> new ArrayList<>())
            .add(new Phrase(words, substance, onlyAsMount));
    }

    /** The packaged vocabulary, read once. */
    public static Vocabulary standard() {
        return Holder.STANDARD;
    }

    public List<Substance> substances() {
        return substances;
    }

    /** The substances a free text names, in its order; none where no word of it is known. */
    public Set<Substance> find(String text, boolean asMount) {
        List<String> words = words(text);
        Set<Substance> found = new LinkedHashSet<>();
        int at = 0;
        while (at < words.size()) {
            Optional<Phrase> phrase = longestAt(words, at, asMount);
            phrase.ifPresent(known -> found.add(known.substance()));
            at += phrase.map(known -> known.words().size()).orElse(1);
        }
        return found;
    }

    private Optional<Phrase> longestAt(List<String> text, int at, boolean asMount) {
        for (Phrase phrase : byFirstWord.getOrDefault(text.get(at), List.of())) {
            if ((asMount || !phrase.onlyAsMount()) && phrase.startsAt(text, at)) {
                return Optional.of(phrase);
            }
        }
        return Optional.empty();
    }

    /** Lower case, umlauts spelt out, letters and digits only. */
    private static List<String> words(String text) {
        String plain = Normalizer.normalize(text, Normalizer.Form.NFKC).toLowerCase(Locale.ROOT)
            .replace("ä", "ae").replace("ö", "oe").replace("ü", "ue").replace("ß", "ss");
        return Arrays.stream(plain.split("[^\\p{L}\\p{N}]+")).filter(word -> !word.isEmpty()).toList();
    }

    private static Substance substance(Map<String, String> row) {
        Collection<Element> elements = list(row, "elements").stream().map(Element::of).toList();
        return new Substance(row.get("word"), list(row, "synonyms"),
            Substance.Kind.valueOf(row.get("kind").toUpperCase(Locale.ROOT)),
            Collections.unmodifiableSortedSet(new TreeSet<>(elements)),
            Optional.of(row.get("residue")).filter(id -> !id.isBlank()), list(row, "hazards"), row.get("source"));
    }

    static List<String> list(Map<String, String> row, String column) {
        return Arrays.stream(row.get(column).split(";")).map(String::strip).filter(text -> !text.isEmpty()).toList();
    }

    private static final class Holder {
        private static final Vocabulary STANDARD = new Vocabulary(ReferenceTable.vocabulary("materials.csv"));
    }
}
