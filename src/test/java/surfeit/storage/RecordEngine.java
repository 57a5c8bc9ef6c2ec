package surfeit.storage;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import surfeit.lab.BackupReport;
import surfeit.postgresql.PostgresServer;

/** The database engines a record may be kept by, for tests that hold for each of them. */
public enum RecordEngine {
    SQLITE {
        @Override
        public RecordStore open(Path folder) {
            return SqliteStore.open(folder);
        }

        @Override
        public RecordStore open(Path folder, int writesWaitingMax) {
            return SqliteStore.open(folder, writesWaitingMax);
        }

        @Override
        Connection connect(Path folder) throws SQLException {
            return DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("surfeit.db"));
        }

        @Override
        BackupReport backup(Path folder, Path file, Instant when) {
            return SqliteBackup.take(folder, file, when);
        }
    },
    POSTGRESQL {
        @Override
        public RecordStore open(Path folder) {
            return PostgresStore.open(PostgresDatabases.of(folder), CONNECTIONS);
        }

        @Override
        public RecordStore open(Path folder, int writesWaitingMax) {
            return PostgresStore.open(PostgresDatabases.of(folder), CONNECTIONS, writesWaitingMax);
        }

        @Override
        Connection connect(Path folder) throws SQLException {
            DatabaseAddress address = PostgresDatabases.of(folder);
            return DriverManager.getConnection(address.url(), PostgresSettings.driver(address));
        }

        @Override
        BackupReport backup(Path folder, Path file, Instant when) {
            return PostgresBackup.take(PostgresDatabases.of(folder), file, when);
        }

        @Override
        int change(Path folder, String sql) throws SQLException {
            return super.change(folder, sql.replaceAll("x'([0-9a-f]*)'", "'\\\\x$1'::bytea"));
        }
    };

    public static final int CONNECTIONS = 9;

    /** Opens the record that belongs to a folder, making it where it is missing. */
    public abstract RecordStore open(Path folder);

    /** The same, where no more writes may wait than these. */
    public abstract RecordStore open(Path folder, int writesWaitingMax);

    abstract Connection connect(Path folder) throws SQLException;

    abstract BackupReport backup(Path folder, Path file, Instant when);

    /** Changes the record of a folder behind the program's back; {@code x'00'} stands for bytes. @return how many rows */
    int change(Path folder, String sql) throws SQLException {
        try (Connection connection = connect(folder); Statement statement = connection.createStatement()) {
            return statement.executeUpdate(sql);
        }
    }

    /** A database for each folder, on the server that the tests share. */
    public static final class PostgresDatabases {
        /** As many as one test uses; then the one used first is emptied for another folder. */
        private static final int COUNT = 6;
        private static final Map<Path, DatabaseAddress> ADDRESSES = new LinkedHashMap<>();

        private PostgresDatabases() {
        }

        public static synchronized DatabaseAddress of(Path folder) {
            Path path = folder.toAbsolutePath();
            if (!ADDRESSES.containsKey(path)) {
                ADDRESSES.put(path, ADDRESSES.size() < COUNT ? create("lab_" + ADDRESSES.size()) : emptied());
            }
            return ADDRESSES.get(path);
        }

        private static DatabaseAddress create(String name) {
            PostgresServer server = PostgresServer.shared();
            server.createDatabase(name);
            return new DatabaseAddress(server.url(name), Optional.of(PostgresServer.USER),
                Optional.of(PostgresServer.PASSWORD));
        }

        private static DatabaseAddress emptied() {
            DatabaseAddress address = ADDRESSES.remove(ADDRESSES.keySet().iterator().next());
            try (PostgresStore store = PostgresStore.open(address, CONNECTIONS)) {
                store.write(access -> {
                    Handle handle = ((SqlReadAccess) access).handle;
                    handle.execute("SET LOCAL session_replication_role = replica");
                    PostgresEngine.INSTANCE.tables(handle).stream().filter(table -> !table.startsWith("flyway"))
                        .forEach(table -> handle.execute("DELETE FROM " + table));
                    return handle.execute("UPDATE turn SET last_event = 0");
                });
            }
            return address;
        }
    }
}
