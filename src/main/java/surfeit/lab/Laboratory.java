package surfeit.lab;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import java.util.function.Function;
import surfeit.composition.Alloy;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.Nominal;
import surfeit.element.Spelling;
import surfeit.segregation.Interpreter;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.blocks.SpotSource;
import surfeit.segregation.plan.MeasurementPlan;
import surfeit.segregation.plan.PlanGoal;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/**
 * Everything a lab can do: describe samples, record, correct and withdraw spots, and ask what they show.
 *
 * <p>Every change is recorded with who and when, as a new revision; nothing is overwritten or erased. A thing that is
 * not on record is refused with {@link Problem#NOT_FOUND}. Thread-safe.
 */
public final class Laboratory {
    /** Spots read in one piece while all of a list are handed over; bounds the memory, not the list. */
    private static final int SPOTS_AT_ONCE = 1000;

    private final Store store;
    private final Alloys alloys;
    private final Answers answers;
    private final Sums sums;
    private final RepeatedRequests repeated;
    private final Access access;
    private final EventLog eventLog;
    private final Readings readings;
    private final Imports imports;

    /** @param detectionLimitMassFraction limit taken for "not detected" without a stated limit */
    public Laboratory(Store store, AlloyCatalogue packagedAlloys, Interpreter interpreter,
                      double detectionLimitMassFraction) {
        this.store = store;
        this.alloys = new Alloys(packagedAlloys);
        this.answers = new Answers(alloys, interpreter, detectionLimitMassFraction);
        this.sums = new Sums(answers);
        this.repeated = new RepeatedRequests();
        this.access = new Access(store);
        this.eventLog = new EventLog(store);
        this.readings = new Readings(store, answers);
        this.imports = new Imports(store, sums);
    }

    private Laboratory(WriteAccess open, Laboratory outer) {
        this.store = new OpenStore(open, outer.store);
        this.alloys = outer.alloys;
        this.answers = outer.answers;
        this.sums = outer.sums;
        this.repeated = outer.repeated;
        this.access = outer.access;
        this.eventLog = new EventLog(store);
        this.readings = new Readings(store, answers);
        this.imports = new Imports(store, sums);
    }

    /** Who may use the record. */
    public Access access() {
        return access;
    }

    /** Answers that were frozen. */
    public Interpretations interpretations() {
        return new Interpretations(store, answers);
    }

    /** What happened, in the order of record. */
    public EventLog eventLog() {
        return eventLog;
    }

    // Samples

    /** Samples in the order of their names. */
    public Page<StoredSample> samples(SampleFilter filter, PageRequest page) {
        return Page.of(store.read(access -> access.samples(filter, page.after(), page.size() + 1)), page.size(),
            StoredSample::name);
    }

    /** Samples, the last changed first. */
    public List<StoredSample> recentSamples(RecentSamples wanted, int limit) {
        return store.read(access -> access.recentSamples(wanted, limit));
    }

    public StoredSample sample(String name) {
        return store.read(access -> Lookups.sample(access, name));
    }

    /** The sample as it was at one of its revisions. */
    public StoredSample sample(String name, long revision) {
        return store.read(access -> Lookups.sample(access, name, revision));
    }

    /** The changes of a sample and its spots, oldest first. */
    public Page<SampleRevision> sampleRevisions(String name, PageRequest page) {
        return store.read(access -> {
            Lookups.sample(access, name);
            long after = page.after().map(Lookups::key).orElse(0L);
            return Page.of(access.sampleRevisions(name, after, page.size() + 1), page.size(),
                revision -> Long.toString(revision.number()));
        });
    }

    /**
     * Gives a sample its description; the same description again changes nothing.
     *
     * @throws ProblemException name-invalid, alloy-unknown, revision-required, revision-mismatch
     */
    public Change<StoredSample> describe(String name, Sample sample, Expectation expectation, Occasion occasion) {
        Names.requireSampleName("A sample", name);
        return store.write(access -> {
            sample.alloy().ifPresent(id -> alloys.require(access, id));
            Optional<StoredSample> present = access.sample(name);
            if (present.isPresent() && present.get().sample().equals(sample)) {
                return new Change<>(Change.Kind.UNCHANGED, present.get());
            }
            if (present.isPresent()) {
                expectation.requireForChange("Sample " + name, present.get().revision());
            } else {
                expectation.requireIfStated("Sample " + name, Optional.empty());
            }
            StoredSample now = access.describe(name, sample, occasion);
            access.append(Events.of(LabEvent.Type.SAMPLE_CHANGED, occasion, name));
            access.audit(occasion, "sample described", Optional.of(name), "revision " + now.revision());
            Staleness.sampleChanged(access, name, InputChange.ofSample(SampleRevision.What.DESCRIBED, now.revision(),
                occasion, Optional.empty()));
            sums.described(access, present, now);
            return new Change<>(present.isPresent() ? Change.Kind.CHANGED : Change.Kind.CREATED, now);
        });
    }

