package surfeit.storage;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import surfeit.lab.AuditEntry;
import surfeit.lab.PublicId;

/**
 * Goes through the frozen answers beside the audit: every one has a row for its freezing, and one more where an input
 * changed since. Bound to one transaction; not thread-safe.
 */
final class SqlInterpretationComparison {
    private final Handle handle;
    private final ContentDigest digest;
    private long stored;
    private long texts;
    private long stale;

    /** @param digest takes up what is found on record */
    SqlInterpretationComparison(Handle handle, ContentDigest digest) {
        this.handle = handle;
        this.digest = digest;
    }

    /** True where the next frozen answer is the one the row tells of. */
    boolean stored(AuditEntry row) {
        stored++;
        boolean found = isOf(row, stored) && handle.createQuery("""
                SELECT i.* FROM interpretation i JOIN sample m ON m.id = i.sample
                WHERE i.id = :id AND m.name = :sample AND i.who = :who AND i.recorded = :recorded""")
            .bind("id", stored).bind("sample", row.sample().orElse("")).bind("who", row.who())
            .bind("recorded", row.when().toString()).map((answer, context) -> add(answer)).findOne().orElse(false);
        if (found) {
            addTexts();
        }
        return found;
    }

    private boolean add(ResultSet answer) throws SQLException {
        digest.inputs(stored, answer.getLong("sample_revision"), Optional.ofNullable(answer.getString("alloy")),
            InterpretationRow.number(answer, "alloy_revision"), answer.getString("grouped_by"));
        digest.madeWith(answer.getString("method"), answer.getLong("method_version"),
            answer.getString("program_version"), answer.getBytes("tables"), answer.getBytes("checksums"));
        return true;
    }

    private void addTexts() {
        texts += handle.createQuery(
                "SELECT form, bytes FROM interpretation_text WHERE interpretation = :id ORDER BY form")
            .bind("id", stored).map((text, context) -> {
                digest.text(text.getString("form"), text.getBytes("bytes"));
                return text.getString("form");
            }).list().size();
    }

    /** True where the frozen answer that the row names is out of date. */
    boolean turnedStale(AuditEntry row) {
        stale++;
        String id = row.detail().split(":", 2)[0];
        return PublicId.number(PublicId.INTERPRETATION, id).stream().boxed().findFirst().flatMap(number ->
            handle.createQuery("SELECT * FROM interpretation_stale WHERE interpretation = :id").bind("id", number)
                .map((change, context) -> {
                    digest.stale(number, InterpretationRow.number(change, "sample_revision"),
                        InterpretationRow.number(change, "alloy_revision"));
                    return true;
                }).findOne()).orElse(false);
    }

    private static boolean isOf(AuditEntry row, long number) {
        return row.detail().startsWith(PublicId.of(PublicId.INTERPRETATION, number) + ":");
    }

    /** What is on record that no row told of, in words. */
    Optional<String> untold(SqlRecordTotals totals) {
        return totals.otherThan(stored, "stored interpretations", "interpretation")
            .or(() -> totals.otherThan(texts, "texts of stored interpretations", "interpretation_text"))
            .or(() -> totals.otherThan(stale, "stale interpretations", "interpretation_stale"));
    }
}
