package surfeit.storage;

import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.transaction.TransactionIsolationLevel;
import surfeit.lab.ReadAccess;

/** Looks into the record of a database from outside, also while services work on it; changes nothing. */
public final class RecordDatabase {
    private RecordDatabase() {
    }

    /**
     * Reads one unchanging state of the record.
     *
     * @throws StorageException where there is none, or it cannot be read
     */
    public static <T> T read(DatabaseAddress address, Function<ReadAccess, T> work) {
        requireRecord(address);
        try (Handle handle = open(address)) {
            return handle.inTransaction(TransactionIsolationLevel.REPEATABLE_READ,
                open -> work.apply(new SqlReadAccess(open)));
        } catch (RuntimeException e) {
            throw PostgresFailures.working(address, e);
        }
    }

    static void requireRecord(DatabaseAddress address) {
        if (!PostgresForm.isCurrent(address)) {
            throw new StorageException("There is no record in the database " + address + ", or one of an older program. "
                + "Check database-url, or start the service on it once.");
        }
    }

    static Handle open(DatabaseAddress address) {
        try {
            Handle handle = Jdbi.open(DriverManager.getConnection(address.url(), PostgresSettings.driver(address)));
            handle.setReadOnly(true);
            return handle;
        } catch (SQLException e) {
            throw PostgresFailures.opening(address, e);
        }
    }
}
