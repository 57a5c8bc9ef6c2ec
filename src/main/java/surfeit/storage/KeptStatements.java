package surfeit.storage;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.DefaultStatementBuilder;
import org.jdbi.v3.core.statement.StatementBuilder;
import org.jdbi.v3.core.statement.StatementBuilderFactory;
import org.jdbi.v3.core.statement.StatementContext;

/**
 * Statements of one connection, prepared once and kept for the next time: preparing costs SQLite about as much as
 * running. A statement that is in use is never given out twice. For one thread at a time, as its connection.
 */
final class KeptStatements extends DefaultStatementBuilder {
    /** Statements kept of one connection; those of lists come in some variants. Judgement. */
    private static final int KEPT_MAX = 256;

    private final Connection connection;
    private final Map<String, PreparedStatement> kept = new HashMap<>();
    private final HeldRows held = new HeldRows(this);

    private KeptStatements(Connection connection) {
        this.connection = connection;
    }

    /** Works with a statement. */
    interface Use<T> {
        T of(PreparedStatement statement) throws SQLException;
    }

    /** What a pool's users are given for its connections, each of which has its own statements. */
    static StatementBuilderFactory factory() {
        Map<Connection, KeptStatements> all = new ConcurrentHashMap<>();
        return pooled -> {
            try {
                Connection connection = pooled.unwrap(Connection.class);
                KeptStatements known = all.get(connection);
                if (known == null) {
                    known = new KeptStatements(connection);
                    all.values().removeIf(KeptStatements::isOver);
                    all.put(connection, known);
                }
                return known;
            } catch (SQLException e) {
                throw new EngineFailure(e);
            }
        };
    }

    /** True once the pool has closed the connection, and its statements with it. */
    private boolean isOver() {
        try {
            return connection.isClosed();
        } catch (SQLException e) {
            throw new EngineFailure(e);
        }
    }

    @Override
    public PreparedStatement create(Connection pooled, String sql, StatementContext context) throws SQLException {
        held.sendBefore(sql);
        return take(sql);
    }

    @Override
    public void close(Connection pooled, String sql, java.sql.Statement statement) throws SQLException {
        giveBack(sql, (PreparedStatement) statement);
    }

    /** What the transaction under way is still to write over the one connection that writes. */
    static HeldRows held(Handle handle) {
        return ((KeptStatements) handle.getStatementBuilder()).held;
    }

    HeldRows held() {
        return held;
    }

    /** Works with a statement of the connection; one that fails is not kept. */
    <T> T use(String sql, Use<T> work) {
        try {
            PreparedStatement statement = take(sql);
            T made;
            try {
                made = work.of(statement);
            } catch (SQLException | RuntimeException e) {
                statement.close();
                throw e;
            }
            giveBack(sql, statement);
            return made;
        } catch (SQLException e) {
            throw new EngineFailure(e);
        }
    }

    private PreparedStatement take(String sql) throws SQLException {
        PreparedStatement statement = kept.remove(sql);
        return statement == null ? connection.prepareStatement(sql) : statement;
    }

    private void giveBack(String sql, PreparedStatement statement) throws SQLException {
        if (kept.size() >= KEPT_MAX || kept.containsKey(sql)) {
            statement.close();
        } else {
            statement.clearParameters();
            kept.put(sql, statement);
        }
    }
}
