package surfeit.storage;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.util.Properties;
import org.postgresql.PGProperty;

/**
 * How the database server is used: one connection that writes, a few that read.
 *
 * <p>Writers read what was committed before their turn began; readers see the one state that held when their first
 * question was asked ({@code REPEATABLE READ READ ONLY}). A commit is on the server's disk before it returns, also where
 * the server's own default is less strict.
 */
final class PostgresSettings {
    /** How long a request waits for a free connection, or for the server to come back. Judgement. */
    private static final long CONNECTION_TIMEOUT_MS = 5_000;
    private static final int CONNECT_TIMEOUT_S = 5;
    /** Longest silence of the server within one question; longer than a turn may be waited for. Judgement. */
    private static final int SILENCE_S = 180;
    /** How long a writer waits for its turn while another program writes. Judgement: a large import takes a minute. */
    private static final int TURN_S = 120;
    /** After this long without a word the server takes the turn away from a program that hangs. Judgement. */
    private static final int HANGING_S = 60;
    /** Rows fetched at once, so that a long answer is never held whole. Judgement. */
    private static final int ROWS_AT_ONCE = 2_000;
    /** How a running program is known to the server. */
    static final String SERVICE = "surfeit";
    private static final String SESSION = "SELECT set_config('synchronous_commit', 'on', false) "
        + "WHERE current_setting('synchronous_commit') = 'off'";

    private PostgresSettings() {
    }

    static HikariDataSource writer(DatabaseAddress address) {
        HikariConfig config = pool("surfeit-writer", address, 1);
        config.setTransactionIsolation("TRANSACTION_READ_COMMITTED");
        config.setConnectionInitSql(SESSION);
        return new HikariDataSource(config);
    }

    /** For small things beside the record, which wait for nobody's turn. */
    static HikariDataSource aside(DatabaseAddress address) {
        HikariConfig config = pool("surfeit-aside", address, 1);
        config.setMinimumIdle(0);
        return new HikariDataSource(config);
    }

    static HikariDataSource readers(DatabaseAddress address, int count) {
        HikariConfig config = pool("surfeit-reader", address, count);
        config.setMinimumIdle(1);
        config.setReadOnly(true);
        config.setTransactionIsolation("TRANSACTION_REPEATABLE_READ");
        return new HikariDataSource(config);
    }

    /** What the driver is told for a connection that is used once. */
    static Properties driver(DatabaseAddress address) {
        return driver(address, "surfeit command");
    }

    /** What the driver is told for a connection of a running program. */
    static Properties service(DatabaseAddress address) {
        return driver(address, SERVICE);
    }

    private static Properties driver(DatabaseAddress address, String name) {
        Properties properties = new Properties();
        address.user().ifPresent(user -> PGProperty.USER.set(properties, user));
        address.password().ifPresent(password -> PGProperty.PASSWORD.set(properties, password));
        PGProperty.APPLICATION_NAME.set(properties, name);
        PGProperty.CONNECT_TIMEOUT.set(properties, CONNECT_TIMEOUT_S);
        PGProperty.SOCKET_TIMEOUT.set(properties, SILENCE_S);
        PGProperty.TCP_KEEP_ALIVE.set(properties, true);
        PGProperty.DEFAULT_ROW_FETCH_SIZE.set(properties, ROWS_AT_ONCE);
        PGProperty.LOG_SERVER_ERROR_DETAIL.set(properties, false);
        PGProperty.OPTIONS.set(properties, "-c lock_timeout=" + TURN_S + "s -c idle_in_transaction_session_timeout="
            + HANGING_S + "s");
        return properties;
    }

    private static HikariConfig pool(String name, DatabaseAddress address, int count) {
        HikariConfig config = new HikariConfig();
        config.setPoolName(name);
        config.setJdbcUrl(address.url());
        config.setDataSourceProperties(service(address));
        config.setMaximumPoolSize(count);
        config.setConnectionTimeout(CONNECTION_TIMEOUT_MS);
        config.setInitializationFailTimeout(1);
        return config;
    }
}
