package surfeit.lab;

import java.util.Optional;
import java.util.function.BiFunction;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.blocks.SpotSource;

/**
 * Answers a lab freezes: kept with the revisions they were made from, given again for ever as they were. Thread-safe.
 */
public final class Interpretations {
    private final Store store;
    private final Answers answers;

    Interpretations(Store store, Answers answers) {
        this.store = store;
        this.answers = answers;
    }

    /**
     * Freezes what the sample's spots show at this moment. The answer is made before the record is opened for writing,
     * so that nobody waits for it; where the sample or its alloy changes in between, it is made anew.
     *
     * @param text puts the answer, with the spots it was made from, into the forms it is to be kept in
     * @throws ProblemException not-found, too-few-elements
     */
    public StoredInterpretation freeze(String sample, GroupBy by, BiFunction<Segregation, SpotSource, FrozenAnswer> text,
                                       Occasion occasion) {
        Made early = store.read(access -> make(access, sample, by, text));
        return store.write(access -> {
            InputRevisions inputs = answers.inputRevisions(access, Lookups.sample(access, sample));
            Made made = early.inputs().equals(inputs) ? early : make(access, sample, by, text);
            StoredInterpretation stored = access.keepInterpretation(made.answer(), inputs, by, made.text(), occasion);
            access.append(Events.of(LabEvent.Type.INTERPRETATION_STORED, occasion, Optional.of(sample), stored.id()));
            access.audit(occasion, StoredInterpretation.STORED, Optional.of(sample), stored.id() + ": by " + by.word()
                + ", revision " + inputs.sample() + stored.alloy().map(id -> ", revision "
                + inputs.alloy().orElseThrow() + " of alloy " + id).orElse(""));
            return stored;
        });
    }

    /** An answer of one state of the record, in the forms it is to be kept in. */
    private record Made(InputRevisions inputs, Segregation answer, FrozenAnswer text) {
    }

    private Made make(ReadAccess access, String sample, GroupBy by,
                      BiFunction<Segregation, SpotSource, FrozenAnswer> text) {
        StoredSample present = Lookups.sample(access, sample);
        InputRevisions inputs = answers.inputRevisions(access, present);
        Segregation answer = answers.stored(access, present, inputs, by);
        return new Made(inputs, answer, text.apply(answer, access.spotSource(present)));
    }

    public StoredInterpretation find(String id) {
        return store.read(access -> Lookups.interpretation(access, id));
    }

    /** The frozen answer in one of its forms. */
    public String text(String id, String form) {
        return store.read(access -> access.frozenText(Lookups.interpretationNumber(id), form).orElseThrow(() ->
            new ProblemException(Problem.NOT_FOUND, "The stored interpretation " + id + " is not kept as " + form
                + "; it is kept as " + String.join(", ", Lookups.interpretation(access, id).checksums().keySet())
                + ".")));
    }

    /** The frozen answers of a sample in the order they were stored. */
    public Page<StoredInterpretation> list(String sample, PageRequest page) {
        return store.read(access -> {
            Lookups.sample(access, sample);
            long after = page.after().map(Lookups::interpretationKey).orElse(0L);
            return Page.of(access.interpretations(sample, after, page.size() + 1), page.size(),
                StoredInterpretation::id);
        });
    }
}
