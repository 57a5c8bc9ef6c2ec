package surfeit.lab;

import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;

/**
 * Does a request once, however often it is sent. Those sent while the first still runs wait for its answer.
 * Thread-safe.
 */
final class RepeatedRequests {
    /** How long an answer is kept for its key. */
    static final Duration KEPT = Duration.ofDays(7);
    /** How long a repeated request waits for the first before it is told to come again. Judgement. */
    private static final long WAIT_SECONDS = 20;

    private final Map<String, Running> running = new ConcurrentHashMap<>();

    private record Running(String fingerprint, CountDownLatch done) {
    }

    KeptAnswer once(Store store, RepeatKey key, Instant when, Function<WriteAccess, KeptAnswer> work) {
        String name = key.who() + '\n' + key.key();
        while (true) {
            Running mine = new Running(key.fingerprint(), new CountDownLatch(1));
            Optional<Running> first = Optional.ofNullable(running.putIfAbsent(name, mine));
            if (first.isEmpty()) {
                try {
                    return store.write(access -> inTransaction(access, key, when, work));
                } finally {
                    running.remove(name, mine);
                    mine.done().countDown();
                }
            }
            requireSame(key, first.get().fingerprint());
            await(first.get().done());
        }
    }

    private static KeptAnswer inTransaction(WriteAccess access, RepeatKey key, Instant when,
                                            Function<WriteAccess, KeptAnswer> work) {
        access.forgetAnswers(when.minus(KEPT));
        Optional<ReadAccess.Kept> kept = access.keptAnswer(key.who(), key.key());
        if (kept.isPresent()) {
            requireSame(key, kept.get().fingerprint());
            return kept.get().answer();
        }
        KeptAnswer answer = work.apply(access);
        access.keepAnswer(key, answer, when);
        return answer;
    }

    private static void requireSame(RepeatKey key, String fingerprint) {
        if (!fingerprint.equals(key.fingerprint())) {
            throw new ProblemException(Problem.IDEMPOTENCY_KEY_REUSED,
                "The key \"" + key.key() + "\" was used with another method, path or body.");
        }
    }

    private static void await(CountDownLatch done) {
        try {
            if (done.await(WAIT_SECONDS, TimeUnit.SECONDS)) {
                return;
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        throw new ProblemException(Problem.IDEMPOTENCY_KEY_IN_PROGRESS,
            "The first request with this key still runs after " + WAIT_SECONDS + " s of waiting.");
    }
}
