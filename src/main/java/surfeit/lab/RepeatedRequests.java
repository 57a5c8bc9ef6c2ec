package surfeit.lab;

import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
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

    /** @param done true once the request is over, whatever came of it */
    private record Running(String fingerprint, CompletableFuture<Boolean> done) {
    }

    KeptAnswer once(Store store, RepeatKey key, Instant when, Function<WriteAccess, KeptAnswer> work) {
        while (true) {
            Running mine = new Running(key.fingerprint(), new CompletableFuture<>());
            Optional<Running> first = enter(key, mine);
            if (first.isEmpty()) {
                try {
                    return store.write(access -> inTransaction(access, key, when, work));
                } finally {
                    leave(key, mine);
                }
            }
            if (!over(first.get()).join()) {
                throw stillRuns();
            }
        }
    }

    /** As {@link #once}, without a thread that waits. @return as {@link Store#writeShared} */
    CompletableFuture<KeptAnswer> onceShared(Store store, Foreseen foreseen, RepeatKey key, Instant when,
                                             Function<WriteAccess, KeptAnswer> work) {
        Running mine = new Running(key.fingerprint(), new CompletableFuture<>());
        Optional<Running> first = enter(key, mine);
        if (first.isPresent()) {
            return over(first.get()).thenCompose(done -> done ? onceShared(store, foreseen, key, when, work)
                : CompletableFuture.failedFuture(stillRuns()));
        }
        try {
            return store.writeShared(foreseen, access -> inTransaction(access, key, when, work))
                .whenComplete((answer, failure) -> leave(key, mine));
        } catch (RuntimeException e) {
            leave(key, mine);
            throw e;
        }
    }

    /** The request of this key that runs already; empty where this one is the first and runs from now on. */
    private Optional<Running> enter(RepeatKey key, Running mine) {
        Optional<Running> first = Optional.ofNullable(running.putIfAbsent(name(key), mine));
        first.ifPresent(other -> requireSame(key, other.fingerprint()));
        return first;
    }

    private void leave(RepeatKey key, Running mine) {
        running.remove(name(key), mine);
        mine.done().complete(true);
    }

    private static String name(RepeatKey key) {
        return key.who() + '\n' + key.key();
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

    /** Whether it is over, once that is so; or that it is not, after a while. */
    private static CompletableFuture<Boolean> over(Running other) {
        return other.done().copy().completeOnTimeout(false, WAIT_SECONDS, TimeUnit.SECONDS);
    }

    private static ProblemException stillRuns() {
        return new ProblemException(Problem.IDEMPOTENCY_KEY_IN_PROGRESS,
            "The first request with this key still runs after " + WAIT_SECONDS + " s of waiting.");
    }
}
