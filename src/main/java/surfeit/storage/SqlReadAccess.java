package surfeit.storage;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import surfeit.lab.AuditEntry;
import surfeit.lab.AuditHead;
import surfeit.lab.EventFilter;
import surfeit.lab.ImportReport;
import surfeit.lab.KeptFile;
import surfeit.lab.KeptToken;
import surfeit.lab.LabEvent;
import surfeit.lab.ReadAccess;
import surfeit.lab.RecentSamples;
import surfeit.lab.RecordComparison;
import surfeit.lab.SampleFilter;
import surfeit.lab.SampleRevision;
import surfeit.lab.SpotFilter;
import surfeit.lab.StoredAlloy;
import surfeit.lab.StoredInterpretation;
import surfeit.lab.StoredSample;
import surfeit.lab.StoredSpot;
import surfeit.lab.SumsMark;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.blocks.SpotSource;

/** The record as one transaction sees it. Not thread-safe. */
class SqlReadAccess implements ReadAccess {
    final Handle handle;
    final SqlSamples samples;
    final SqlSpots spots;
    final SqlSums sums;
    final SqlImports imports;
    final SqlAlloys alloys;
    final SqlEvents events;
    final SqlAudit audit;
    final SqlAnswers answers;
    final SqlTokens tokens;
    final SqlInterpretations interpretations;

    SqlReadAccess(Handle handle) {
        this.handle = handle;
        this.samples = new SqlSamples(handle);
        this.spots = new SqlSpots(handle, samples);
        this.sums = new SqlSums(handle, samples);
        this.imports = new SqlImports(handle);
        this.alloys = new SqlAlloys(handle);
        this.events = new SqlEvents(handle);
        this.audit = new SqlAudit(handle);
        this.answers = new SqlAnswers(handle);
        this.tokens = new SqlTokens(handle);
        this.interpretations = new SqlInterpretations(handle, samples);
    }

    @Override
    public Optional<StoredSample> sample(String name) {
        return samples.find(name);
    }

    @Override
    public Optional<StoredSample> sample(String name, long revision) {
        return samples.find(name, revision);
    }

    @Override
    public List<StoredSample> samples(SampleFilter filter, Optional<String> afterName, int limit) {
        return samples.list(filter, afterName, limit);
    }

    @Override
    public List<StoredSample> recentSamples(RecentSamples wanted, int limit) {
        return samples.recent(wanted, limit);
    }

    @Override
    public List<SampleRevision> sampleRevisions(String name, long after, int limit) {
        return samples.revisions(name, after, limit);
    }

    @Override
    public List<StoredSpot> spots(StoredSample sample, SpotFilter filter, long after, int limit) {
        return spots.list(sample, filter, after, limit);
    }

    @Override
    public SpotSource spotSource(StoredSample sample) {
        return spots.source(sample, sums);
    }

    @Override
    public SpotSource spotSource(StoredSample sample, SumsMark upTo) {
        return spots.sourceUpTo(sample, sums, upTo.lastSpot());
    }

    @Override
    public Map<GroupBy, SumsMark> sumsMarks(StoredSample sample) {
        return sums.marks(sample);
    }

    @Override
    public Map<GroupBy, byte[]> sumsNotes(StoredSample sample) {
        return sums.notes(sample);
    }

    @Override
    public boolean areSumsIntact(StoredSample sample, GroupBy by) {
        return sums.isIntact(sample, by);
    }

    @Override
    public List<StoredSpot> spotRevisions(long spot) {
        return spots.revisions(spot);
    }

    @Override
    public Optional<StoredSpot> spot(long spot) {
        return spots.find(spot);
    }

    @Override
    public Optional<ImportReport> importReport(long number) {
        return imports.report(number);
    }

    @Override
    public Optional<byte[]> filePart(long importNumber, KeptFile.Kind kind, int part) {
        return imports.filePart(importNumber, kind, part);
    }

    @Override
    public Optional<StoredAlloy> alloy(String id) {
        return alloys.find(id);
    }

    @Override
    public Optional<StoredAlloy> alloy(String id, long revision) {
        return alloys.find(id, revision);
    }

    @Override
    public List<StoredAlloy> alloys() {
        return alloys.list();
    }

    @Override
    public Optional<StoredInterpretation> interpretation(long number) {
        return interpretations.find(number);
    }

    @Override
    public Optional<String> frozenText(long interpretation, String form) {
        return interpretations.text(interpretation, form);
    }

    @Override
    public List<StoredInterpretation> interpretations(String sample, long after, int limit) {
        return interpretations.list(sample, after, limit);
    }

    @Override
    public List<StoredInterpretation> freshInterpretations(String sample) {
        return interpretations.freshOfSample(sample);
    }

    @Override
    public List<StoredInterpretation> freshInterpretationsOfAlloy(String alloy) {
        return interpretations.freshOfAlloy(alloy);
    }

    @Override
    public List<LabEvent> events(EventFilter filter, long after, int limit) {
        return events.list(filter, after, limit);
    }

    @Override
    public long lastEvent() {
        return events.last();
    }

    @Override
    public long firstEvent() {
        return events.first();
    }

    @Override
    public AuditHead auditHead() {
        return audit.head();
    }

    @Override
    public List<AuditHead> keptAuditHeads() {
        return audit.keptHeads();
    }

    @Override
    public List<AuditEntry> audit(long after, int limit) {
        return audit.list(after, limit);
    }

    @Override
    public RecordComparison recordComparison() {
        return new SqlRecordComparison(handle);
    }

    @Override
    public List<KeptToken> tokens() {
        return tokens.list();
    }

    @Override
    public Optional<KeptToken> token(String hashBeginning) {
        return tokens.find(hashBeginning);
    }

    @Override
    public boolean hasTokens() {
        return tokens.exist();
    }

    @Override
    public Optional<Kept> keptAnswer(String who, String key) {
        return answers.find(who, key);
    }
}
