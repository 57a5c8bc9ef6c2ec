package surfeit.storage;

import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;
import surfeit.lab.AuditCheck;
import surfeit.lab.AuditHead;

/**
 * What a backup says of itself: when it was made, how many rows each table has, and how the audit ends.
 *
 * @param broken number of the first audit row that was broken already
 */
record BackupNote(Instant made, SortedMap<String, Long> rowCounts, AuditHead auditHead, Optional<Long> broken) {

    private static final Set<String> NOTES = Set.of("backup", "backup_count");

    /** Rows of each table of the record and of the list of its forms; its notes are left out. */
    static SortedMap<String, Long> count(Engine engine, Handle handle) {
        SortedMap<String, Long> counts = new TreeMap<>();
        Stream.concat(engine.tables(handle).stream(), Stream.of(FileCheck.HISTORY)).filter(table -> !NOTES.contains(table))
            .forEach(table -> counts.put(table,
                handle.createQuery("SELECT count(*) FROM \"" + table + '"').mapTo(Long.class).one()));
        return counts;
    }

    static BackupNote of(Instant made, SortedMap<String, Long> rowCounts, AuditCheck audit) {
        return new BackupNote(made, rowCounts, audit.head(), audit.broken().map(AuditCheck.Broken::number));
    }

    void write(Handle handle) {
        long id = handle.createQuery("SELECT coalesce(max(id), 0) + 1 FROM backup").mapTo(Long.class).one();
        handle.createUpdate("""
                INSERT INTO backup (id, made, audit_count, audit_hash, audit_broken)
                VALUES (:id, :made, :count, :hash, :broken)""")
            .bind("id", id).bind("made", made.toString()).bind("count", auditHead.count()).bind("hash", auditHead.hash())
            .bind("broken", broken.orElse(null)).execute();
        PreparedBatch batch = handle.prepareBatch(
            "INSERT INTO backup_count (backup, name, row_count) VALUES (:backup, :name, :count)");
        rowCounts.forEach((name, count) -> batch.bind("backup", id).bind("name", name).bind("count", count).add());
        batch.execute();
    }

    /** The note of a backup; empty where the file is a record in use or a mere copy of one. */
    static Optional<BackupNote> read(Handle handle) {
        boolean known = handle.createQuery(
                "SELECT count(*) FROM sqlite_master WHERE type = 'table' AND name = 'backup'")
            .mapTo(Integer.class).one() == 1;
        return !known ? Optional.empty() : handle.createQuery("SELECT * FROM backup WHERE restored IS NULL")
            .map((row, context) -> {
                long broken = row.getLong("audit_broken");
                return new BackupNote(Instant.parse(row.getString("made")), countsOf(handle, row.getLong("id")),
                    new AuditHead(row.getLong("audit_count"), row.getString("audit_hash")),
                    broken == 0 ? Optional.empty() : Optional.of(broken));
            }).findOne();
    }

    private static SortedMap<String, Long> countsOf(Handle handle, long id) {
        SortedMap<String, Long> counts = new TreeMap<>();
        handle.createQuery("SELECT name, row_count FROM backup_count WHERE backup = :id").bind("id", id)
            .map((row, context) -> counts.put(row.getString("name"), row.getLong("row_count"))).list();
        return counts;
    }

    /** Says in the file that it is the record now. */
    static void markRestored(Handle handle, Instant when) {
        handle.createUpdate("UPDATE backup SET restored = :when WHERE restored IS NULL").bind("when", when.toString())
            .execute();
    }
}
