package surfeit.storage;

import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Counts what is on record, and checks that what holds now is what was recorded last. Bound to one transaction. */
final class SqlRecordTotals {
    private final Handle handle;

    SqlRecordTotals(Handle handle) {
        this.handle = handle;
    }

    /** In words where a table has other than so many rows. */
    Optional<String> otherThan(long told, String things, String table) {
        long found = number("SELECT count(*) FROM " + table);
        return found == told ? Optional.empty()
            : Optional.of(found + " " + things + " are on record, the audit tells of " + told);
    }

    /** In words where a present revision does not follow from the revisions themselves. */
    Optional<String> misplaced() {
        return wrong("revisions of spots", """
                SELECT count(*) FROM spot_revision r WHERE r.until_revision IS DISTINCT FROM
                    (SELECT x.from_revision FROM spot_revision x
                     WHERE x.sample = r.sample AND x.spot = r.spot AND x.n = r.n + 1)""")
            .or(() -> wrong("samples", """
                SELECT count(*) FROM sample s WHERE s.revision IS DISTINCT FROM
                    (SELECT max(r.n) FROM sample_revision r WHERE r.sample = s.id)"""))
            .or(() -> wrong("revisions of samples", """
                SELECT count(*) FROM sample_revision r
                LEFT JOIN sample_revision b ON b.sample = r.sample AND b.n = r.n - 1
                WHERE r.described IS DISTINCT FROM CASE WHEN r.what = 'described' THEN r.n ELSE b.described END"""))
            .or(() -> wrong("counts of spots", """
                SELECT count(*) FROM sample s JOIN sample_revision r ON r.sample = s.id AND r.n = s.revision
                WHERE r.spot_count IS DISTINCT FROM (SELECT count(*) FROM spot_revision x
                    WHERE x.sample = s.id AND x.until_revision IS NULL AND x.withdrawn = 0)"""))
            .or(() -> wrong("alloys", """
                SELECT count(*) FROM alloy a WHERE a.revision IS DISTINCT FROM
                    (SELECT max(r.n) FROM alloy_revision r WHERE r.alloy = a.id)"""));
    }

    private Optional<String> wrong(String things, String query) {
        long count = number(query);
        return count == 0 ? Optional.empty()
            : Optional.of(count + " " + things + " do not follow from what was recorded");
    }

    private long number(String query) {
        return handle.createQuery(query).mapTo(Long.class).one();
    }
}
