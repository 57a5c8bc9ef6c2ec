package surfeit.faults;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.composition.AlloyCatalogue;
import surfeit.lab.AuditChain;
import surfeit.lab.AuditCheck;
import surfeit.lab.EventFilter;
import surfeit.lab.LabEvent;
import surfeit.lab.Recount;
import surfeit.lab.Recounted;
import surfeit.lab.SampleFilter;
import surfeit.lab.StoredSample;
import surfeit.storage.RecordFile;

/**
 * The service is killed at random moments while several senders post tables, single spots and spots under a key, and
 * correct spots. It is started again on what it left, and what it acknowledged is looked for.
 *
 * <p>More rounds: {@code mvn test -Dtest=KilledServiceTest -Dsurfeit.faults.rounds=200}; other moments:
 * {@code -Dsurfeit.faults.seed=7}.
 */
class KilledServiceTest {
    private static final int ROUNDS = Integer.getInteger("surfeit.faults.rounds", 3);
    private static final long SEED = Long.getLong("surfeit.faults.seed", 20_261_120L);
    private static final int SPOTS_A_TABLE = 40;
    private static final int SPOTS_UNDER_A_KEY = 5;
    /** Longest time between the first spot acknowledged and the kill. */
    private static final int WORK_MS = 700;
    /** Longest time between a start and a kill that does not wait for it; the service listens about half way. */
    private static final int START_MS = 2500;

    /** The service's default, as a mass fraction. */
    private static final double DETECTION_LIMIT = 0.003;

    @TempDir
    Path folder;
    private final Random random = new Random(SEED);
    private final Corrections corrections = new Corrections("corrected");
    private int acknowledged;
    private int lost;
    private int halfRequests;
    private int unanswered;
    private int killedAtStart;

    @Test
    void a_killed_service_loses_nothing_it_acknowledged_and_records_no_half_request() throws Exception {
        for (int round = 0; round < ROUNDS; round++) {
            String sample = "round" + round;
            Ledger ledger = work(sample);
            if (random.nextInt(3) == 0) {
                killWhileItStarts();
            }
            check(sample, ledger);
        }
        checkRecord();
        Figures.print("kill -9 at random moments", ROUNDS + killedAtStart + " kills (" + killedAtStart
            + " of them while starting), " + acknowledged + " spots and " + corrections.acknowledgedCount()
            + " corrections acknowledged, " + lost + " lost; "
            + unanswered + " requests unanswered, " + halfRequests + " half recorded");
        assertThat(lost).isZero();
        assertThat(halfRequests).isZero();
        assertThat(acknowledged).isGreaterThan(ROUNDS * SPOTS_A_TABLE);
    }

    /** Lets the senders work until the service is killed. */
    private Ledger work(String sample) throws Exception {
        Ledger ledger = new Ledger();
        try (RunningProgram program = RunningProgram.serve(folder)) {
            assertThat(program.put("/v1/samples/" + sample, "{\"alloy\": \"ag-cu-eutectic\"}").statusCode())
                .isEqualTo(201);
            corrections.prepare(program);
            List<Thread> senders = List.of(
                Senders.sender(program, ledger, random.nextLong(),
                    (n, own) -> SentSpots.table(sample, "t" + n, SPOTS_A_TABLE, own)),
                Senders.sender(program, ledger, random.nextLong(), (n, own) -> SentSpots.single(sample, "s" + n, own)),
                Senders.sender(program, ledger, random.nextLong(),
                    (n, own) -> SentSpots.keyed(sample, "k" + n, SPOTS_UNDER_A_KEY, own)),
                new Thread(() -> corrections.send(program, ledger)));
            senders.forEach(Thread::start);
            while (ledger.acknowledgedCount() == 0 && ledger.unexpected().isEmpty()) {
                Thread.sleep(1);
            }
            Thread.sleep(random.nextInt(WORK_MS));
            program.kill();
            for (Thread sender : senders) {
                sender.join();
            }
        }
        assertThat(ledger.unexpected()).isEmpty();
        return ledger;
    }

    private void killWhileItStarts() throws Exception {
        killedAtStart++;
        Process process = RunningProgram.launch(folder, folder.resolve("start.log"));
        Thread.sleep(random.nextInt(START_MS));
        process.destroyForcibly().waitFor();
    }

