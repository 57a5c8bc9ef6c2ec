package surfeit.storage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import surfeit.lab.BackupReport;

/**
 * Makes a record from a backup, in an empty folder only: nothing on record is ever overwritten.
 *
 * <p>The file is copied, and the copy is checked from end to end, before it takes its name; one that is not what it
 * says of itself, or whose audit or content was changed since, is refused. The restored record keeps the end of the
 * audit it was restored with, so that a later check shows a cut below it.
 */
public final class SqliteRestore {
    private static final int NAMES_SHOWN = 3;

    private SqliteRestore() {
    }

    /** @throws StorageException where that cannot be, in words that say what to do */
    public static BackupReport restore(Path backup, Path folder, Instant when) {
        if (!Files.isRegularFile(backup)) {
            throw new StorageException("There is no backup file " + backup + ".");
        }
        refuseUnlessEmpty(folder);
        try (DataFolder claimed = DataFolder.claim(folder); NewFile file = NewFile.in(folder)) {
            refuseUnlessEmpty(folder);
            copy(backup, file.path());
            BackupReport report = BackupCheck.check(file.path(), backup);
            BackupCheck.working(file.path(), () -> {
                try (Handle handle = Jdbi.open(SqliteSettings.single(file.path()))) {
                    BackupNote.markRestored(handle, when);
                }
                return report;
            });
            file.keepAs(claimed.file());
            return report;
        }
    }

    private static void copy(Path backup, Path file) {
        try {
            try (var in = Files.newInputStream(backup); var out = Files.newOutputStream(file)) {
                in.transferTo(out);
            }
        } catch (IOException e) {
            throw new StorageException("The backup " + backup + " cannot be copied to " + file.getParent() + " ("
                + e.getClass().getSimpleName() + ": " + e.getMessage() + ").", e);
        }
    }

    static void refuseUnlessEmpty(Path folder) {
        if (!Files.isDirectory(folder)) {
            return;
        }
        List<String> names = names(folder);
        if (names.isEmpty()) {
            return;
        }
        if (Files.exists(folder.resolve(DataFolder.LOCK_NAME))) {
            DataFolder.claim(folder).close();
        }
        throw new StorageException("The data folder " + folder + " is not empty (it holds "
            + names.stream().limit(NAMES_SHOWN).collect(Collectors.joining(", "))
            + (names.size() > NAMES_SHOWN ? ", ..." : "")
            + "). Nothing is ever overwritten: name a new or empty"
            + " folder with --data, or move the files elsewhere first.");
    }

    /** What is in the folder beside what this program leaves in an empty one. */
    private static List<String> names(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> !NewFile.isPartial(file)).map(file -> file.getFileName().toString())
                .filter(name -> !name.equals(DataFolder.LOCK_NAME)).sorted().toList();
        } catch (IOException e) {
            throw new StorageException("The data folder " + folder + " cannot be read: " + e.getMessage() + ".", e);
        }
    }
}
