package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import surfeit.lab.EventFilter;
import surfeit.lab.Foreseen;
import surfeit.lab.ImportOptions;
import surfeit.lab.ImportProgress;
import surfeit.lab.ImportReport;
import surfeit.lab.KeptAnswer;
import surfeit.lab.LabEvent;
import surfeit.lab.Laboratory;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.RepeatKey;
import surfeit.lab.RowsReadAhead;
import surfeit.lab.Store;
import surfeit.lab.StoredSample;
import surfeit.lab.SumsMark;
import surfeit.lab.Upload;
import surfeit.spot.Spot;

/** Small uploads that wait at the same time, while one long piece of work holds the writer. All values are invented. */
@OnBothEngines
class SharedCommitTest {
    private static final int WAITING_MAX = 40;

    @Parameter
    RecordEngine engine;
    @TempDir
    Path folder;
    private LabBench bench;
    private Laboratory lab;
    private final CountDownLatch goOn = new CountDownLatch(1);

    @BeforeEach
    void open() {
        bench = LabBench.on(engine.open(folder, WAITING_MAX)).describe("A7");
        lab = bench.laboratory();
    }

    @AfterEach
    void close() {
        goOn.countDown();
        bench.close();
    }

    /** Keeps the writer at work until {@link #goOn}. */
    private CompletableFuture<Void> busy() throws InterruptedException {
        CountDownLatch begun = new CountDownLatch(1);
        CompletableFuture<Void> work = CompletableFuture.runAsync(() -> bench.store().write(access -> {
            begun.countDown();
            try {
                return goOn.await(60, TimeUnit.SECONDS);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }), task -> new Thread(task).start());
        assertThat(begun.await(30, TimeUnit.SECONDS)).isTrue();
        return work;
    }

    private CompletableFuture<ImportReport> post(String sample, Spot... spots) {
        try {
            Upload upload = LabBench.upload("the file as sent");
            RowsReadAhead ahead = RowsReadAhead.of(LabBench.rows(spots), upload, LabBench.agCuSample());
            return lab.imports().recordShared(sample, upload, ahead, ImportOptions.DEFAULT, LabBench.ANNA,
                ImportProgress.UNHEARD);
        } catch (java.io.IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private List<CompletableFuture<ImportReport>> posts(int count) {
        return IntStream.range(0, count).mapToObj(i -> post("A7", LabBench.spot("P-" + i, "78.8"))).toList();
    }

    private long recordedOutside() {
        try (Connection other = engine.connect(folder); Statement statement = other.createStatement();
             ResultSet rows = statement.executeQuery("SELECT count(*) FROM spot")) {
            rows.next();
            return rows.getLong(1);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void those_that_share_a_commit_are_on_record_before_the_first_of_them_is_answered() throws Exception {
        CompletableFuture<Void> work = busy();
        List<CompletableFuture<ImportReport>> posts = posts(10);
        assertThat(posts).noneMatch(CompletableFuture::isDone);
        assertThat(recordedOutside()).isZero();
        CompletableFuture<Long> atTheFirstAnswer = posts.get(0).thenApply(report -> recordedOutside());

        goOn.countDown();

        assertThat(atTheFirstAnswer.get(30, TimeUnit.SECONDS)).isGreaterThan(1);
        work.join();
    }

    private CompletableFuture<String> asking(List<String> done, String name, boolean fails) {
        return bench.store().writeShared(Foreseen.NOTHING, access -> {
            done.add(name);
            access.last("A7", end ->
                done.add("end, asked by " + name + ", at revision " + end.sample("A7").orElseThrow().revision()));
            if (fails) {
                throw new IllegalStateException(name);
            }
            return name;
        });
    }

    @Test
    void what_several_ask_to_have_done_last_is_done_once_when_all_are_done() throws Exception {
        List<String> done = Collections.synchronizedList(new ArrayList<>());
        CompletableFuture<Void> work = busy();
        CompletableFuture<String> refused = asking(done, "one", true);
        CompletableFuture<ImportReport> report = post("A7", LabBench.spot("P-1", "78.8"));
        CompletableFuture<String> kept = asking(done, "two", false);

        goOn.countDown();
        work.join();

        assertThat(kept.join()).isEqualTo("two");
        assertThatThrownBy(refused::join).hasMessageContaining("one");
        assertThat(done).containsExactly("one", "two", "end, asked by one, at revision " + report.join().sampleRevision());
    }

    @Test
    void reference_spots_that_share_a_commit_have_the_sums_made_and_one_that_cannot_harms_no_other() throws Exception {
        bench.describe("B2").post("A7", LabBench.spots("P", 300));
        Spot[] pieces = IntStream.range(0, 5).mapToObj(i -> LabBench.withReference(LabBench.spot("R" + i, "69." + i),
            LabBench.nominal("Ag", 0.3, "Cu", 0.7))).toArray(Spot[]::new);
        CompletableFuture<Void> work = busy();
        List<CompletableFuture<ImportReport>> posts =
            IntStream.range(0, 4).mapToObj(i -> post("A7", pieces[i])).toList();
        goOn.countDown();
        work.join();
        posts.forEach(CompletableFuture::join);
        StoredSample sample = lab.sample("A7");
        assertThat(bench.store().<Object>read(access -> access.sumsMarks(sample).values().stream()
            .map(SumsMark::lastSpot).distinct().toList())).isEqualTo(List.of(304L));

        engine.change(folder, "UPDATE spot_revision SET payload = x'00' WHERE spot = 3");
        CompletableFuture<ImportReport> here = post("A7", pieces[4]);
        CompletableFuture<ImportReport> elsewhere = post("B2", LabBench.spot("P-1", "78.8"));

        assertThatThrownBy(here::join).hasCauseInstanceOf(StorageException.class);
        assertThat(elsewhere.join().acceptedCount()).isEqualTo(1);
        assertThat(lab.sample("A7")).isEqualTo(sample);
        assertThat(lab.sample("B2").spotCount()).isEqualTo(1);
    }

    @Test
    void those_that_wait_together_take_fewer_commits_than_they_are() throws Exception {
        AtomicInteger commits = new AtomicInteger();
        CompletableFuture<Void> work = busy();
        List<CompletableFuture<ImportReport>> posts = posts(10);
        Store.Listening listening = bench.store().onAppended(commits::incrementAndGet);

        goOn.countDown();
        work.join();
        posts.forEach(CompletableFuture::join);
        listening.close();

        if (engine == RecordEngine.SQLITE) { // a database wakes at what others write, too
            assertThat(commits).hasValueBetween(2, 1 + 9);
        }
        assertThat(lab.sample("A7").spotCount()).isEqualTo(10);
    }

    @Test
    void answers_events_revisions_and_audit_keep_the_order_in_which_they_came() throws Exception {
        List<String> answered = Collections.synchronizedList(new ArrayList<>());
        CompletableFuture<Void> work = busy();
        List<CompletableFuture<ImportReport>> posts = posts(30);
        posts.forEach(post -> post.thenAccept(report -> answered.add(report.id().orElseThrow())));

        goOn.countDown();
        work.join();
        bench.store().write(access -> 0); // who waits for a post helps to tell of it: all must have been told before
        List<String> ids = posts.stream().map(post -> post.join().id().orElseThrow()).toList();

        assertThat(ids).isSorted().doesNotHaveDuplicates();
        assertThat(lab.events(EventFilter.ALL, 0, 1000).stream().skip(1).map(event -> event.subject().orElseThrow()))
            .isEqualTo(ids);
        assertThat(lab.events(EventFilter.ALL, 0, 1000)).extracting(LabEvent::id).isSorted();
        assertThat(posts.stream().map(post -> post.join().sampleRevision()))
            .isEqualTo(IntStream.range(2, 32).mapToObj(Long::valueOf).toList());
        assertThat(lab.auditLog().check().broken()).isEmpty();
        assertThat(answered).isEqualTo(ids);
    }

    @Test
    void one_that_fails_takes_back_nothing_but_itself() throws Exception {
        CompletableFuture<Void> work = busy();
        CompletableFuture<ImportReport> first = post("A7", LabBench.spot("P-1", "78.8"));
        CompletableFuture<ImportReport> other = post("A7", LabBench.spot("P-2", "78.8"), LabBench.spot("P-1", "70.1"));
        CompletableFuture<ImportReport> unknown = post("B9", LabBench.spot("P-1", "78.8"));
        CompletableFuture<Object> broken = bench.store().writeShared(Foreseen.NOTHING, access -> {
            access.describe("C1", LabBench.agCuSample(), LabBench.ANNA);
            throw new IllegalArgumentException("by itself");
        });
        CompletableFuture<ImportReport> last = post("A7", LabBench.spot("P-3", "78.8"));

        goOn.countDown();
        work.join();

        assertThat(first.join().acceptedCount()).isEqualTo(1);
        assertProblem(other, Problem.SPOT_ALREADY_RECORDED);
        assertProblem(unknown, Problem.NOT_FOUND);
        assertThatThrownBy(broken::join).hasRootCauseMessage("by itself");
        assertThat(last.join()).returns(1L, ImportReport::acceptedCount).returns(3L, ImportReport::sampleRevision);
        bench.close();
        bench = LabBench.on(engine.open(folder, WAITING_MAX));
        lab = bench.laboratory();
        assertThat(lab.sample("A7")).returns(2L, sample -> sample.spotCount()).returns(3L, sample -> sample.revision());
        LabBench.assertRefused(() -> lab.sample("C1"), Problem.NOT_FOUND);
        assertThat(lab.auditLog().check().broken()).isEmpty();
        assertThat(bench.rowCounts()).containsEntry("spot", 2L).containsEntry("import", 2L).containsEntry("event", 3L);
    }

    /** What the engine refuses comes to light only when the rows of all are sent. */
    @Test
    void one_whose_rows_the_engine_refuses_takes_back_nothing_but_itself() throws Exception {
        RepeatKey key = new RepeatKey("anna", "k1", "f1");
        KeptAnswer answer = new KeptAnswer(201, Map.of(), new byte[0]);
        CompletableFuture<Void> work = busy();
        CompletableFuture<ImportReport> first = post("A7", LabBench.spot("P-1", "78.8"));
        CompletableFuture<Object> broken = bench.store().writeShared(Foreseen.NOTHING, access -> {
            access.keepAnswer(key, answer, LabBench.NOON);
            access.keepAnswer(key, answer, LabBench.NOON);
            return answer;
        });
        CompletableFuture<ImportReport> last = post("A7", LabBench.spot("P-2", "78.8"));

        goOn.countDown();
        work.join();

        assertThatThrownBy(broken::join).hasRootCauseInstanceOf(SQLException.class);
        assertThat(first.join()).returns(1L, ImportReport::acceptedCount).returns(2L, ImportReport::sampleRevision);
        assertThat(last.join()).returns(1L, ImportReport::acceptedCount).returns(3L, ImportReport::sampleRevision);
        assertThat(lab.sample("A7").spotCount()).isEqualTo(2);
        assertThat(lab.auditLog().check().broken()).isEmpty();
        assertThat(lab.events(EventFilter.ALL, 0, 10)).extracting(LabEvent::id).containsExactly(1L, 2L, 3L);
        assertThat(bench.rowCounts()).containsEntry("idempotency", 0L).containsEntry("spot", 2L);
    }

    @Test
    void the_same_spot_twice_in_one_commit_is_on_record_once() throws Exception {
        CompletableFuture<Void> work = busy();
        List<CompletableFuture<ImportReport>> posts = IntStream.range(0, 5)
            .mapToObj(i -> post("A7", LabBench.spot("P-1", "78.8"), LabBench.spot("P-2", "78.8"))).toList();

        goOn.countDown();
        work.join();

        assertThat(posts).extracting(post -> post.join().acceptedCount()).containsExactly(2L, 0L, 0L, 0L, 0L);
        assertThat(posts).extracting(post -> post.join().unchangedCount()).containsExactly(0L, 2L, 2L, 2L, 2L);
        assertThat(bench.rowCounts()).containsEntry("spot", 2L).containsEntry("import", 1L);
    }

    private static void assertProblem(CompletableFuture<?> failed, Problem problem) {
        assertThatThrownBy(failed::join).isInstanceOf(CompletionException.class).cause()
            .isInstanceOfSatisfying(ProblemException.class, refusal -> assertThat(refusal.problem()).isEqualTo(problem));
    }

    @Test
    void who_finds_the_queue_full_is_refused_at_once_and_nothing_of_it_is_stored() throws Exception {
        CompletableFuture<Void> work = busy();
        List<CompletableFuture<ImportReport>> posts = posts(WAITING_MAX);

        LabBench.assertRefused(() -> post("A7", LabBench.spot("Q-1", "78.8")), Problem.OVERLOADED);
        LabBench.assertRefused(() -> lab.describe("B9", LabBench.agCuSample(), surfeit.lab.Expectation.NONE,
            LabBench.ANNA), Problem.OVERLOADED);

        goOn.countDown();
        work.join();
        posts.forEach(CompletableFuture::join);
        assertThat(lab.sample("A7").spotCount()).isEqualTo(WAITING_MAX);
        LabBench.assertRefused(() -> lab.sample("B9"), Problem.NOT_FOUND);
        assertThat(post("A7", LabBench.spot("Q-1", "78.8")).join().acceptedCount()).isEqualTo(1);
    }

    @Test
    void what_waits_when_the_record_is_closed_is_recorded_and_answered_first() throws Exception {
        CompletableFuture<Void> work = busy();
        List<CompletableFuture<ImportReport>> posts = posts(10);
        CompletableFuture<Void> closing = CompletableFuture.runAsync(bench::close, task -> new Thread(task).start());
        while (!isClosing()) {
            Thread.onSpinWait();
        }
        goOn.countDown();
        work.join();
        closing.join();

        assertThat(posts).allSatisfy(post -> assertThat(post.join().acceptedCount()).isEqualTo(1));
        bench = LabBench.on(engine.open(folder, WAITING_MAX));
        assertThat(bench.laboratory().sample("A7").spotCount()).isEqualTo(10);
    }

    private boolean isClosing() {
        try {
            bench.store().writeShared(Foreseen.NOTHING, access -> 0);
            return false;
        } catch (ProblemException e) {
            return e.problem() == Problem.SHUTTING_DOWN;
        }
    }
}
