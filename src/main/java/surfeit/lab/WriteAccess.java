package surfeit.lab;

import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import surfeit.composition.Alloy;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.blocks.SampleSums;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/** The record, open for writing within the call that handed it over. Not thread-safe. */
public interface WriteAccess extends ReadAccess {

    /** Gives a sample its description, as a new sample or a new revision. */
    StoredSample describe(String name, Sample sample, Occasion occasion);

    /** Starts an import into a sample; nothing of it is seen until it is finished. */
    SpotImportAccess startImport(StoredSample sample, Occasion occasion);

    /** Records a further revision of a spot. */
    StoredSpot revise(StoredSpot present, Spot spot, boolean withdrawn, String reason, Occasion occasion);

    /**
     * Keeps sums of all spots of the sample on record, in place of those kept before.
     *
     * @param sums the sums; empty to note that this sample has none that can be kept
     */
    void keepSums(StoredSample present, GroupBy by, Optional<SampleSums> sums);

    /** Forgets the sums kept of a sample, groups put together so. */
    void forgetSums(StoredSample sample, GroupBy by);

    StoredAlloy defineAlloy(Alloy alloy, Occasion occasion);

    /** Keeps an answer for ever, with the revisions it was made from. */
    StoredInterpretation keepInterpretation(Segregation answer, InputRevisions inputs, GroupBy by, FrozenAnswer frozen,
                                            Occasion occasion);

    /** Says that an input of a frozen answer has changed; for each answer once. */
    void markStale(StoredInterpretation interpretation, InputChange change);

    /** Appends to the events; the id of the one given is ignored. @return the event with its id */
    LabEvent append(LabEvent event);

    /** Forgets the events before the first one recorded at a time or later; the newest one always stays. */
    void forgetEvents(Instant before);

    /**
     * Appends to the audit, chained to the row before, with the hash of what was recorded since. Whatever records
     * something audits it before anything else is recorded.
     */
    void audit(Occasion occasion, String what, Optional<String> sample, String detail);

    /** Keeps a token by the SHA-256 of its secret. */
    Token addToken(String name, Set<TokenScope> scopes, Instant expires, String sha256, Occasion occasion);

    void revokeToken(long number, Occasion occasion);

    void keepAnswer(RepeatKey key, KeptAnswer answer, Instant when);

    /** Forgets answers kept before a time. */
    void forgetAnswers(Instant before);

    /**
     * Has work done at the end of the transaction, by whoever asks first for the same thing; it is done, too, where the
     * one who asked is taken back. Where it fails, so does the whole transaction.
     */
    void last(String thing, Consumer<WriteAccess> work);

    /** Does all of the work or, where it throws, takes back just that. */
    <T> T nested(Function<WriteAccess, T> work);

    /** Does the work, then takes back just that. */
    <T> T rehearse(Function<WriteAccess, T> work);
}
