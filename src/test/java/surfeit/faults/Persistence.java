package surfeit.faults;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;

/** A sender that sends each request again, to whichever service there is, until it is acknowledged. */
final class Persistence {
    private static final long PAUSE_MS = 20;

    private final List<RunningProgram> services;
    private final Ledger ledger;
    private final AtomicInteger refused = new AtomicInteger();
    private final AtomicInteger unanswered = new AtomicInteger();
    private volatile boolean enough;

    /** @param services to be asked in turn; the list may change meanwhile */
    Persistence(List<RunningProgram> services, Ledger ledger) {
        this.services = services;
        this.ledger = ledger;
    }

    /** Lets the senders come to an end. */
    void end(List<Thread> senders) throws InterruptedException {
        enough = true;
        for (Thread sender : senders) {
            sender.join();
        }
    }

    /** Answered with 503 and sent again. */
    int refused() {
        return refused.get();
    }

    /** Not answered at all and sent again. */
    int unanswered() {
        return unanswered.get();
    }

    /** Goes on until it is enough, and ends its last request even then. */
    Thread sender(long seed, Senders.Next next) {
        return new Thread(() -> {
            Random own = new Random(seed);
            for (int n = 0; !enough; n++) {
                SentSpots spots = next.spots(n, own);
                for (int attempt = n; !accepted(spots, services.get(attempt % services.size())); attempt++) {
                    pause();
                }
            }
        });
    }

    private boolean accepted(SentSpots spots, RunningProgram service) {
        try {
            HttpResponse<String> answer = Senders.post(service, spots);
            if (answer.statusCode() == 503 && answer.headers().firstValue("Retry-After").isPresent()) {
                refused.incrementAndGet();
                return false;
            }
            if (answer.statusCode() == 201 || answer.statusCode() == 200) {
                ledger.acknowledged(spots);
            } else {
                ledger.unexpected(answer.statusCode() + " " + answer.body());
            }
        } catch (IOException e) {
            unanswered.incrementAndGet();
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return true;
    }

    private static void pause() {
        try {
            Thread.sleep(PAUSE_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
