package surfeit.lab;

import java.time.Instant;
import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What a backup holds, as found by reading it again after it was written.
 *
 * @param made      when
 * @param byteCount length of its file
 * @param sha256    of its file, in hex
 * @param rowCounts rows of each table, the same as in the record at the moment of the copy
 * @param audit     end of the audit, and its first broken row if it had one
 */
public record BackupReport(Instant made, long byteCount, String sha256, SortedMap<String, Long> rowCounts,
                           AuditCheck audit) {
    public BackupReport {
        rowCounts = Collections.unmodifiableSortedMap(new TreeMap<>(rowCounts));
    }
}
