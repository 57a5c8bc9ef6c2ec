package surfeit.postgresql;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.Test;

class PostgresServerTest {
    @Test
    void it_writes_through_and_keeps_what_was_committed_when_it_is_stopped() throws SQLException {
        try (PostgresServer server = PostgresServer.own()) {
            assertThat(ask(server, "SHOW fsync")).isEqualTo("on");
            assertThat(ask(server, "SHOW synchronous_commit")).isEqualTo("on");
            server.execute("postgres", "CREATE TABLE kept AS SELECT 7 AS seven");
            server.stop();
            server.start();
            assertThat(ask(server, "SELECT seven FROM kept")).isEqualTo("7");
        }
    }

    private static String ask(PostgresServer server, String sql) throws SQLException {
        try (Connection connection = server.connect("postgres"); Statement statement = connection.createStatement();
             ResultSet rows = statement.executeQuery(sql)) {
            rows.next();
            return rows.getString(1);
        }
    }
}
