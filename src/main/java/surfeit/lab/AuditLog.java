package surfeit.lab;

import java.util.List;

/** Every change of the record in order, each row chained to the one before. Thread-safe. */
public final class AuditLog {
    private final Store store;

    AuditLog(Store store) {
        this.store = store;
    }

    public Page<AuditEntry> page(PageRequest page) {
        long after = page.after().map(Lookups::key).orElse(0L);
        return Page.of(store.read(access -> access.audit(after, page.size() + 1)), page.size(),
            entry -> Long.toString(entry.number()));
    }

    /** How many rows there are, and the hash that stands for all of them. */
    public AuditHead head() {
        return store.read(ReadAccess::auditHead);
    }

    /** Goes through the whole audit. */
    public AuditCheck check() {
        return store.read(access -> AuditChain.check(access, List.of()));
    }
}