    /** Starts the service on what it left, looks for what was acknowledged, and sends again what had no answer. */
    private void check(String sample, Ledger ledger) throws Exception {
        try (RunningProgram program = RunningProgram.serve(folder)) {
            RecordedSpots recorded = RecordedSpots.of(program, sample);
            assertThat(recorded.labels()).doesNotHaveDuplicates();
            Map<String, String> found = new LinkedHashMap<>();
            for (int i = 0; i < recorded.count(); i++) {
                found.put(recorded.labels().get(i), recorded.copper().get(i));
            }
            ledger.acknowledged().forEach((label, copper) -> {
                if (!copper.equals(found.get(label))) {
                    lost++;
                }
            });
            acknowledged += ledger.acknowledgedCount();
            for (SentSpots open : ledger.unanswered()) {
                sendAgain(program, open, recorded.labelSet());
                ledger.acknowledged(open);
            }
            assertThat(RecordedSpots.of(program, sample).labelSet()).isEqualTo(ledger.acknowledged().keySet());
            lost += corrections.check(program);
            assertSameAsRecount(program, sample, ledger);
        }
    }

    /** A request without an answer is on record whole or not at all; sent again, it is on record once. */
    private void sendAgain(RunningProgram program, SentSpots open, Set<String> recorded) throws Exception {
        unanswered++;
        long present = open.copperByLabel().keySet().stream().filter(recorded::contains).count();
        if (present > 0 && present < open.copperByLabel().size()) {
            halfRequests++;
        }
        HttpResponse<String> answer = Senders.post(program, open);
        JsonNode report = RecordedSpots.parse(answer.body());
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(present > 0 && open.key().isEmpty() ? 200 : 201);
        assertThat(report.path("accepted_count").asInt() + report.path("unchanged_count").asInt())
            .isEqualTo(open.copperByLabel().size());
    }

    /** What the service says of its record is what it says of the same spots from the senders' own ledger. */
    private static void assertSameAsRecount(RunningProgram program, String sample, Ledger ledger) throws Exception {
        Map<String, String> inOrder = new LinkedHashMap<>();
        RecordedSpots.of(program, sample).labels()
            .forEach(label -> inOrder.put(label, ledger.acknowledged().get(label)));
        JsonNode stored = RecordedSpots.parse(program.get("/v1/samples/" + sample + "/segregation").body());
        JsonNode recount = RecordedSpots.parse(
            program.post("/v1/interpretations?alloy=ag-cu-eutectic", "text/csv", SentSpots.csv(inOrder)).body());
        assertThat(stored.path("spot_count").asInt()).isEqualTo(inOrder.size());
        assertThat(stored.path("groups")).isNotEmpty().isEqualTo(recount.path("groups"));
    }

    /** Looks into the file: the audit is whole, kept sums are those of the spots, and events tell of every spot once. */
    private void checkRecord() {
        List<Recounted> recounted = new ArrayList<>();
        RecordFile.read(folder, access -> {
            new Recount(AlloyCatalogue.packaged(), DETECTION_LIMIT).ofAll(access, recounted::add);
            return recounted;
        });
        assertThat(recounted).allMatch(Recounted::isRight).extracting(Recounted::state).contains(Recounted.State.EQUAL);
        AuditCheck audit = RecordFile.read(folder, access -> AuditChain.check(access, List.of()));
        assertThat(audit.broken()).isEmpty();
        assertThat(audit.head().count()).isGreaterThan(acknowledged / SPOTS_A_TABLE);
        List<LabEvent> events = RecordFile.read(folder, access -> access.events(EventFilter.ALL, 0, Integer.MAX_VALUE));
        assertThat(events).extracting(LabEvent::id).isSorted().doesNotHaveDuplicates();
        long told = events.stream().mapToLong(event -> event.acceptedCount().orElse(0)).sum();
        long recorded = RecordFile.read(folder, access -> access.samples(SampleFilter.ALL, Optional.empty(), ROUNDS + 1)
            .stream().mapToLong(StoredSample::spotCount).sum());
        assertThat(told).isEqualTo(recorded);
    }
}
