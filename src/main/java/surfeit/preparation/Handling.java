package surfeit.preparation;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import surfeit.element.Element;
import surfeit.spot.PreparationStep;
import surfeit.spot.Sample;

/**
 * What the lab says its sample sat on and was treated with, as far as the vocabulary knows the words.
 *
 * @param substances what was recognised, each once, the mount first, then step by step
 * @param unknown    texts no word of which is known; kept as they came, nothing is assumed from them
 */
public record Handling(List<Substance> substances, List<String> unknown) {
    /** Nothing stated. */
    public static final Handling NONE = new Handling(List.of(), List.of());

    public Handling {
        substances = List.copyOf(substances);
        unknown = List.copyOf(unknown);
    }

    /** Reads a sample's mount and preparation. */
    public static Handling of(Sample sample) {
        return of(sample.mount(), sample.preparation());
    }

    /** Reads a mount and steps of preparation; a step is its words and its reagent's together. */
    public static Handling of(Optional<String> mount, List<PreparationStep> steps) {
        if (mount.isEmpty() && steps.isEmpty()) {
            return NONE;
        }
        Set<Substance> found = new LinkedHashSet<>();
        List<String> unknown = new ArrayList<>();
        mount.ifPresent(text -> read(text, true, found, unknown));
        for (PreparationStep step : steps) {
            read(step.step(), false, found, unknown);
            step.reagent().ifPresent(text -> read(text, false, found, unknown));
        }
        return new Handling(List.copyOf(found), unknown);
    }

    private static void read(String text, boolean asMount, Set<Substance> found, List<String> unknown) {
        Set<Substance> known = Vocabulary.standard().find(text, asMount);
        found.addAll(known);
        if (known.isEmpty() && !text.isBlank()) {
            unknown.add(text.strip());
        }
    }

    /** The substances of one kind. */
    public List<Substance> ofKind(Substance.Kind kind) {
        List<Substance> found = new ArrayList<>(substances.size());
        for (Substance substance : substances) {
            if (substance.kind() == kind) {
                found.add(substance);
            }
        }
        return found;
    }

    /** True where something stated leaves this compound of the table of residues. */
    public boolean leaves(String residueId) {
        return substances.stream().anyMatch(substance -> substance.residue().filter(residueId::equals).isPresent());
    }

    /** The substances that bring an element, coatings and mounts apart from everything else by their kind. */
    public List<Substance> bringing(Element element) {
        return substances.stream().filter(substance -> substance.brings(element)).toList();
    }
}
