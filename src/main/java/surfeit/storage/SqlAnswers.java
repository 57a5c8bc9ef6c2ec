package surfeit.storage;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import surfeit.lab.KeptAnswer;
import surfeit.lab.ReadAccess;
import surfeit.lab.RepeatKey;

/** Answers kept for requests that may be sent again. Bound to one transaction; not thread-safe. */
final class SqlAnswers {
    private final Handle handle;
    private long forgottenBefore;

    SqlAnswers(Handle handle) {
        this.handle = handle;
    }

    Optional<ReadAccess.Kept> find(String who, String key) {
        return PlainSql.listOf(List.of(thing(who, key)), handle, """
                SELECT fingerprint, status, headers, body FROM idempotency
                WHERE who = ? AND repeat_key = ? AND recorded >= ?""",
            row -> new ReadAccess.Kept(row.getString(1),
                new KeptAnswer(row.getInt(2), PackedTexts.read(row.getBytes(3)), row.getBytes(4))),
            who, key, forgottenBefore).stream().findFirst();
    }

    private static Object thing(String who, String key) {
        return List.of(who, key);
    }

    void keep(RepeatKey key, KeptAnswer answer, Instant when) {
        PlainSql.write(handle, """
            INSERT INTO idempotency (who, repeat_key, fingerprint, recorded, status, headers, body)
            VALUES (?, ?, ?, ?, ?, ?, ?)""", key.who(), key.key(), key.fingerprint(), when.getEpochSecond(),
            answer.status(), PackedTexts.of(answer.headers()), answer.body());
        PlainSql.tell(handle, thing(key.who(), key.key()));
    }

    void forget(Instant before) {
        forgottenBefore = before.getEpochSecond();
        PlainSql.write(handle, "DELETE FROM idempotency WHERE recorded < ?", forgottenBefore);
    }
}
