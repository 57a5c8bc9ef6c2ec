package surfeit.storage;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;
import surfeit.lab.AuditChain;
import surfeit.lab.AuditCheck;

/**
 * Copies a whole record from one engine to another, row by row, and believes it only once it was read again: every table
 * must hold the same rows there, and the audit must end alike. Bound to one transaction on either side.
 */
final class RecordCopy {
    private final Engine from;
    private final Handle source;
    private final Engine to;
    private final Handle target;

    RecordCopy(Engine from, Handle source, Engine to, Handle target) {
        this.from = from;
        this.source = source;
        this.to = to;
        this.target = target;
    }

    /** @throws StorageException where the target is not empty, or does not hold afterwards what the source holds */
    MoveReport run() {
        List<String> tables = from.tables(source);
        requireEmpty(to.tables(target));
        Map<String, TableContent.Sum> sums = new HashMap<>();
        tables.forEach(table -> sums.put(table, copy(table)));
        to.continueEventsAfter(target, from.lastEvent(source));
        SortedMap<String, Long> counts = new TreeMap<>();
        tables.forEach(table -> {
            requireSame(table, sums.get(table));
            counts.put(table, sums.get(table).rows());
        });
        AuditCheck before = AuditChain.check(new SqlReadAccess(source), List.of());
        AuditCheck after = AuditChain.check(new SqlReadAccess(target), List.of());
        if (!before.equals(after)) {
            throw new StorageException("The copy is not what was copied: its audit was " + before + ", and is " + after
                + " in the copy. Nothing was kept of it.");
        }
        return new MoveReport(counts, after);
    }

    private void requireEmpty(List<String> tables) {
        for (String table : tables) {
            long rows = target.createQuery("SELECT count(*) FROM " + table).mapTo(Long.class).one();
            if (rows > 0) {
                throw new StorageException("The record to be filled is not empty: its table " + table + " has " + rows
                    + (rows == 1 ? " row" : " rows") + ". Nothing is ever overwritten; name an empty one.");
            }
        }
    }

    private TableContent.Sum copy(String table) {
        TableContent content = new TableContent(source, table);
        return content.read(to.tableWriter(target, table, content.columnNames()));
    }

    private void requireSame(String table, TableContent.Sum expected) {
        TableContent.Sum found = new TableContent(target, table).read(new Nowhere());
        if (!found.equals(expected)) {
            throw new StorageException("The copy is not what was copied: the table " + table + " has " + found.rows()
                + " rows, expected " + expected.rows() + ", or other content. Nothing was kept of it.");
        }
    }

    /** Rows that are only read. */
    private static final class Nowhere implements TableWriter {
        @Override
        public void add(Object[] row) {
            // counted and hashed already
        }

        @Override
        public void end() {
            // nothing waits
        }
    }
}
