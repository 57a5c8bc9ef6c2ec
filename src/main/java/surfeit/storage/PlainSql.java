package surfeit.storage;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/**
 * Statements run straight on the connection, with {@code ?} for values: for what every upload runs, where looking up
 * names of parameters and converters of values costs more than the engine's own work. Stateless.
 */
final class PlainSql {
    private PlainSql() {
    }

    /** Makes something of a row. */
    interface Reading<T> {
        T of(ResultSet row) throws SQLException;
    }

    /**
     * Writes, or holds what is to be written until it is asked about or the commit comes ({@link HeldRows}).
     *
     * @param values of the parameters in their order: numbers, texts, bytes, or one of these as an Optional
     */
    static void write(Handle handle, String sql, Object... values) {
        if (handle.getStatementBuilder() instanceof KeptStatements kept) {
            kept.held().add(sql, values);
        } else {
            batch(handle, sql, List.<Object[]>of(values));
        }
    }

    /** Writes rows at once. @param rows values as in {@link #write} @return how many rows each of them changed */
    static int[] batch(Handle handle, String sql, List<Object[]> rows) {
        sendBefore(handle, sql);
        return use(handle, sql, statement -> batch(statement, rows));
    }

    static int[] batch(PreparedStatement statement, List<Object[]> rows) throws SQLException {
        for (Object[] row : rows) {
            bind(statement, row);
            statement.addBatch();
        }
        return statement.executeBatch();
    }

    /** Notes what it was that is being written, for {@link #listOf}. */
    static void tell(Handle handle, Object thing) {
        if (handle.getStatementBuilder() instanceof KeptStatements kept) {
            kept.held().tell(thing);
        }
    }

    /** Sends what is held, before a statement that is not. */
    static void sendBefore(Handle handle, String sql) {
        if (handle.getStatementBuilder() instanceof KeptStatements kept) {
            kept.held().sendBefore(sql);
        }
    }

    /** The rows a question finds. @param values as in {@link #write} */
    static <T> List<T> list(Handle handle, String sql, Reading<T> reading, Object... values) {
        sendBefore(handle, sql);
        return listBeside(handle, sql, reading, values);
    }

    /** The same where only what was written about some things can change them. */
    static <T> List<T> listOf(List<?> things, Handle handle, String sql, Reading<T> reading, Object... values) {
        sendAbout(things, handle);
        return listBeside(handle, sql, reading, values);
    }

    /** Sends what is held where some of it was written about one of these things. */
    static void sendAbout(List<?> things, Handle handle) {
        if (handle.getStatementBuilder() instanceof KeptStatements kept
            && things.stream().anyMatch(kept.held()::tells)) {
            kept.held().send();
        }
    }

    /** The same where nothing that is ever held can change them. */
    static <T> List<T> listBeside(Handle handle, String sql, Reading<T> reading, Object... values) {
        return use(handle, sql, statement -> list(statement, reading, values));
    }

    static <T> List<T> list(PreparedStatement statement, Reading<T> reading, Object... values) throws SQLException {
        bind(statement, values);
        List<T> found = new ArrayList<>();
        try (ResultSet rows = statement.executeQuery()) {
            while (rows.next()) {
                found.add(reading.of(rows));
            }
        }
        return found;
    }

    /** The one row a question finds, if there is one. @param values as in {@link #write} */
    static <T> Optional<T> find(Handle handle, String sql, Reading<T> reading, Object... values) {
        List<T> found = list(handle, sql, reading, values);
        return found.isEmpty() ? Optional.empty() : Optional.of(found.get(0));
    }

    /** The one number a question is answered with. @param values as in {@link #write} */
    static long number(Handle handle, String sql, Object... values) {
        return find(handle, sql, row -> row.getLong(1), values).orElseThrow();
    }

    /** Works with a statement of the connection. */
    private static <T> T use(Handle handle, String sql, KeptStatements.Use<T> work) {
        if (handle.getStatementBuilder() instanceof KeptStatements kept) {
            return kept.use(sql, work);
        }
        try (PreparedStatement statement = handle.getConnection().prepareStatement(sql)) {
            return work.of(statement);
        } catch (SQLException e) {
            throw new EngineFailure(e);
        }
    }

    private static void bind(PreparedStatement statement, Object[] values) throws SQLException {
        for (int i = 0; i < values.length; i++) {
            statement.setObject(i + 1, values[i] instanceof Optional<?> value ? value.orElse(null) : values[i]);
        }
    }
}
