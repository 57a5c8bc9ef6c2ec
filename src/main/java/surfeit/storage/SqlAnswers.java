package surfeit.storage;

import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import surfeit.lab.KeptAnswer;
import surfeit.lab.ReadAccess;
import surfeit.lab.RepeatKey;

/** Answers kept for requests that may be sent again. Bound to one transaction; not thread-safe. */
final class SqlAnswers {
    private final Handle handle;

    SqlAnswers(Handle handle) {
        this.handle = handle;
    }

    Optional<ReadAccess.Kept> find(String who, String key) {
        return handle.createQuery("SELECT * FROM idempotency WHERE who = :who AND repeat_key = :key")
            .bind("who", who).bind("key", key)
            .map((row, context) -> new ReadAccess.Kept(row.getString("fingerprint"),
                new KeptAnswer(row.getInt("status"), PackedTexts.read(row.getBytes("headers")), row.getBytes("body"))))
            .findOne();
    }

    void keep(RepeatKey key, KeptAnswer answer, Instant when) {
        handle.createUpdate("""
                INSERT INTO idempotency (who, repeat_key, fingerprint, recorded, status, headers, body)
                VALUES (:who, :key, :fingerprint, :recorded, :status, :headers, :body)""")
            .bind("who", key.who()).bind("key", key.key()).bind("fingerprint", key.fingerprint())
            .bind("recorded", when.getEpochSecond()).bind("status", answer.status())
            .bind("headers", PackedTexts.of(answer.headers())).bind("body", answer.body()).execute();
    }

    void forget(Instant before) {
        handle.createUpdate("DELETE FROM idempotency WHERE recorded < :before").bind("before", before.getEpochSecond())
            .execute();
    }
}
