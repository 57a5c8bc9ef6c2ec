package surfeit.preparation;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import surfeit.element.Element;

/**
 * A material, reagent or step of the vocabulary, and what it may leave on a sample. Immutable, thread-safe.
 *
 * @param word     the vocabulary's own word for it
 * @param synonyms other words for it, English and German
 * @param elements elements it may bring; hydrogen is left out, no X-ray shows it
 * @param residue  id of the compound it leaves, in the table of residues, if it leaves a definite one
 * @param hazards  hazard classes of the table of cautions
 * @param source   where the row is from
 */
public record Substance(String word, List<String> synonyms, Kind kind, SortedSet<Element> elements,
                        Optional<String> residue, List<String> hazards, String source) {

    /** What the lab uses it for. */
    public enum Kind {
        MOUNT, COATING, POLISHING, OIL, RESIDUE, SOLVENT, FLUX, ETCHANT, TOOL, STEP
    }

    public Substance {
        synonyms = List.copyOf(synonyms);
        elements = Collections.unmodifiableSortedSet(new TreeSet<>(elements));
        hazards = List.copyOf(hazards);
        if (word.isBlank()) {
            throw new IllegalArgumentException("A substance of the vocabulary needs a word.");
        }
    }

    public boolean brings(Element element) {
        return elements.contains(element);
    }
}
