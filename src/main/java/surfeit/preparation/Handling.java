package surfeit.preparation;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import surfeit.element.Element;
import surfeit.spot.PreparationStep;
import surfeit.spot.Sample;

/**
 * What the lab says its sample sat on and was treated with, as far as the vocabulary knows the words. Immutable,
 * thread-safe.
 */
public final class Handling {
    /** Nothing stated. */
    public static final Handling NONE = new Handling(List.of(), List.of());

    private final List<Substance> substances;
    private final List<String> unknown;
    private final SortedSet<Element> elements = new TreeSet<>();
    private final Set<String> residues = new HashSet<>();
    private final Set<String> polishingResidues = new HashSet<>();

    private Handling(List<Substance> substances, List<String> unknown) {
        this.substances = List.copyOf(substances);
        this.unknown = List.copyOf(unknown);
        for (Substance substance : substances) {
            elements.addAll(substance.elements());
            substance.residue().ifPresent(residues::add);
            substance.residue().filter(id -> substance.kind() == Substance.Kind.POLISHING)
                .ifPresent(polishingResidues::add);
        }
    }

    /** What was recognised, each once, the mount first, then step by step. */
    public List<Substance> substances() {
        return substances;
    }

    /** Texts no word of which is known; kept as they came, nothing is assumed from them. */
    public List<String> unknown() {
        return unknown;
    }

    /** Elements that anything of it may bring. */
    public SortedSet<Element> elements() {
        return Collections.unmodifiableSortedSet(elements);
    }

    /** Ids of the compounds it leaves, in the table of residues. */
    public Set<String> residues() {
        return Collections.unmodifiableSet(residues);
    }

    /** Those that polishing leaves. */
    public Set<String> polishingResidues() {
        return Collections.unmodifiableSet(polishingResidues);
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
}
