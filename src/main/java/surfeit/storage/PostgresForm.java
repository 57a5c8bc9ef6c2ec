package surfeit.storage;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;

/** Looks at the tables before anything is written: are they ours, and not of a newer program; then brings them up to date. */
final class PostgresForm {
    private static final String LOOK = """
        SELECT count(*), count(*) FILTER (WHERE relname = 'flyway_schema_history') FROM pg_class
        WHERE relnamespace = current_schema()::regnamespace AND relkind IN ('r', 'p', 'v', 'm')""";
    private static final String NEWEST = """
        SELECT coalesce(max(version::bigint), 0) FROM flyway_schema_history WHERE success""";

    private PostgresForm() {
    }

    /** True where the tables have the present form already. @throws StorageException where they cannot be used */
    static boolean isCurrent(DatabaseAddress address) {
        try (Connection connection = DriverManager.getConnection(address.url(), PostgresSettings.driver(address));
             Statement statement = connection.createStatement()) {
            return newest(address, statement) == FileCheck.SCHEMA;
        } catch (SQLException e) {
            throw PostgresFailures.opening(address, e);
        }
    }

    private static long newest(DatabaseAddress address, Statement statement) throws SQLException {
        try (ResultSet tables = statement.executeQuery(LOOK)) {
            tables.next();
            if (tables.getLong(2) == 0) {
                if (tables.getLong(1) > 0) {
                    throw new StorageException("The database " + address + " holds the tables of another program. Give "
                        + "this one a database of its own, or a schema (currentSchema in database-url).");
                }
                return 0;
            }
        }
        try (ResultSet history = statement.executeQuery(NEWEST)) {
            history.next();
            long found = history.getLong(1);
            if (found > FileCheck.SCHEMA) {
                throw new StorageException("The database " + address + " was written by a newer program: its form is "
                    + found + ", this program knows up to " + FileCheck.SCHEMA + ". Run the newer program.");
            }
            return found;
        }
    }

    /** Of several programs that start at the same moment one works, under a lock of the database; the others wait. */
    static void migrate(DatabaseAddress address) {
        try {
            Flyway.configure().locations("classpath:db/migration/postgresql")
                .dataSource(address.url(), address.user().orElse(null), address.password().orElse(null)).load().migrate();
        } catch (FlywayException e) {
            throw PostgresFailures.opening(address, e);
        }
    }
}
