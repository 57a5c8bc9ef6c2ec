package surfeit.storage;

import java.sql.Array;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.postgresql.PGStatement;

/** Looks spots up in PostgreSQL, however many, with one question. Stateless. */
final class PostgresLookup {
    private static final String SPOTS = """
        SELECT k.place, f.id, f.withdrawn, f.payload
        FROM unnest(?::bigint[], ?::text[], ?::text[], ?::bigint[]) WITH ORDINALITY
            AS k (sample, session, label, acquired, place)
        CROSS JOIN LATERAL (
            SELECT p.id, r.withdrawn, r.payload FROM spot p
            JOIN spot_revision r ON r.sample = p.sample AND r.spot = p.id AND r.until_revision IS NULL
            WHERE p.sample = k.sample AND p.session = k.session AND p.label = k.label AND p.acquired = k.acquired
            LIMIT 1) f""";

    private PostgresLookup() {
    }

    /**
     * The rows a question finds, as {@link PlainSql#listBeside}, that is planned each time: a plan kept from when there
     * were few rows goes through all of them later.
     */
    static <T> List<T> ask(Handle handle, String sql, PlainSql.Reading<T> reading, Object... values) {
        try (PreparedStatement statement = handle.getConnection().prepareStatement(sql)) {
            statement.unwrap(PGStatement.class).setPrepareThreshold(0);
            return PlainSql.list(statement, reading, values);
        } catch (SQLException e) {
            throw new EngineFailure(e);
        }
    }

    /** The spot on record at each of these places, looked up in the index, which LIMIT makes sure of. */
    static List<Optional<SpotLots.Found>> find(Handle handle, List<SpotLots.Place> places) {
        PlainSql.sendAbout(places, handle);
        List<Optional<SpotLots.Found>> found = new ArrayList<>(Collections.nCopies(places.size(), Optional.empty()));
        ask(handle, SPOTS, row -> found.set(row.getInt(1) - 1,
                Optional.of(new SpotLots.Found(row.getLong(2), row.getInt(3) == 1, row.getBytes(4)))),
            array(handle, "bigint", places.stream().map(SpotLots.Place::sample)),
            array(handle, "text", places.stream().map(place -> place.key().session().orElse(""))),
            array(handle, "text", places.stream().map(place -> place.key().label())),
            array(handle, "bigint", places.stream().map(place -> AcquiredTime.of(place.key().acquired()))));
        return found;
    }

    static Array array(Handle handle, String type, Stream<?> values) {
        try {
            return handle.getConnection().createArrayOf(type, values.toArray());
        } catch (SQLException e) {
            throw new EngineFailure(e);
        }
    }
}
