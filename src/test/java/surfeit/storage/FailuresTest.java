package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Optional;
import org.jdbi.v3.core.ConnectionException;
import org.junit.jupiter.api.Test;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/** What failures of the engine are told as. */
class FailuresTest {
    private static final DatabaseAddress ADDRESS = new DatabaseAddress("jdbc:postgresql://127.0.0.1/lab",
        Optional.empty(), Optional.empty());

    @Test
    void a_wait_for_a_connection_that_a_stop_interrupts_is_no_unforeseen_failure() {
        RuntimeException interrupted = new ConnectionException(
            new SQLException("interrupted during connection acquisition", new InterruptedException()));

        for (RuntimeException told : new RuntimeException[] {
            Failures.working(Path.of("record.db"), interrupted), PostgresFailures.working(ADDRESS, interrupted)}) {
            assertThat(told).isInstanceOfSatisfying(ProblemException.class, refusal ->
                assertThat(refusal.problem()).isEqualTo(Problem.SHUTTING_DOWN));
        }
    }

    @Test
    void what_is_no_failure_of_the_engine_stays_what_it_is() {
        RuntimeException other = new IllegalStateException("a fault of the program");

        assertThat(Failures.working(Path.of("record.db"), other)).isSameAs(other);
        assertThat(PostgresFailures.working(ADDRESS, other)).isSameAs(other);
    }
}
