package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import surfeit.lab.EventFilter;
import surfeit.lab.ImportOptions;
import surfeit.lab.ImportReport;
import surfeit.lab.KeptAnswer;
import surfeit.lab.LabEvent;
import surfeit.lab.Laboratory;
import surfeit.lab.PageRequest;
import surfeit.lab.RepeatKey;
import surfeit.lab.SpotFilter;

@OnBothEngines
class ConcurrentWritingTest {
    private static final int SENDERS = 32;

    @Parameter
    RecordEngine engine;
    @TempDir
    Path folder;
    private LabBench bench;
    private Laboratory lab;
    private final ExecutorService senders = Executors.newFixedThreadPool(SENDERS);

    @BeforeEach
    void open() {
        bench = LabBench.in(engine, folder).describe("A7");
        lab = bench.laboratory();
    }

    @AfterEach
    void close() {
        senders.shutdownNow();
        bench.close();
    }

    @Test
    void parallel_identical_imports_make_one_row() throws Exception {
        List<ImportReport> reports = together(sender -> bench.post("A7", LabBench.spot("P1-1", "78.8")));

        assertThat(reports.stream().mapToLong(ImportReport::acceptedCount).sum()).isEqualTo(1);
        assertThat(reports.stream().mapToLong(ImportReport::unchangedCount).sum()).isEqualTo(SENDERS - 1);
        assertThat(bench.rowCounts()).containsEntry("spot", 1L).containsEntry("import", 1L);
        assertThat(lab.sample("A7")).returns(2L, sample -> sample.revision());
    }

    @Test
    void parallel_identical_requests_with_one_key_get_one_answer() throws Exception {
        AtomicInteger worked = new AtomicInteger();

        RepeatKey key = new RepeatKey("anna", "k1", "f1");
        List<KeptAnswer> answers = together(sender -> lab.once(key, LabBench.ANNA, open -> {
            worked.incrementAndGet();
            ImportReport report = open.importSpots("A7", LabBench.upload("x"),
                LabBench.rows(LabBench.spot("P1-1", "78.8")), ImportOptions.DEFAULT, LabBench.ANNA);
            return new KeptAnswer(201, Map.of("Location", "/v1/imports/" + report.id().orElseThrow()),
                "one".getBytes(StandardCharsets.UTF_8));
        }));

        assertThat(worked).hasValue(1);
        assertThat(Set.copyOf(answers)).hasSize(1);
        assertThat(bench.rowCounts()).containsEntry("spot", 1L).containsEntry("idempotency", 1L);
    }

    @Test
    void events_come_in_the_order_of_the_commits_and_without_gaps() throws Exception {
        together(sender -> bench.post("A7", LabBench.spot("P-" + sender, "78.8")));

        List<LabEvent> events = lab.events(EventFilter.ALL, 0, 1000);
        List<String> imports = new ArrayList<>();
        lab.forEachSpot("A7", SpotFilter.ALL, spot -> imports.add(spot.importId()));

        assertThat(events).extracting(LabEvent::id).isSorted().hasSize(SENDERS + 1).endsWith(SENDERS + 1L);
        assertThat(events.stream().skip(1).map(event -> event.subject().orElseThrow())).isEqualTo(imports);
        assertThat(lab.sampleRevisions("A7", PageRequest.first(100)).items().stream().skip(1)
            .map(revision -> revision.link().orElseThrow())).isEqualTo(imports);
        assertThat(lab.auditLog().check().broken()).isEmpty();
    }

    @Test
    void readers_see_an_unchanging_state_while_writers_go_on() {
        bench.post("A7", LabBench.spots("P", 10));

        long[] counts = bench.store().read(access -> {
            long before = access.sample("A7").orElseThrow().spotCount();
            CountDownLatch written = new CountDownLatch(1);
            senders.submit(() -> {
                bench.post("A7", LabBench.spots("Q", 10));
                written.countDown();
            });
            await(written);
            return new long[] {before, access.sample("A7").orElseThrow().spotCount()};
        });

        assertThat(counts).containsExactly(10, 10);
        assertThat(lab.sample("A7").spotCount()).isEqualTo(20);
    }

    private static void await(CountDownLatch latch) {
        try {
            assertThat(latch.await(30, TimeUnit.SECONDS)).isTrue();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private interface Sending<T> {
        T send(int sender);
    }

    /** Lets all senders start at the same moment. */
    private <T> List<T> together(Sending<T> sending) throws InterruptedException, ExecutionException {
        CountDownLatch start = new CountDownLatch(1);
        List<Future<T>> futures = new ArrayList<>();
        for (int i = 0; i < SENDERS; i++) {
            int sender = i;
            futures.add(senders.submit((Callable<T>) () -> {
                start.await();
                return sending.send(sender);
            }));
        }
        start.countDown();
        List<T> results = new ArrayList<>();
        for (Future<T> future : futures) {
            results.add(future.get());
        }
        return results;
    }
}
