package surfeit.faults;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import surfeit.lab.AuditChain;
import surfeit.postgresql.PostgresServer;
import surfeit.storage.DatabaseAddress;
import surfeit.storage.RecordDatabase;

/** The database server is stopped and started again, and its connections are broken off, while senders go on. */
class LostDatabaseTest {
    private static final int ROUNDS = Integer.getInteger("surfeit.faults.rounds", 2);
    private static final int SPOTS_A_TABLE = 40;
    private static final Duration ANSWERED_WITHIN = Duration.ofSeconds(10);
    private static final String DATABASE = "lab";

    @Test
    void a_lost_database_is_told_nothing_acknowledged_is_lost_and_the_service_recovers_by_itself() throws Exception {
        try (PostgresServer server = PostgresServer.own()) {
            server.createDatabase(DATABASE);
            Ledger ledger = new Ledger();
            try (RunningProgram program = serve(server)) {
                program.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
                Persistence persistence = new Persistence(List.of(program), ledger);
                List<Thread> senders = List.of(
                    persistence.sender(1, (n, own) -> SentSpots.table("A7", "t" + n, SPOTS_A_TABLE, own)),
                    persistence.sender(2, (n, own) -> SentSpots.single("A7", "s" + n, own)),
                    persistence.sender(3, (n, own) -> SentSpots.keyed("A7", "k" + n, 3, own)));
                senders.forEach(Thread::start);
                for (int round = 0; round < ROUNDS; round++) {
                    awaitMore(ledger);
                    stopAndStart(server, program);
                    awaitMore(ledger);
                    breakOffConnections(server);
                }
                awaitMore(ledger);
                persistence.end(senders);
                check(server, program, ledger, persistence);
            }
        }
    }

    private static RunningProgram serve(PostgresServer server) throws Exception {
        return RunningProgram.serve(server.url(DATABASE), PostgresServer.USER, PostgresServer.PASSWORD);
    }

    private static void awaitMore(Ledger ledger) throws InterruptedException {
        int before = ledger.acknowledgedCount();
        long deadline = System.nanoTime() + Duration.ofSeconds(60).toNanos();
        while (ledger.acknowledgedCount() < before + 2 * SPOTS_A_TABLE) {
            assertThat(System.nanoTime()).as("the service recovers").isLessThan(deadline);
            Thread.sleep(5);
        }
    }

    private static void stopAndStart(PostgresServer server, RunningProgram program) throws Exception {
        server.stop();
        long asked = System.nanoTime();
        HttpResponse<String> read = program.get("/v1/samples/A7");
        HttpResponse<String> ready = program.get("/readyz");
        assertThat(Duration.ofNanos(System.nanoTime() - asked)).isLessThan(ANSWERED_WITHIN.multipliedBy(2));
        assertThat(List.of(read, ready)).allSatisfy(answer -> {
            assertThat(answer.statusCode()).as(answer.body()).isEqualTo(503);
            assertThat(answer.body()).contains("\"code\":\"storage-unavailable\"", "does not answer")
                .doesNotContain(PostgresServer.PASSWORD);
            assertThat(answer.headers().firstValue("Retry-After")).hasValue("5");
        });
        assertThat(program.get("/healthz").statusCode()).isEqualTo(200);
        server.start();
    }

    private static void breakOffConnections(PostgresServer server) {
        server.execute("postgres",
            "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = '" + DATABASE + "'");
    }

    private static void check(PostgresServer server, RunningProgram program, Ledger ledger, Persistence persistence)
        throws Exception {
        assertThat(ledger.unexpected()).as(program.log()).isEmpty();
        assertThat(persistence.refused()).isPositive();
        RecordedSpots recorded = RecordedSpots.of(program, "A7");
        assertThat(recorded.labels()).doesNotHaveDuplicates();
        Map<String, String> sent = ledger.acknowledged();
        long lost = sent.keySet().stream().filter(label -> !recorded.labels().contains(label)).count();
        Figures.print("database server stopped and started, connections broken off", ROUNDS + " times each: "
            + sent.size() + " spots acknowledged, " + lost + " lost; " + persistence.refused()
            + " requests answered 503 and sent again, " + persistence.unanswered() + " not answered");
        assertThat(lost).isZero();
        for (int i = 0; i < recorded.count(); i++) {
            assertThat(recorded.copper().get(i)).isEqualTo(sent.get(recorded.labels().get(i)));
        }
        DatabaseAddress address = new DatabaseAddress(server.url(DATABASE), Optional.of(PostgresServer.USER),
            Optional.of(PostgresServer.PASSWORD));
        assertThat(RecordDatabase.read(address, access -> AuditChain.check(access, List.of())).broken()).isEmpty();
    }
}
