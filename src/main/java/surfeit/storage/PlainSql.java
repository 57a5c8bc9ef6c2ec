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

    /** A statement of the connection; {@link #giveBack} when done. */
    static PreparedStatement take(Handle handle, String sql) throws SQLException {
        return handle.getStatementBuilder() instanceof KeptStatements kept ? kept.take(sql)
            : handle.getConnection().prepareStatement(sql);
    }

    static void giveBack(Handle handle, String sql, PreparedStatement statement) throws SQLException {
        if (handle.getStatementBuilder() instanceof KeptStatements kept) {
            kept.giveBack(sql, statement);
        } else {
            statement.close();
        }
    }

    /** @param values of the parameters in their order: numbers, texts, bytes, or one of these as an Optional */
    static void update(Handle handle, String sql, Object... values) {
        try {
            PreparedStatement statement = take(handle, sql);
            try {
                bind(statement, values);
                statement.executeUpdate();
            } finally {
                giveBack(handle, sql, statement);
            }
        } catch (SQLException e) {
            throw new EngineFailure(e);
        }
    }

    /** The rows a question finds. @param values as in {@link #update} */
    static <T> List<T> list(Handle handle, String sql, Reading<T> reading, Object... values) {
        try {
            PreparedStatement statement = take(handle, sql);
            try {
                bind(statement, values);
                List<T> found = new ArrayList<>();
                try (ResultSet rows = statement.executeQuery()) {
                    while (rows.next()) {
                        found.add(reading.of(rows));
                    }
                }
                return found;
            } finally {
                giveBack(handle, sql, statement);
            }
        } catch (SQLException e) {
            throw new EngineFailure(e);
        }
    }

    /** The one row a question finds, if there is one. @param values as in {@link #update} */
    static <T> Optional<T> find(Handle handle, String sql, Reading<T> reading, Object... values) {
        List<T> found = list(handle, sql, reading, values);
        return found.isEmpty() ? Optional.empty() : Optional.of(found.get(0));
    }

    /** The one number a question is answered with. @param values as in {@link #update} */
    static long number(Handle handle, String sql, Object... values) {
        return find(handle, sql, row -> row.getLong(1), values).orElseThrow();
    }

    private static void bind(PreparedStatement statement, Object[] values) throws SQLException {
        for (int i = 0; i < values.length; i++) {
            statement.setObject(i + 1, values[i] instanceof Optional<?> value ? value.orElse(null) : values[i]);
        }
    }
}
