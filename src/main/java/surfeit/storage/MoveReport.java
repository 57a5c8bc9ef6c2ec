package surfeit.storage;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;
import surfeit.lab.AuditCheck;

/**
 * What a record held that was copied to another engine, as found on the other side.
 *
 * @param rowCounts rows of each table
 * @param audit     end of the audit, and its first broken row if it had one
 */
public record MoveReport(SortedMap<String, Long> rowCounts, AuditCheck audit) {
    public MoveReport {
        rowCounts = Collections.unmodifiableSortedMap(new TreeMap<>(rowCounts));
    }
}
