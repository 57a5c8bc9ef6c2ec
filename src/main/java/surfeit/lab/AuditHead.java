package surfeit.lab;

/** The end of the audit: how many rows, and the hash of the last. Kept elsewhere, it shows a cut tail. */
public record AuditHead(long count, String hash) {
}
