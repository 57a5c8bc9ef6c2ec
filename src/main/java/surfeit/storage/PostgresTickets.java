package surfeit.storage;

import com.zaxxer.hikari.HikariDataSource;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import org.jdbi.v3.core.Jdbi;
import surfeit.lab.SharedTickets;

/** Passes for event streams in the database; their age goes by the clock of its server. Thread-safe. */
final class PostgresTickets implements SharedTickets {
    private final DatabaseAddress address;
    private final Jdbi database;

    PostgresTickets(DatabaseAddress address, HikariDataSource connections) {
        this.address = address;
        this.database = Jdbi.create(connections);
    }

    @Override
    public boolean keep(String sha256, Optional<String> token, int validSeconds, int most) {
        try {
            return database.withHandle(handle -> {
                handle.execute("DELETE FROM event_ticket WHERE issued < now() - make_interval(secs => ?)", validSeconds);
                return handle.createUpdate("""
                        INSERT INTO event_ticket (sha256, token)
                        SELECT :sha256, :token WHERE (SELECT count(*) FROM event_ticket) < :most""")
                    .bind("sha256", sha256).bind("token", token.orElse(null)).bind("most", most).execute() == 1;
            });
        } catch (RuntimeException e) {
            throw PostgresFailures.working(address, e);
        }
    }

    @Override
    public Optional<Taken> take(String sha256, int validSeconds) {
        try {
            return database.withHandle(handle -> handle.createQuery("""
                    DELETE FROM event_ticket WHERE sha256 = :sha256
                    RETURNING token, issued >= now() - make_interval(secs => :valid) AS in_time""")
                .bind("sha256", sha256).bind("valid", validSeconds)
                .map((row, context) -> Optional.of(new Taken(Optional.ofNullable(row.getString("token"))))
                    .filter(taken -> inTime(row)))
                .findOne().flatMap(taken -> taken));
        } catch (RuntimeException e) {
            throw PostgresFailures.working(address, e);
        }
    }

    private static boolean inTime(ResultSet row) {
        try {
            return row.getBoolean("in_time");
        } catch (SQLException e) {
            throw new EngineFailure(e);
        }
    }
}
