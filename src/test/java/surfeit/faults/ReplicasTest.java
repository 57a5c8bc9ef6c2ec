package surfeit.faults;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.lab.AuditChain;
import surfeit.lab.EventFilter;
import surfeit.lab.LabEvent;
import surfeit.postgresql.PostgresServer;
import surfeit.storage.DatabaseAddress;
import surfeit.storage.RecordDatabase;
import surfeit.storage.RecordEngine;

/** Two services on one database: one is killed while senders go on, and neither contradicts the other. */
class ReplicasTest {
    private static final int ROUNDS = Integer.getInteger("surfeit.faults.rounds", 2);
    private static final int SPOTS_A_TABLE = 40;
    private static final int SENDERS = 4;

    @TempDir
    Path folder;

    private DatabaseAddress address() {
        return RecordEngine.PostgresDatabases.of(folder);
    }

    private RunningProgram serve() throws Exception {
        return RunningProgram.serve(address().url(), PostgresServer.USER, PostgresServer.PASSWORD);
    }

    @Test
    void one_of_two_services_is_killed_while_senders_go_on_and_nothing_acknowledged_is_lost() throws Exception {
        Ledger ledger = new Ledger();
        List<RunningProgram> services = new CopyOnWriteArrayList<>(List.of(serve(), serve()));
        try {
            services.get(0).put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
            Persistence persistence = new Persistence(services, ledger);
            List<Thread> senders = new ArrayList<>();
            for (int i = 0; i < SENDERS; i++) {
                int own = i;
                senders.add(persistence.sender(i, (n, random) -> own % 2 == 0
                    ? SentSpots.keyed("A7", "k" + own + "." + n, 3, random)
                    : SentSpots.table("A7", "t" + own + "." + n, SPOTS_A_TABLE, random)));
            }
            senders.forEach(Thread::start);
            for (int round = 0; round < ROUNDS; round++) {
                awaitMore(ledger);
                services.get(round % 2).kill();
                awaitMore(ledger);
                services.set(round % 2, serve());
            }
            awaitMore(ledger);
            persistence.end(senders);
            check(services, ledger, persistence);
        } finally {
            for (RunningProgram service : services) {
                service.close();
            }
        }
    }

    private static void awaitMore(Ledger ledger) throws InterruptedException {
        int before = ledger.acknowledgedCount();
        long deadline = System.nanoTime() + Duration.ofSeconds(60).toNanos();
        while (ledger.acknowledgedCount() < before + 4 * SPOTS_A_TABLE) {
            assertThat(System.nanoTime()).as("the other service goes on").isLessThan(deadline);
            Thread.sleep(5);
        }
    }

    private void check(List<RunningProgram> services, Ledger ledger, Persistence persistence) throws Exception {
        assertThat(ledger.unexpected()).isEmpty();
        assertThat(persistence.unanswered()).isPositive();
        RecordedSpots recorded = RecordedSpots.of(services.get(0), "A7");
        assertThat(recorded.labels()).doesNotHaveDuplicates();
        assertThat(RecordedSpots.of(services.get(1), "A7")).isEqualTo(recorded);
        Map<String, String> found = new HashMap<>();
        for (int i = 0; i < recorded.count(); i++) {
            found.put(recorded.labels().get(i), recorded.copper().get(i));
        }
        Map<String, String> sent = ledger.acknowledged();
        long lost = sent.entrySet().stream().filter(spot -> !spot.getValue().equals(found.get(spot.getKey()))).count();
        Figures.print("one of two services on a database killed", ROUNDS + " times: " + sent.size()
            + " spots acknowledged, " + lost + " lost; " + persistence.unanswered() + " requests without an answer");
        assertThat(found.keySet()).isEqualTo(sent.keySet());
        assertThat(lost).isZero();
        checkRecord(recorded.count());
    }

    private void checkRecord(int spots) {
        assertThat(RecordDatabase.read(address(), access -> AuditChain.check(access, List.of())).broken()).isEmpty();
        List<LabEvent> events = RecordDatabase.read(address(),
            access -> access.events(EventFilter.ALL, 0, Integer.MAX_VALUE));
        assertThat(events).extracting(LabEvent::id).isSorted().startsWith(1L).endsWith((long) events.size());
        assertThat(events.stream().mapToLong(event -> event.acceptedCount().orElse(0)).sum()).isEqualTo(spots);
    }

    @Test
    void an_event_committed_through_one_service_reaches_the_clients_of_the_other_each_once_and_in_order() throws Exception {
        try (RunningProgram first = serve(); RunningProgram second = serve();
             HeardEvents atFirst = HeardEvents.of(first); HeardEvents atSecond = HeardEvents.of(second)) {
            first.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
            long sent = System.nanoTime();
            Senders.post(first, SentSpots.single("A7", "alone", new Random(1)));
            atSecond.await(2);
            Duration heard = Duration.ofNanos(System.nanoTime() - sent);

            for (int n = 0; n < 60; n++) {
                Senders.post(n % 3 == 0 ? second : first, SentSpots.single("A7", "s" + n, new Random(n)));
                if (n % 20 == 10) {
                    breakOffListeners();
                }
            }
            atFirst.await(62);
            atSecond.await(62);

            assertThat(atFirst.ids()).isEqualTo(LongStream.rangeClosed(1, 62).boxed().toList());
            assertThat(atSecond.ids()).isEqualTo(atFirst.ids());
            assertThat(heard).as("woken, not found in the round of every 15 seconds").isLessThan(Duration.ofSeconds(10));
            Figures.print("events over two services, connections that hear of them broken off", "3 times: 62 events at each, "
                + "no gap, no repeat");
        }
    }

    private void breakOffListeners() {
        PostgresServer.shared().execute("postgres", "SELECT pg_terminate_backend(pid) FROM pg_stat_activity "
            + "WHERE query LIKE 'LISTEN%' AND datname = '" + address().url().replaceAll(".*/", "") + "'");
    }
}
