package surfeit.lab;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/**
 * The chain that shows whether audit rows were changed, taken out or put in.
 *
 * <pre>
 *     hash_n = SHA-256( hash_(n-1), n, when, who, what, sample, detail ),     hash_0 = 64 zeros
 * </pre>
 * Each field goes in as its length in UTF-8 bytes (decimal), a colon, and its bytes, so that no text can pose as two
 * fields; an absent sample goes in as {@code -}. Whoever can write the file can also make the whole chain anew: only a
 * head kept elsewhere shows that.
 */
public final class AuditChain {
    /** The hash before the first row. */
    public static final String START = "0".repeat(64);

    private AuditChain() {
    }

    public static String hash(String before, long number, Instant when, String who, String what,
                              Optional<String> sample, String detail) {
        MessageDigest digest = sha256();
        add(digest, before);
        add(digest, Long.toString(number));
        add(digest, when.toString());
        add(digest, who);
        add(digest, what);
        if (sample.isPresent()) {
            add(digest, sample.get());
        } else {
            digest.update((byte) '-');
        }
        add(digest, detail);
        return HexFormat.of().formatHex(digest.digest());
    }

    /**
     * Goes through all rows and names the first that does not follow from the one before, that is missing, that is
     * another than the one kept elsewhere, or that tells of something that is on record otherwise.
     *
     * @param kept ends the audit once had, beside those that came with backups
     */
    public static AuditCheck check(ReadAccess access, List<AuditHead> kept) {
        final int rowsAtOnce = 1000;
        List<AuditHead> known = new ArrayList<>(access.keptAuditHeads());
        known.addAll(kept);
        RecordComparison record = access.recordComparison();
        String before = START;
        long number = 0;
        while (true) {
            var rows = access.audit(number, rowsAtOnce);
            for (AuditEntry row : rows) {
                number++;
                Optional<String> wrong = wrong(row, number, before, known).or(() -> record.differs(row));
                if (wrong.isPresent()) {
                    return broken(access, number, wrong.get());
                }
                before = row.hash();
            }
            if (rows.isEmpty()) {
                return end(access, new AuditHead(number, before), known, record);
            }
        }
    }

    /** Whether the last row found is the last there was. */
    private static AuditCheck end(ReadAccess access, AuditHead head, List<AuditHead> known, RecordComparison record) {
        long most = known.stream().mapToLong(AuditHead::count).max().orElse(0);
        long next = head.count() + 1;
        if (most > head.count()) {
            return broken(access, next, "row " + next + " is missing; the audit once had " + most);
        }
        return record.untold().map(untold -> broken(access, next, "row " + next + " is missing, or something else than"
            + " this program changed the record: " + untold)).orElse(new AuditCheck(head, Optional.empty()));
    }

    private static Optional<String> wrong(AuditEntry row, long number, String before, List<AuditHead> known) {
        if (row.number() != number) {
            return Optional.of("row " + number + " is missing; the next one is " + row.number());
        }
        String expected = hash(before, number, row.when(), row.who(), row.what(), row.sample(), row.detail());
        if (!expected.equals(row.hash())) {
            return Optional.of("the hash of row " + number + " does not fit its content and the row before");
        }
        boolean kept = known.stream().filter(head -> head.count() == number)
            .allMatch(head -> head.hash().equals(row.hash()));
        return kept ? Optional.empty() : Optional.of("row " + number + " once had another hash: the audit was written"
            + " anew, there or before");
    }

    private static AuditCheck broken(ReadAccess access, long number, String what) {
        return new AuditCheck(access.auditHead(), Optional.of(new AuditCheck.Broken(number, what)));
    }

    private static void add(MessageDigest digest, String field) {
        byte[] bytes = field.getBytes(StandardCharsets.UTF_8);
        digest.update((bytes.length + ":").getBytes(StandardCharsets.US_ASCII));
        digest.update(bytes);
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256.", e);
        }
    }
}
