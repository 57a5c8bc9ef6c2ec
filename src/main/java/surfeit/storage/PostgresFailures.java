package surfeit.storage;

import java.net.ConnectException;
import java.net.UnknownHostException;
import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.util.Optional;
import java.util.function.Predicate;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/** Says in plain words what a failure of the database server means and what to do, by its SQLSTATE. */
final class PostgresFailures {
    private static final String NOTHING_STORED = " Nothing of the request was stored; send it again in a moment.";

    private PostgresFailures() {
    }

    /** What a failure within a transaction means for the one who asked; anything else is passed on as it is. */
    static RuntimeException working(DatabaseAddress address, RuntimeException failure) {
        if (failure instanceof ProblemException || failure instanceof StorageException) {
            return failure;
        }
        return engineOf(failure).flatMap(engine -> meaning(address, engine)).map(found -> because(found, failure))
            .or(() -> Failures.interrupted(failure)).orElse(failure);
    }

    /** What a failure of the last step, the commit, means: where the connection broke, nobody knows what was stored. */
    static RuntimeException committing(DatabaseAddress address, RuntimeException failure) {
        return engineOf(failure).filter(PostgresFailures::isConnectionLost)
            .map(engine -> because(new ProblemException(Problem.STORAGE_UNAVAILABLE, "The connection to the database "
                + address + " broke while the request was being stored, so that it is not known whether it was. Send it "
                + "again: spots that are on record are not recorded twice."), failure))
            .orElseGet(() -> working(address, failure));
    }

    private static RuntimeException because(ProblemException meaning, RuntimeException failure) {
        meaning.initCause(failure);
        return meaning;
    }

    private static Optional<ProblemException> meaning(DatabaseAddress address, SQLException engine) {
        String state = state(engine);
        if (state.equals("53100")) {
            return problem(Problem.STORAGE_FULL, "The disk of the database " + address
                + " has no room for this. Nothing of the request was stored.");
        }
        if (isConnectionLost(engine)) {
            return problem(Problem.STORAGE_UNAVAILABLE, "The database " + address + " does not answer ("
                + words(engine) + ")." + NOTHING_STORED);
        }
        return switch (state) {
            case "55P03" -> problem(Problem.STORAGE_UNAVAILABLE, "Another program holds the record for writing for a "
                + "long time." + NOTHING_STORED);
            case "40001", "40P01" -> problem(Problem.STORAGE_UNAVAILABLE, "The database " + address
                + " broke off the work because of other work (" + words(engine) + ")." + NOTHING_STORED);
            case "25006" -> problem(Problem.STORAGE_UNAVAILABLE, "The database " + address + " takes no writes: it is a "
                + "copy of another, or set to read only." + NOTHING_STORED);
            case "22021" -> problem(Problem.VALUE_OUT_OF_RANGE,
                "A text holds a zero character (U+0000), which cannot be recorded.");
            default -> Optional.empty();
        };
    }

    /**
     * Whether a failure is for a value (class 22) or a row that does not fit the others (class 23), or comes after such a
     * one in the same transaction (25P02).
     */
    static boolean isOfValues(Throwable failure) {
        return engineOf(failure).map(PostgresFailures::state)
            .filter(state -> state.startsWith("22") || state.startsWith("23") || state.equals("25P02")).isPresent();
    }

    private static Optional<ProblemException> problem(Problem problem, String words) {
        return Optional.of(new ProblemException(problem, words));
    }

    /**
     * Whether the server or the way to it is gone: class 08, what an ending or starting server says (57P0x), too many
     * connections (53300), out of memory (53200), and a turn taken away (25P03).
     */
    private static boolean isConnectionLost(SQLException engine) {
        String state = state(engine);
        return state.startsWith("08") || state.startsWith("57P0") || state.equals("53300") || state.equals("53200")
            || state.equals("25P03") || engine instanceof SQLTransientConnectionException;
    }

    /** What a failure while opening the record means. */
    static StorageException opening(DatabaseAddress address, Exception failure) {
        return new StorageException("The database " + address + " cannot be used: " + engineOf(failure)
            .map(engine -> advice(engine, failure)).orElseGet(() -> failure.getMessage() + "."), failure);
    }

    private static String advice(SQLException engine, Exception failure) {
        String said = words(engine) + ". ";
        String state = state(engine);
        if (caused(failure, cause -> cause instanceof UnknownHostException)) {
            return said + "Check the host in database-url.";
        }
        if (caused(failure, cause -> cause instanceof ConnectException)) {
            return said + "Check host and port in database-url, and that the server runs.";
        }
        return said + switch (state) {
            case "28P01", "28000" -> "Check database-user and database-password.";
            case "3D000" -> "Make the database first, or correct its name in database-url.";
            case "42501" -> "Give the user the right to make tables in the schema.";
            default -> "Check database-url, and what the server's log says.";
        };
    }

    /** What went wrong, without what was asked of the engine. */
    static String words(SQLException engine) {
        return String.valueOf(engine.getMessage()).lines().findFirst().orElse("").replaceAll("\\.$", "");
    }

    private static String state(SQLException engine) {
        return Optional.ofNullable(engine.getSQLState()).orElse("");
    }

    /** The engine's own word: the deepest there is, for a pool's tells little. */
    private static Optional<SQLException> engineOf(Throwable failure) {
        Optional<SQLException> found = Optional.empty();
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLException engine && (found.isEmpty() || engine.getSQLState() != null)) {
                found = Optional.of(engine);
            }
        }
        return found;
    }

    private static boolean caused(Throwable failure, Predicate<Throwable> wanted) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (wanted.test(cause)) {
                return true;
            }
        }
        return false;
    }
}
