package surfeit.storage;

import java.nio.file.Path;
import java.util.Optional;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/** Says in plain words what a failure of the database engine means and what to do. */
final class Failures {
    /** Free space below which a failed write is put down to a full disk, in bytes. Judgement: less than one commit. */
    private static final long NO_SPACE_BYTES = 1 << 20;

    private Failures() {
    }

    /** What a failure within a transaction means for the one who asked; anything else is passed on as it is. */
    static RuntimeException working(Path file, RuntimeException failure) {
        if (failure instanceof ProblemException || failure instanceof StorageException) {
            return failure;
        }
        return engineOf(failure).map(engine -> working(file, engine, failure)).orElse(failure);
    }

    /** What went wrong, without what was asked of the engine. */
    static String firstWords(RuntimeException failure) {
        return engineOf(failure).map(SQLiteException::getMessage).orElseGet(failure::toString);
    }

    private static Optional<SQLiteException> engineOf(Throwable failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLiteException engine) {
                return Optional.of(engine);
            }
        }
        return Optional.empty();
    }

    private static RuntimeException working(Path file, SQLiteException engine, RuntimeException failure) {
        int code = engine.getResultCode().code & 0xff;
        if (code == SQLiteErrorCode.SQLITE_FULL.code || code == SQLiteErrorCode.SQLITE_IOERR.code && noSpace(file)) {
            ProblemException full = new ProblemException(Problem.STORAGE_FULL, "The disk that holds " + file
                + " has no room for this. Nothing of the request was stored.");
            full.initCause(failure);
            return full;
        }
        if (isDamage(code)) {
            return damaged(file, engine.getMessage());
        }
        if (code == SQLiteErrorCode.SQLITE_BUSY.code || code == SQLiteErrorCode.SQLITE_LOCKED.code) {
            return new StorageException("Another program holds the file " + file
                + " locked. Close it (a database viewer or a backup tool may have it open).", failure);
        }
        if (code == SQLiteErrorCode.SQLITE_READONLY.code || code == SQLiteErrorCode.SQLITE_IOERR.code
            || code == SQLiteErrorCode.SQLITE_CANTOPEN.code) {
            return new StorageException("The file " + file + " cannot be written or read (" + engine.getMessage()
                + "). Check the disk and the rights of the user that runs the service.", failure);
        }
        return failure;
    }

    /** What a failure while opening the file means. */
    static RuntimeException opening(Path file, Exception failure) {
        RuntimeException unexplained = new StorageException("The file " + file + " cannot be opened ("
            + failure.getMessage() + "). Check that it is a file of this program.", failure);
        return engineOf(failure).map(engine -> working(file, engine, unexplained)).orElse(unexplained);
    }

    static StorageException damaged(Path file, String how) {
        return new StorageException("The file " + file + " is damaged (" + how
            + "). Keep a copy of it, and restore the last backup.");
    }

    private static boolean isDamage(int code) {
        return code == SQLiteErrorCode.SQLITE_CORRUPT.code || code == SQLiteErrorCode.SQLITE_NOTADB.code;
    }

    private static boolean noSpace(Path file) {
        return file.toFile().getUsableSpace() < NO_SPACE_BYTES;
    }
}