    // Spots

    /** Uploads of spots, and what became of them. */
    public Imports imports() {
        return imports;
    }

    /** As {@link Imports#record}, with nobody listening how far it has come. */
    public ImportReport importSpots(String sample, Upload upload, SpotRows rows, ImportOptions options,
                                    Occasion occasion) {
        return imports.record(sample, upload, rows, options, occasion, ImportProgress.UNHEARD);
    }

    /** Spots of a sample in the order of record. */
    public Page<StoredSpot> spots(String sample, SpotFilter filter, PageRequest page) {
        return spots(sample(sample), filter, page);
    }

    /** The spots a sample had at one of its revisions, each as it was then. */
    public Page<StoredSpot> spots(StoredSample asOf, SpotFilter filter, PageRequest page) {
        long after = page.after().map(Lookups::spotKey).orElse(0L);
        return Page.of(store.read(access -> access.spots(asOf, filter, after, page.size() + 1)), page.size(),
            StoredSpot::id);
    }

    /**
     * Hands over all spots of a sample, as they are when the first is read, in the order of record. Holds no more
     * than {@value #SPOTS_AT_ONCE} at once and no transaction while the consumer works.
     *
     * @return the sample at the revision its spots were read at
     */
    public StoredSample forEachSpot(String sample, SpotFilter filter, Consumer<StoredSpot> consumer) {
        StoredSample stored = sample(sample);
        forEachSpot(stored, filter, consumer);
        return stored;
    }

    /** As {@link #forEachSpot(String, SpotFilter, Consumer)}, as they were at a revision of the sample. */
    public void forEachSpot(StoredSample stored, SpotFilter filter, Consumer<StoredSpot> consumer) {
        long after = 0;
        while (true) {
            long from = after;
            List<StoredSpot> spots = store.read(access -> access.spots(stored, filter, from, SPOTS_AT_ONCE));
            spots.forEach(consumer);
            if (spots.size() < SPOTS_AT_ONCE) {
                return;
            }
            after = Lookups.spotNumber(spots.get(spots.size() - 1).id());
        }
    }

    /** The spots of a sample as of its revision; they may be read as often and for as long as the reader likes. */
    public SpotSource spotSource(StoredSample stored) {
        return new RecordedSpots(spots -> forEachSpot(stored, SpotFilter.ALL, spots), store::numbersAside);
    }

    /** The present revision of a spot. */
    public StoredSpot spot(String id) {
        return store.read(access -> Lookups.spot(access, id));
    }

    /** All revisions of a spot, the first one first. */
    public List<StoredSpot> spotRevisions(String id) {
        return store.read(access -> {
            Lookups.spot(access, id);
            return access.spotRevisions(Lookups.spotNumber(id));
        });
    }

    /**
     * Records a further revision of a spot with other values; the ones before stay readable. A correction that
     * changes nothing records nothing.
     *
     * @throws ProblemException reason-required, name-invalid (label, session and time stay), revision-mismatch
     */
    public StoredSpot correct(String id, String reason, Expectation expectation, Correction correction,
                              Occasion occasion) {
        return store.write(access -> sums.revised(access,
            SpotRevising.correct(access, id, reason, expectation, correction, occasion)));
    }

    /** Takes a spot out of every calculation from now on; it stays readable. Again, it changes nothing. */
    public StoredSpot withdraw(String id, String reason, Expectation expectation, Occasion occasion) {
        return store.write(access -> sums.revised(access,
            SpotRevising.withdraw(access, id, reason, expectation, occasion)));
    }

    /** Makes the corrected spot out of the present one. */
    public interface Correction {
        /** @param sample says at how many standard uncertainties {@code u} is given */
        Spot apply(Spot present, Sample sample);
    }

    // Alloys

    /** All alloys by id: the lab's own, and those of the program that the lab has not restated. */
    public List<StoredAlloy> alloys() {
        return store.read(alloys::all);
    }

    public StoredAlloy alloy(String id) {
        return store.read(access -> alloys.find(access, id)).orElseThrow(() ->
            new ProblemException(Problem.NOT_FOUND, "There is no alloy " + Spelling.quoted(id) + "."));
    }

