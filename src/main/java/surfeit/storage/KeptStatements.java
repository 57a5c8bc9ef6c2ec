package surfeit.storage;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.Collections;
import java.util.HashMap;
import java.util.Map;
import java.util.WeakHashMap;
import org.jdbi.v3.core.statement.DefaultStatementBuilder;
import org.jdbi.v3.core.statement.StatementBuilder;
import org.jdbi.v3.core.statement.StatementBuilderFactory;
import org.jdbi.v3.core.statement.StatementContext;

/**
 * Statements of one connection to a file, prepared once and kept for the next time: preparing costs SQLite about as much
 * as running. A statement that is in use is never given out twice. For one thread at a time, as its connection.
 */
final class KeptStatements extends DefaultStatementBuilder {
    /** Statements kept of one connection; those of lists come in some variants. Judgement. */
    private static final int KEPT_MAX = 256;

    private final Connection connection;
    private final Map<String, PreparedStatement> kept = new HashMap<>();

    private KeptStatements(Connection connection) {
        this.connection = connection;
    }

    /** What a pool's users are given for its connections, each of which has its own statements. */
    static StatementBuilderFactory factory() {
        Map<Connection, KeptStatements> all = Collections.synchronizedMap(new WeakHashMap<>());
        return pooled -> {
            try {
                return all.computeIfAbsent(pooled.unwrap(Connection.class), KeptStatements::new);
            } catch (SQLException e) {
                throw new EngineFailure(e);
            }
        };
    }

    @Override
    public PreparedStatement create(Connection pooled, String sql, StatementContext context) throws SQLException {
        return take(sql);
    }

    @Override
    public void close(Connection pooled, String sql, java.sql.Statement statement) throws SQLException {
        giveBack(sql, (PreparedStatement) statement);
    }

    PreparedStatement take(String sql) throws SQLException {
        PreparedStatement statement = kept.remove(sql);
        return statement == null ? connection.prepareStatement(sql) : statement;
    }

    void giveBack(String sql, PreparedStatement statement) throws SQLException {
        if (kept.size() >= KEPT_MAX || kept.containsKey(sql)) {
            statement.close();
        } else {
            statement.clearParameters();
            kept.put(sql, statement);
        }
    }
}
