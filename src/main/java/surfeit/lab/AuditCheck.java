package surfeit.lab;

import java.util.Optional;

/**
 * Whether the audit is whole.
 *
 * @param head   its end as found
 * @param broken what is wrong with the first row that is not as it was written; empty where all are
 */
public record AuditCheck(AuditHead head, Optional<Broken> broken) {

    /** The first row that is not as it was written. */
    public record Broken(long number, String what) {
    }
}
