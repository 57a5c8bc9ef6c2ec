package surfeit.lab;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.blocks.SpotSource;

/** One unchanging state of the record, to be read within the call that handed it over. Not thread-safe. */
public interface ReadAccess {

    Optional<StoredSample> sample(String name);

    /** The sample as it was at a revision; empty where it has none such. */
    Optional<StoredSample> sample(String name, long revision);

    /** Samples by name, after one, at most {@code limit}. */
    List<StoredSample> samples(SampleFilter filter, Optional<String> afterName, int limit);

    /** Samples, the last changed first and of those changed at one time by name, at most {@code limit}. */
    List<StoredSample> recentSamples(RecentSamples wanted, int limit);

    /** Revisions of a sample from the first, after one, at most {@code limit}. */
    List<SampleRevision> sampleRevisions(String name, long after, int limit);

    /** Spots of a sample as of its revision, in the order of record, after the one numbered, at most {@code limit}. */
    List<StoredSpot> spots(StoredSample sample, SpotFilter filter, long after, int limit);

    /** The spots of a sample as of its revision, withdrawn ones left out; to be read within this call. */
    SpotSource spotSource(StoredSample sample);

    /** The spots up to where kept sums go, to be compared with these; reference spots all. */
    SpotSource spotSource(StoredSample sample, SumsMark upTo);

    /** How far the sums kept of a sample go, without reading them. */
    Map<GroupBy, SumsMark> sumsMarks(StoredSample sample);

    /** The notes kept beside the sums of a sample. */
    Map<GroupBy, byte[]> sumsNotes(StoredSample sample);

    /** Whether what is kept of a sample is as it was written. */
    boolean areSumsIntact(StoredSample sample, GroupBy by);

    /** All revisions of a spot, the first one first; empty where there is no such spot. */
    List<StoredSpot> spotRevisions(long spot);

    /** The present revision of a spot. */
    Optional<StoredSpot> spot(long spot);

    Optional<ImportReport> importReport(long number);

    /** The {@code part}th mebibyte of a file kept with an import, from 0; empty past its end. */
    Optional<byte[]> filePart(long importNumber, KeptFile.Kind kind, int part);

    /** The lab's own statement of an alloy, the present one. */
    Optional<StoredAlloy> alloy(String id);

    Optional<StoredAlloy> alloy(String id, long revision);

    /** The lab's own alloys, each at its present revision, by id. */
    List<StoredAlloy> alloys();

    Optional<StoredInterpretation> interpretation(long number);

    /** A frozen answer in one of the forms it is kept in; empty where it is not. */
    Optional<String> frozenText(long interpretation, String form);

    /** Frozen answers of a sample in the order they were stored, after the one numbered, at most {@code limit}. */
    List<StoredInterpretation> interpretations(String sample, long after, int limit);

    /** Frozen answers of a sample none of whose inputs has changed, in the order they were stored. */
    List<StoredInterpretation> freshInterpretations(String sample);

    /** Frozen answers made from an alloy none of whose inputs has changed, in the order they were stored. */
    List<StoredInterpretation> freshInterpretationsOfAlloy(String alloy);

    /** Events after one, in the order of record, at most {@code limit}. */
    List<LabEvent> events(EventFilter filter, long after, int limit);

    /** Number of the newest event; 0 where there is none. */
    long lastEvent();

    /** Number of the oldest event kept; 0 where there is none. */
    long firstEvent();

    AuditHead auditHead();

    /** Ends the audit had when backups were made that this record went through, the earliest first. */
    List<AuditHead> keptAuditHeads();

    /** Audit rows after one, in order, at most {@code limit}. */
    List<AuditEntry> audit(long after, int limit);

    /** What is on record, to be compared with the audit within this call. */
    RecordComparison recordComparison();

    /** All tokens in the order they were made. */
    List<KeptToken> tokens();

    /** The token whose hash begins with these hex digits; two tokens never share as many as are looked up by. */
    Optional<KeptToken> token(String hashBeginning);

    /** True where a token was ever made. */
    boolean hasTokens();

    /** The answer given to a request with this key, with the fingerprint of that request. */
    Optional<Kept> keptAnswer(String who, String key);

    /** An answer kept, and the request it answered. */
    record Kept(String fingerprint, KeptAnswer answer) {
    }
}
