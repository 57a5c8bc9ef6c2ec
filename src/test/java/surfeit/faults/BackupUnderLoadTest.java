package surfeit.faults;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.element.Element;
import surfeit.lab.AuditChain;
import surfeit.lab.SpotFilter;
import surfeit.lab.StoredSpot;
import surfeit.storage.RecordFile;
import surfeit.storage.SqliteBackup;
import surfeit.storage.SqliteRestore;

/**
 * Backups are taken over HTTP and by a program beside the service while senders post without pause; each is restored, and
 * what was acknowledged before it was begun is looked for. More rounds: {@code -Dsurfeit.faults.rounds=50}.
 */
class BackupUnderLoadTest {
    private static final int ROUNDS = Integer.getInteger("surfeit.faults.rounds", 4);
    private static final int SPOTS_A_TABLE = 40;

    @TempDir
    Path folder;
    private int acknowledged;
    private int lost;

    @Test
    void a_backup_taken_while_senders_go_on_holds_all_that_was_acknowledged_before_and_nothing_half() throws Exception {
        Ledger ledger = new Ledger();
        int during = 0;
        try (RunningProgram program = RunningProgram.serve(folder.resolve("data"))) {
            program.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
            List<Thread> senders = List.of(
                Senders.sender(program, ledger, 1, (n, own) -> SentSpots.table("A7", "t" + n, SPOTS_A_TABLE, own)),
                Senders.sender(program, ledger, 2, (n, own) -> SentSpots.single("A7", "s" + n, own)));
            senders.forEach(Thread::start);
            for (int round = 0; round < ROUNDS; round++) {
                int before = waitForMore(ledger, during);
                Map<String, String> known = ledger.acknowledged();
                Path file = folder.resolve("backup-" + round);
                take(program, round, file);
                during = ledger.acknowledgedCount();
                assertThat(during).as("senders go on meanwhile").isGreaterThanOrEqualTo(before);
                check(file, folder.resolve("restored-" + round), known);
            }
            senders.forEach(Thread::interrupt);
            for (Thread sender : senders) {
                sender.join();
            }
        }
        assertThat(ledger.unexpected()).isEmpty();
        Figures.print("backups while senders go on", ROUNDS + " backups restored, " + acknowledged
            + " spots acknowledged before them, " + lost + " lost");
        assertThat(lost).isZero();
    }

    private static int waitForMore(Ledger ledger, int than) throws InterruptedException {
        while (ledger.acknowledgedCount() <= than && ledger.unexpected().isEmpty()) {
            Thread.sleep(5);
        }
        return ledger.acknowledgedCount();
    }

    private void take(RunningProgram program, int round, Path file) throws IOException, InterruptedException {
        if (round % 2 == 0) {
            HttpResponse<Path> answer = HttpClient.newHttpClient().send(
                HttpRequest.newBuilder(program.address().resolve("/v1/backup")).build(),
                HttpResponse.BodyHandlers.ofFile(file));
            assertThat(answer.statusCode()).isEqualTo(200);
        } else {
            SqliteBackup.take(folder.resolve("data"), file, Instant.now());
        }
    }

    private void check(Path file, Path restored, Map<String, String> known) {
        SqliteRestore.restore(file, restored, Instant.now());
        assertThat(RecordFile.read(restored, access -> AuditChain.check(access, List.of())).broken()).isEmpty();
        List<StoredSpot> spots = RecordFile.read(restored, access ->
            access.spots(access.sample("A7").orElseThrow(), SpotFilter.ALL, 0, Integer.MAX_VALUE));
        Map<String, String> found = new HashMap<>();
        Map<String, Integer> byImport = new HashMap<>();
        for (StoredSpot spot : spots) {
            found.put(spot.spot().label(), spot.spot().values().get(Element.of("Cu")).asReported());
            byImport.merge(spot.importId(), 1, Integer::sum);
        }
        acknowledged += known.size();
        known.forEach((label, copper) -> lost += copper.equals(found.get(label)) ? 0 : 1);
        assertThat(byImport.values()).containsAnyOf(1, SPOTS_A_TABLE).allMatch(n -> n == 1 || n == SPOTS_A_TABLE);
    }
}
