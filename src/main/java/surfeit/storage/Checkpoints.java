package surfeit.storage;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.sqlite.SQLiteConfig;

/**
 * Carries what was committed from the log beside the file over into the file, beside the writer, so that those whose
 * commit fills the log do not wait for it. Where it does not keep pace the writer does the rest itself, as soon as the
 * log is {@value #LOG_PAGES_MAX} pages long. Thread-safe.
 */
final class Checkpoints implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Checkpoints.class);
    /** Length of the log at which the writer carries it over itself: 32 MB. Judgement. */
    static final int LOG_PAGES_MAX = 8192;
    /** Commits between two turns. Judgement: a log of about a megabyte. */
    private static final int COMMITS = 16;

    private final DataSource file;
    private final Thread thread = new Thread(this::work, "surfeit-checkpoints");
    private int commits;
    private boolean closed;

    Checkpoints(Path file) {
        this.file = SqliteSettings.dataSource(file, SQLiteConfig.TransactionMode.DEFERRED);
        thread.setDaemon(true);
        thread.start();
    }

    synchronized void committed() {
        commits++;
        if (commits == COMMITS) {
            notifyAll();
        }
    }

    private void work() {
        while (isDue()) {
            try (Connection connection = file.getConnection(); Statement statement = connection.createStatement()) {
                do {
                    statement.execute("PRAGMA wal_checkpoint(PASSIVE)");
                } while (isDue());
            } catch (SQLException e) {
                LOG.debug("The log was not carried over; the writer does it.", e);
            }
        }
    }

    private synchronized boolean isDue() {
        while (commits < COMMITS && !closed) {
            try {
                wait();
            } catch (InterruptedException e) {
                continue; // only closing ends it
            }
        }
        commits = 0;
        return !closed;
    }

    @Override
    public void close() {
        synchronized (this) {
            closed = true;
            notifyAll();
        }
        try {
            thread.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
