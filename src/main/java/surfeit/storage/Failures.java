package surfeit.storage;

import java.nio.file.Path;
import java.sql.SQLTransientConnectionException;
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

    /** What a failure means, in the words of the catalogue and for whoever can mend it. */
    private record Meaning(Problem problem, String words) {
    }

    /** What a failure within a transaction means for the one who asked; anything else is passed on as it is. */
    static RuntimeException working(Path file, RuntimeException failure) {
        if (failure instanceof ProblemException || failure instanceof StorageException) {
            return failure;
        }
        Optional<Meaning> meaning = engineOf(failure).flatMap(engine -> meaning(file, engine))
            .or(() -> waitedInVain(failure, file));
        return meaning.map(found -> because(new ProblemException(found.problem(), found.words()), failure))
            .or(() -> interrupted(failure)).orElse(failure);
    }

    /** What a failure while opening the file means. */
    static RuntimeException opening(Path file, Exception failure) {
        String words = engineOf(failure).flatMap(engine -> meaning(file, engine)).map(Meaning::words)
            .orElseGet(() -> "The file " + file + " cannot be opened (" + failure.getMessage()
                + "). Check that it is a file of this program.");
        return new StorageException(words, failure);
    }

    /** Whether a failure is for a value, or a row that does not fit the others. */
    static boolean isOfValues(Throwable failure) {
        return engineOf(failure).map(engine -> engine.getResultCode().code & 0xff)
            .filter(code -> code == SQLiteErrorCode.SQLITE_CONSTRAINT.code || code == SQLiteErrorCode.SQLITE_TOOBIG.code
                || code == SQLiteErrorCode.SQLITE_MISMATCH.code).isPresent();
    }

    private static RuntimeException because(RuntimeException meaning, RuntimeException failure) {
        meaning.initCause(failure);
        return meaning;
    }

    private static Optional<Meaning> meaning(Path file, SQLiteException engine) {
        int code = engine.getResultCode().code & 0xff;
        if (code == SQLiteErrorCode.SQLITE_FULL.code || code == SQLiteErrorCode.SQLITE_IOERR.code && noSpace(file)) {
            return Optional.of(new Meaning(Problem.STORAGE_FULL, "The disk that holds " + file
                + " has no room for this. Nothing of the request was stored."));
        }
        if (code == SQLiteErrorCode.SQLITE_CORRUPT.code || code == SQLiteErrorCode.SQLITE_NOTADB.code) {
            return unavailable(damaged(file, engine.getMessage()).getMessage());
        }
        if (code == SQLiteErrorCode.SQLITE_BUSY.code || code == SQLiteErrorCode.SQLITE_LOCKED.code) {
            return unavailable("Another program holds the file " + file
                + " locked. Close it (a database viewer or a backup tool may have it open).");
        }
        if (code == SQLiteErrorCode.SQLITE_READONLY.code || code == SQLiteErrorCode.SQLITE_IOERR.code
            || code == SQLiteErrorCode.SQLITE_CANTOPEN.code) {
            return unavailable("The file " + file + " cannot be written or read (" + engine.getMessage()
                + "). Check the disk and the rights of the user that runs the service.");
        }
        return Optional.empty();
    }

    /** All connections to the file were in use for as long as a request waits for one. */
    private static Optional<Meaning> waitedInVain(Throwable failure, Path file) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLTransientConnectionException) {
                return unavailable("More requests than it serves wait for the file " + file
                    + ". Send this one again; where it goes on, spread the load.");
            }
        }
        return Optional.empty();
    }

    /** What it means that a thread was interrupted, which only a service that stops does. */
    static Optional<RuntimeException> interrupted(RuntimeException failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof InterruptedException) {
                return Optional.of(because(
                    new ProblemException(Problem.SHUTTING_DOWN, "It did not wait for the record any longer."), failure));
            }
        }
        return Optional.empty();
    }

    private static Optional<Meaning> unavailable(String words) {
        return Optional.of(new Meaning(Problem.STORAGE_UNAVAILABLE, words));
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

    static StorageException damaged(Path file, String how) {
        return new StorageException("The file " + file + " is damaged (" + how
            + "). Keep a copy of it, and restore the last backup.");
    }

    private static boolean noSpace(Path file) {
        return file.toFile().getUsableSpace() < NO_SPACE_BYTES;
    }
}
