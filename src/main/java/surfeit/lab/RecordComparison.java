package surfeit.lab;

import java.util.Optional;

/** Compares what the audit tells with what is on record, row by row from the first one. Not thread-safe. */
public interface RecordComparison {

    /** What is on record otherwise than the row tells, in words; empty where it is as told. Rows come in order. */
    Optional<String> differs(AuditEntry row);

    /** What is on record that no row told of, in words; to be asked after the last row. */
    Optional<String> untold();
}
