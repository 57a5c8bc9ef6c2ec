package surfeit.storage;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import surfeit.composition.Alloy;
import surfeit.lab.FrozenAnswer;
import surfeit.lab.InputChange;
import surfeit.lab.InputRevisions;
import surfeit.lab.KeptAnswer;
import surfeit.lab.LabEvent;
import surfeit.lab.Occasion;
import surfeit.lab.PublicId;
import surfeit.lab.RepeatKey;
import surfeit.lab.SampleRevision;
import surfeit.lab.Segregation;
import surfeit.lab.SpotImportAccess;
import surfeit.lab.StoredAlloy;
import surfeit.lab.StoredInterpretation;
import surfeit.lab.StoredSample;
import surfeit.lab.StoredSpot;
import surfeit.lab.SumsMark;
import surfeit.lab.Token;
import surfeit.lab.TokenScope;
import surfeit.lab.WriteAccess;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.blocks.SampleSums;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/** The record, open for writing in one transaction. Not thread-safe. */
final class SqlWriteAccess extends SqlReadAccess implements WriteAccess {
    private final Engine engine;
    private final WriteMemory memory;
    private final Map<String, Consumer<WriteAccess>> last;
    private final ContentDigest content = new ContentDigest();

    /** @param last what is to be done at the end of the transaction */
    SqlWriteAccess(Handle handle, Engine engine, WriteMemory memory, Map<String, Consumer<WriteAccess>> last) {
        super(handle);
        this.engine = engine;
        this.memory = memory;
        this.last = last;
    }

    @Override
    public Optional<StoredSample> sample(String name) {
        return memory.of(name).present(() -> super.sample(name));
    }

    @Override
    public Map<GroupBy, SumsMark> sumsMarks(StoredSample sample) {
        return memory.of(sample.name()).marks(() -> super.sumsMarks(sample));
    }

    @Override
    public Map<GroupBy, byte[]> sumsNotes(StoredSample sample) {
        return memory.of(sample.name()).notes(() -> super.sumsNotes(sample));
    }

    @Override
    public List<StoredInterpretation> freshInterpretations(String sample) {
        WriteMemory.OfSample known = memory.of(sample);
        if (known.hasNothingFresh()) {
            return List.of();
        }
        List<StoredInterpretation> fresh = super.freshInterpretations(sample);
        if (fresh.isEmpty()) {
            known.nothingFresh();
        }
        return fresh;
    }

    @Override
    public StoredSample describe(String name, Sample sample, Occasion occasion) {
        memory.forget(name);
        samples.describe(name, sample, occasion);
        StoredSample now = samples.find(name).orElseThrow();
        content.described(name, now.revision(), SampleCodec.encode(sample));
        return now;
    }

    @Override
    public SpotImportAccess startImport(StoredSample sample, Occasion occasion) {
        long number = memory.of(sample.name()).number(() -> samples.number(sample.name()));
        return new SqlSpotImport(handle, engine, number, samples, imports, content, memory, sample, occasion);
    }

    @Override
    public StoredSpot revise(StoredSpot present, Spot spot, boolean withdrawn, String reason, Occasion occasion) {
        StoredSample sample = samples.find(present.sample()).orElseThrow();
        memory.forget(present.sample());
        boolean leaves = withdrawn && !present.withdrawn();
        spots.revise(present, spot, withdrawn, reason, sample.revision() + 1);
        content.group(spot.isReference(), spot.feature(), spot.particle());
        content.spot(PublicId.number(PublicId.SPOT, present.id()).orElseThrow(), present.revision() + 1, withdrawn,
            Optional.of(reason), SpotCodec.encode(spot));
        samples.addRevision(sample, leaves ? SampleRevision.What.SPOT_WITHDRAWN : SampleRevision.What.SPOT_CORRECTED,
            occasion, present.id(), sample.spotCount() - (leaves ? 1 : 0));
        return new StoredSpot(present.id(), present.sample(), present.revision() + 1, sample.revision() + 1, spot,
            withdrawn, occasion, Optional.of(reason), present.importId());
    }

    @Override
    public void keepSums(StoredSample present, GroupBy by, Optional<SampleSums> made) {
        memory.of(present.name()).otherSums();
        sums.keep(present, by, made);
    }

    @Override
    public void forgetSums(StoredSample sample, GroupBy by) {
        memory.of(sample.name()).otherSums();
        sums.forget(sample, by);
    }

    @Override
    public StoredAlloy defineAlloy(Alloy alloy, Occasion occasion) {
        StoredAlloy now = alloys.define(alloy, occasion);
        content.described(alloy.id(), now.revision(), AlloyCodec.encode(alloy));
        return now;
    }

    @Override
    public StoredInterpretation keepInterpretation(Segregation answer, InputRevisions inputs, GroupBy by,
                                                   FrozenAnswer frozen, Occasion occasion) {
        answer.stored().ifPresent(sample -> memory.forget(sample.name()));
        return interpretations.keep(answer, inputs, by, frozen, occasion, content);
    }

    @Override
    public void markStale(StoredInterpretation interpretation, InputChange change) {
        interpretations.markStale(interpretation, change, content);
    }

    @Override
    public LabEvent append(LabEvent event) {
        return events.append(memory.nextEvent(() -> engine.lastEvent(handle)), event);
    }

    @Override
    public void forgetEvents(Instant before) {
        events.forget(before);
    }

    @Override
    public void audit(Occasion occasion, String what, Optional<String> sample, String detail) {
        String recorded = content.take().map(hash -> SqlRecordComparison.RECORDED + hash).orElse("");
        memory.auditHead(audit.append(memory.auditHead(audit::head), occasion, what, sample, detail + recorded));
    }

    @Override
    public Token addToken(String name, Set<TokenScope> scopes, Instant expires, String sha256, Occasion occasion) {
        return tokens.add(name, scopes, expires, sha256, occasion);
    }

    @Override
    public void revokeToken(long number, Occasion occasion) {
        tokens.revoke(number, occasion);
    }

    @Override
    public void keepAnswer(RepeatKey key, KeptAnswer answer, Instant when) {
        answers.keep(key, answer, when);
    }

    @Override
    public void forgetAnswers(Instant before) {
        answers.forget(before);
    }

    @Override
    public void last(String thing, Consumer<WriteAccess> work) {
        last.putIfAbsent(thing, work);
    }

    @Override
    public <T> T nested(Function<WriteAccess, T> work) {
        T result = step(work);
        KeptStatements.held(handle).keep();
        return result;
    }

    @Override
    public <T> T rehearse(Function<WriteAccess, T> work) {
        T result = step(open -> {
            T made = work.apply(open);
            KeptStatements.held(handle).send(); // what the engine would refuse shows
            return made;
        });
        takeBack();
        return result;
    }

    /** What stopped the work tells more than that it could not be taken back, as over a broken connection. */
    private <T> T step(Function<WriteAccess, T> work) {
        KeptStatements.held(handle).begin();
        try {
            return work.apply(this);
        } catch (RuntimeException e) {
            try {
                takeBack();
            } catch (RuntimeException second) {
                e.addSuppressed(second);
            }
            throw e;
        }
    }

    private void takeBack() {
        content.reset();
        memory.clear();
        KeptStatements.held(handle).takeBack();
    }
}
