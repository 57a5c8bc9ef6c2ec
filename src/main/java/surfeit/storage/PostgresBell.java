package surfeit.storage;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.postgresql.PGConnection;
import org.postgresql.PGNotification;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import surfeit.lab.Store;

/**
 * Hears of events that any program appended to the record of a database (LISTEN), over a connection of its own. A word that
 * was lost with a connection is made up for: whenever it is there again, everybody is woken. Thread-safe.
 */
final class PostgresBell implements AutoCloseable {
    static final String CHANNEL = "surfeit_event";
    private static final Logger LOG = LoggerFactory.getLogger(PostgresBell.class);
    /** How long it waits for a word before it asks whether the server is there still. Judgement. */
    private static final int SILENCE_MS = 10_000;
    private static final int CHECK_S = 5;
    private static final long RETRY_MS = 1_000;

    private final DatabaseAddress address;
    private final List<Runnable> listeners = new CopyOnWriteArrayList<>();
    private Optional<Thread> thread = Optional.empty();
    private volatile boolean closed;
    private volatile Optional<Connection> connection = Optional.empty();

    PostgresBell(DatabaseAddress address) {
        this.address = address;
    }

    /** Wakes everybody; for what this program appended itself. */
    void ring() {
        listeners.forEach(Runnable::run);
    }

    synchronized Store.Listening add(Runnable wake) {
        listeners.add(wake);
        if (thread.isEmpty()) {
            Thread hearing = new Thread(this::hear, "surfeit-bell");
            hearing.setDaemon(true);
            hearing.start();
            thread = Optional.of(hearing);
        }
        return () -> listeners.remove(wake);
    }

    private void hear() {
        boolean told = false;
        while (!closed) {
            try (Connection open = DriverManager.getConnection(address.url(), PostgresSettings.service(address));
                 Statement statement = open.createStatement()) {
                connection = Optional.of(open);
                statement.execute("LISTEN " + CHANNEL);
                if (told) {
                    LOG.info("Events of {} are heard again.", address);
                }
                told = false;
                ring();
                hear(open);
            } catch (SQLException e) {
                if (!closed && !told) {
                    LOG.warn("Events of {} are not heard for now: {}.", address, PostgresFailures.words(e));
                    told = true;
                }
                pause();
            }
        }
    }

    private void hear(Connection open) throws SQLException {
        PGConnection engine = open.unwrap(PGConnection.class);
        while (!closed) {
            PGNotification[] words = engine.getNotifications(SILENCE_MS);
            if (words != null && words.length > 0) {
                ring();
            } else if (!closed && !open.isValid(CHECK_S)) {
                throw new SQLException("the server does not answer", "08006");
            }
        }
    }

    private static void pause() {
        try {
            Thread.sleep(RETRY_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        closed = true;
        listeners.clear();
        connection.ifPresent(open -> {
            try {
                open.abort(Runnable::run);
            } catch (SQLException e) {
                LOG.debug("A connection was gone already.");
            }
        });
    }
}
