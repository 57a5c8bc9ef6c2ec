package surfeit.lab;

import java.time.Instant;
import java.util.Optional;

/**
 * One row of the audit: who did what, and the hash that ties it to all rows before.
 *
 * @param number   from 1, without gaps
 * @param what     what was done, in one word or two
 * @param sample   name of the sample, if it concerns one
 * @param detail   from what, to what, why
 * @param hash     SHA-256 in hex over the hash before and the fields of this row
 */
public record AuditEntry(long number, Instant when, String who, String what, Optional<String> sample, String detail,
                         String hash) {
}
