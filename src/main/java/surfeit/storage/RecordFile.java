package surfeit.storage;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.sqlite.SQLiteConfig;
import surfeit.lab.ReadAccess;

/** Looks into the record of a folder from outside, also while a service works on it; changes nothing. */
public final class RecordFile {
    private RecordFile() {
    }

    /**
     * Reads one unchanging state of the record.
     *
     * @throws StorageException where there is none, or it cannot be read
     */
    public static <T> T read(Path folder, Function<ReadAccess, T> work) {
        Path file = in(folder);
        try (Handle handle = open(file)) {
            return handle.inTransaction(open -> work.apply(new SqlReadAccess(open)));
        } catch (RuntimeException e) {
            throw Failures.working(file, e);
        }
    }

    /** The file of a folder that holds a record. */
    static Path in(Path folder) {
        Path file = folder.resolve(DataFolder.FILE_NAME);
        if (!Files.isRegularFile(file)) {
            throw new StorageException("There is no record in the data folder " + folder + " (no file "
                + DataFolder.FILE_NAME + "). Name the folder the service was started with, with --data.");
        }
        FileCheck.isCurrent(file);
        return file;
    }

    static Handle open(Path file) {
        Handle handle = Jdbi.open(SqliteSettings.dataSource(file, SQLiteConfig.TransactionMode.DEFERRED));
        handle.execute("PRAGMA query_only = ON");
        return handle;
    }
}
