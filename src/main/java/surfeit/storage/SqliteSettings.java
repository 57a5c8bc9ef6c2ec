package surfeit.storage;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.nio.file.Path;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/**
 * How the file is opened: one connection that writes, a few that read.
 *
 * <p>Write-ahead log, so that readers see an unchanging state and never wait for the writer; {@code synchronous=FULL},
 * so that what was answered survives a loss of power; foreign keys on.
 */
final class SqliteSettings {
    /** How long a connection waits for a lock that another program, such as a backup tool, holds on the file. */
    private static final int BUSY_TIMEOUT_MS = 5000;
    /** How long a reader waits for a free connection. Judgement: longer than any answer should take. */
    private static final long CONNECTION_TIMEOUT_MS = 30_000;

    private SqliteSettings() {
    }

    static SQLiteDataSource dataSource(Path file, SQLiteConfig.TransactionMode mode) {
        return dataSource(file, mode, SQLiteConfig.JournalMode.WAL);
    }

    /** A file that nobody else works on, whole in itself: nothing of it stands in files beside it when it is closed. */
    static SQLiteDataSource single(Path file) {
        return dataSource(file, SQLiteConfig.TransactionMode.DEFERRED, SQLiteConfig.JournalMode.DELETE);
    }

    private static SQLiteDataSource dataSource(Path file, SQLiteConfig.TransactionMode mode,
                                               SQLiteConfig.JournalMode journal) {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(journal);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.enforceForeignKeys(true);
        config.setBusyTimeout(BUSY_TIMEOUT_MS);
        config.setTransactionMode(mode);
        config.setGetGeneratedKeys(false); // or each insert asks for its key once more
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + file.toAbsolutePath());
        return source;
    }

    static HikariDataSource writer(Path file) {
        HikariConfig config = pool("surfeit-writer", file, SQLiteConfig.TransactionMode.IMMEDIATE);
        config.setMaximumPoolSize(1);
        config.setConnectionInitSql("PRAGMA wal_autocheckpoint = " + Checkpoints.LOG_PAGES_MAX);
        return new HikariDataSource(config);
    }

    static HikariDataSource readers(Path file, int count) {
        HikariConfig config = pool("surfeit-reader", file, SQLiteConfig.TransactionMode.DEFERRED);
        config.setMaximumPoolSize(count);
        config.setMinimumIdle(1);
        config.setConnectionInitSql("PRAGMA query_only = ON");
        return new HikariDataSource(config);
    }

    private static HikariConfig pool(String name, Path file, SQLiteConfig.TransactionMode mode) {
        HikariConfig config = new HikariConfig();
        config.setPoolName(name);
        config.setDataSource(dataSource(file, mode));
        config.setConnectionTimeout(CONNECTION_TIMEOUT_MS);
        config.setMaxLifetime(0);
        return config;
    }
}
