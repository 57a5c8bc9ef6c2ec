package surfeit.faults;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.bench.Goal;
import surfeit.bench.InTurns;
import surfeit.bench.LoadDriver;
import surfeit.postgresql.PostgresServer;
import surfeit.storage.DatabaseAddress;
import surfeit.storage.RecordEngine;

/**
 * Durable single-spot posts of two services on one database beside those of one: database, services and the one who
 * sends share the machine's cores, so that two can gain only what one leaves unused. Invented numbers.
 */
@Tag("bench")
class ReplicaBenchmarkTest {
    private static final int CONNECTIONS = 32;
    private static final int POSTS = 4000;
    /** Posts to each service before the first that counts: what writes is large, and compiled late. */
    private static final int WARM_UP = 12_000;
    /** As a lab runs it: with both compilers. */
    private static final String COMPILERS = "-XX:TieredStopAtLevel=4";
    private static final int ROUNDS = 5;

    @TempDir
    Path folder;

    @Test
    void two_services_on_one_database_beside_one() throws Exception {
        DatabaseAddress address = RecordEngine.PostgresDatabases.of(folder);
        AtomicInteger label = new AtomicInteger();
        try (RunningProgram one = serve(address); RunningProgram other = serve(address)) {
            for (int i = 0; i < CONNECTIONS; i++) {
                one.put("/v1/samples/S" + i, "{\"alloy\": \"ag-cu-eutectic\"}");
            }
            rate(2 * WARM_UP, label, one, other);
            InTurns turns = InTurns.of(ROUNDS, () -> rate(POSTS, label, one), () -> rate(POSTS, label, one, other));
            Goal.REPLICAS.measured(InTurns.digits(turns.ceiling()) + "/s", InTurns.digits(turns.ours()) + "/s",
                InTurns.digits(turns.ratio()), turns.ratio() >= 1.6);
            assertThat(turns.ours()).isPositive();
        }
    }

    private static RunningProgram serve(DatabaseAddress address) throws IOException {
        return RunningProgram.serve(address.url(), PostgresServer.USER, PostgresServer.PASSWORD, COMPILERS);
    }

    private static double rate(int posts, AtomicInteger label, RunningProgram... services) throws IOException {
        int[] ports = java.util.Arrays.stream(services).mapToInt(service -> service.address().getPort()).toArray();
        return LoadDriver.run(ports, CONNECTIONS, posts, number -> LoadDriver.request("POST", "/v1/samples/S"
            + number % CONNECTIONS + "/spots", "{\"unit\": \"at%\", \"spots\": [{\"label\": \"s" + label.incrementAndGet()
            + "\", \"particle\": \"P1\", \"elements\": {\"Ag\": 60.2, \"Cu\": 39.8}}]}")).perSecond();
    }
}
