package surfeit.storage;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import java.util.function.Supplier;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import surfeit.lab.AuditChain;
import surfeit.lab.AuditCheck;
import surfeit.lab.BackupReport;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/** Reads a backup from end to end: is it whole, and does it hold what it says it holds. */
final class BackupCheck {
    private static final int PIECE = 1 << 16;

    private BackupCheck() {
    }

    /**
     * Checks a backup.
     *
     * @param file  the file to read
     * @param named the name to call it by
     * @throws StorageException saying what is wrong with it
     */
    static BackupReport check(Path file, Path named) {
        try {
            BackupNote note;
            AuditCheck audit;
            try (Handle handle = Jdbi.open(SqliteSettings.single(file))) {
                handle.execute("PRAGMA query_only = ON");
                note = BackupNote.read(handle).orElseThrow(() -> new StorageException("The file " + named
                    + " is no backup: it does not say what must be in it. A plain copy of a data file may lack what"
                    + " stood beside it; make a backup with the command backup."));
                requireKnown(handle, named);
                requireWhole(handle, named);
                audit = requireAudit(handle, note, named);
                requireCounts(handle, note, named);
            }
            return new BackupReport(note.made(), Files.size(file), sha256(file), note.rowCounts(), audit);
        } catch (IOException e) {
            throw new StorageException("The file " + named + " cannot be read: " + e.getMessage() + ".", e);
        } catch (StorageException e) {
            throw e;
        } catch (RuntimeException e) {
            throw damaged(named, Failures.firstWords(e));
        }
    }

    private static void requireKnown(Handle handle, Path named) {
        long form = handle.createQuery("SELECT max(CAST(version AS INTEGER)) FROM flyway_schema_history")
            .mapTo(Long.class).one();
        if (form > FileCheck.SCHEMA) {
            throw new StorageException("The backup " + named + " was made by a newer program: its form is " + form
                + ", this program knows up to " + FileCheck.SCHEMA + ". Restore it with the newer program.");
        }
    }

    private static void requireWhole(Handle handle, Path named) {
        String pages = handle.createQuery("PRAGMA integrity_check(1)").mapTo(String.class).first();
        if (!pages.equals("ok")) {
            throw damaged(named, pages);
        }
        handle.createQuery("PRAGMA foreign_key_check").mapTo(String.class).findFirst().ifPresent(table -> {
            throw damaged(named, "a row of " + table + " refers to one that is missing");
        });
    }

    private static void requireCounts(Handle handle, BackupNote note, Path named) {
        SortedMap<String, Long> found = BackupNote.count(SqliteEngine.INSTANCE, handle);
        if (!found.equals(note.rowCounts())) {
            throw damaged(named, "expected these rows: " + note.rowCounts() + ", found " + found);
        }
    }

    private static AuditCheck requireAudit(Handle handle, BackupNote note, Path named) {
        AuditCheck found = AuditChain.check(new SqlReadAccess(handle), List.of());
        if (!found.broken().map(AuditCheck.Broken::number).equals(note.broken())) {
            throw damaged(named, "its audit does not fit: "
                + found.broken().map(AuditCheck.Broken::what).orElse("a row that was broken is no longer"));
        }
        if (!found.head().equals(note.auditHead())) {
            throw damaged(named, "its audit does not fit: expected " + note.auditHead().count() + " rows that end in "
                + note.auditHead().hash() + ", found " + found.head().count() + " that end in " + found.head().hash());
        }
        return found;
    }

    /** Does work on a file that is being made, and puts engine failures into words about that file. */
    static <T> T working(Path file, Supplier<T> work) {
        try {
            return work.get();
        } catch (RuntimeException e) {
            throw Failures.working(file, e);
        }
    }

    static StorageException damaged(Path named, String how) {
        return new StorageException("The backup " + named + " is damaged (" + how
            + "). Nothing was made from it. Use another backup.");
    }

    private static String sha256(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            Sha256 hash = new Sha256();
            byte[] piece = new byte[PIECE];
            for (int count = in.read(piece); count >= 0; count = in.read(piece)) {
                hash.add(piece, count);
            }
            return hash.take();
        }
    }
}
