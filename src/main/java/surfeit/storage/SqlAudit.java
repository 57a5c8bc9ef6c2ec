package surfeit.storage;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import surfeit.lab.AuditChain;
import surfeit.lab.AuditEntry;
import surfeit.lab.AuditHead;
import surfeit.lab.Occasion;

/** The audit rows in the database, each chained to the one before. Bound to one transaction; not thread-safe. */
final class SqlAudit {
    private final Handle handle;

    SqlAudit(Handle handle) {
        this.handle = handle;
    }

    /** @param head the end of the audit @return its end now */
    AuditHead append(AuditHead head, Occasion occasion, String what, Optional<String> sample, String detail) {
        long number = head.count() + 1;
        String hash = AuditChain.hash(head.hash(), number, occasion.when(), occasion.who(), what, sample, detail);
        PlainSql.write(handle, """
            INSERT INTO audit (id, recorded, who, what, sample, detail, hash) VALUES (?, ?, ?, ?, ?, ?, ?)""", number,
            occasion.when().toString(), occasion.who(), what, sample, detail, hash);
        return new AuditHead(number, hash);
    }

    AuditHead head() {
        return PlainSql.find(handle, "SELECT id, hash FROM audit ORDER BY id DESC LIMIT 1",
            row -> new AuditHead(row.getLong(1), row.getString(2))).orElse(new AuditHead(0, AuditChain.START));
    }

    /** Ends kept with backups. */
    List<AuditHead> keptHeads() {
        return handle.createQuery("SELECT audit_count, audit_hash FROM backup ORDER BY audit_count, id")
            .map((row, context) -> new AuditHead(row.getLong("audit_count"), row.getString("audit_hash"))).list();
    }

    List<AuditEntry> list(long after, int limit) {
        return handle.createQuery("SELECT * FROM audit WHERE id > :after ORDER BY id LIMIT :limit")
            .bind("after", after).bind("limit", limit)
            .map((row, context) -> new AuditEntry(row.getLong("id"), Instant.parse(row.getString("recorded")),
                row.getString("who"), row.getString("what"), Optional.ofNullable(row.getString("sample")),
                row.getString("detail"), row.getString("hash")))
            .list();
    }
}
