package surfeit.lab;

import java.util.Collections;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import surfeit.segregation.answer.GroupBy;

/**
 * A frozen answer on record: what it was made from and with. Nothing of it ever changes but that {@code stale} is
 * filled in, once, by the first change of an input.
 *
 * @param id        its public id
 * @param sample    name of the sample
 * @param by        how the spots were grouped
 * @param stored    by whom and when it was frozen
 * @param alloy     the alloy the sample names, for its nominal or its phases; absent where it names none
 * @param inputs    the revisions it was made from; the sample's says which revision of which spot entered
 * @param madeWith  the method, program and tables it was made with
 * @param checksums SHA-256 in hex of each form that is kept, by the form's name
 * @param stale     the first change of an input since
 */
public record StoredInterpretation(String id, String sample, GroupBy by, Occasion stored, Optional<String> alloy,
                                   InputRevisions inputs, MadeWith madeWith, SortedMap<String, String> checksums,
                                   Optional<InputChange> stale) {
    /** What the audit calls the freezing of an answer. */
    public static final String STORED = "interpretation stored";
    /** What the audit calls the first change of one of its inputs. */
    public static final String TURNED_STALE = "interpretation stale";

    public StoredInterpretation {
        checksums = Collections.unmodifiableSortedMap(new TreeMap<>(checksums));
        if (alloy.isPresent() != inputs.alloy().isPresent()) {
            throw new IllegalArgumentException("An alloy and its revision come together.");
        }
    }
}