    /** States an alloy; the same statement again changes nothing. @throws ProblemException as {@link #describe} */
    public Change<StoredAlloy> defineAlloy(Alloy alloy, Expectation expectation, Occasion occasion) {
        return store.write(access -> {
            Change<StoredAlloy> change = alloys.define(access, alloy, expectation, occasion);
            if (change.kind() != Change.Kind.UNCHANGED) {
                sums.alloyStated(access, alloy.id());
            }
            return change;
        });
    }

    // Answers

    /** Does work as it would be done, then takes all of it back: tells what the record would say after it. */
    public <T> T rehearse(Function<Laboratory, T> work) {
        return store.rehearse(open -> work.apply(new Laboratory(open, this)));
    }

    /** The limit taken for "not detected" without a stated limit: the one setting that enters every answer. */
    public double detectionLimitMassFraction() {
        return answers.detectionLimitMassFraction();
    }

    /** What an answer for the sample would be made from now. */
    public InputRevisions inputRevisions(String sample) {
        return store.read(access -> answers.inputRevisions(access, Lookups.sample(access, sample)));
    }

    /** The nominal a sample is compared with: its own, or its alloy's. @throws ProblemException alloy-unknown */
    public Nominal nominalOf(Sample sample) {
        return sample.nominal().orElseGet(() -> store.read(access -> alloys.require(access, sample.alloy().orElseThrow()).alloy().nominal()));
    }

    /** How much more to measure, planned from the scatter of one group of a sample on record. */
    public MeasurementPlan plan(PlanGoal goal, String sample, GroupBy by, String group) {
        return store.read(access -> answers.plan(access, Lookups.sample(access, sample), goal, by, group));
    }

    /**
     * Two samples on record against each other, as they are at one moment.
     *
     * @param sameParticles whether particles of the same name are the very same ones measured again
     */
    public ComparedRecord compare(String a, String b, GroupBy by, boolean sameParticles) {
        return store.read(access -> answers.compare(access, Lookups.sample(access, a), Lookups.sample(access, b), by, sameParticles));
    }

    /** What the sample's spots show. @throws ProblemException too-few-elements */
    public Segregation segregation(String sample, GroupBy by) {
        return store.read(access -> {
            StoredSample stored = Lookups.sample(access, sample);
            return answers.stored(access, stored, answers.inputRevisions(access, stored), by);
        });
    }

    /** What the sample's spots showed when its inputs were at these revisions. */
    public Segregation segregation(String sample, InputRevisions asOf, GroupBy by) {
        return store.read(access -> answers.stored(access, Lookups.sample(access, sample, asOf.sample()), asOf, by));
    }

    /** What spots show that are not on record. @throws ProblemException alloy-unknown, too-few-elements */
    public Segregation interpret(Sample sample, SpotSource spots, GroupBy by) {
        Optional<StoredAlloy> alloy = sample.alloy().map(id -> store.read(access -> alloys.require(access, id)));
        return answers.unstored(sample, alloy, spots, by);
    }

    /** What each spot shows by itself. */
    public Readings readings() {
        return readings;
    }

    // Feed, audit, safe repetition

    public List<LabEvent> events(EventFilter filter, long after, int limit) {
        return store.read(access -> access.events(filter, after, limit));
    }

    /** Who changed what, row by row. */
    public AuditLog auditLog() {
        return new AuditLog(store);
    }

    /** Most changes that may wait to be recorded. */
    public int writesWaitingMax() {
        return store.writesWaitingMax();
    }

    /** Bytes the record takes where it is kept. */
    public long byteCount() {
        return store.byteCount();
    }

    /** Copies the whole record while work goes on; the caller closes it. @throws ProblemException storage-full */
    public Backup backup(Instant when) {
        return store.backup(when);
    }

    /**
     * Does work once per key: the answer is kept in the same transaction as what the work recorded, and given again
     * when the request comes again. Work that throws records and keeps nothing.
     *
     * @param work what to do, with a laboratory that shares the transaction, and the answer to give
     * @throws ProblemException idempotency-key-reused, idempotency-key-in-progress
     */
    public KeptAnswer once(RepeatKey key, Occasion occasion, Function<Laboratory, KeptAnswer> work) {
        return repeated.once(store, key, occasion.when(), within(work));
    }

    /** As {@link #once}, for small work: it shares its commit, and no thread waits. @return as {@link Store#writeShared} */
    public CompletableFuture<KeptAnswer> onceShared(RepeatKey key, Foreseen foreseen, Occasion occasion,
                                                    Function<Laboratory, KeptAnswer> work) {
        return repeated.onceShared(store, foreseen, key, occasion.when(), within(work));
    }

    private Function<WriteAccess, KeptAnswer> within(Function<Laboratory, KeptAnswer> work) {
        return access -> work.apply(new Laboratory(access, this));
    }
}
