package surfeit.faults;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.util.Random;

/** Sends spots one request after the other and enters in a ledger what became of each. */
final class Senders {
    private Senders() {
    }

    /** What to send next. */
    interface Next {
        SentSpots spots(int number, Random random);
    }

    /** A sender that goes on until it gets no answer, or is interrupted. */
    static Thread sender(RunningProgram program, Ledger ledger, long seed, Next next) {
        return new Thread(() -> {
            Random own = new Random(seed);
            for (int n = 0; !Thread.currentThread().isInterrupted(); n++) {
                if (!send(program, ledger, next.spots(n, own))) {
                    return;
                }
            }
        });
    }

    private static boolean send(RunningProgram program, Ledger ledger, SentSpots spots) {
        try {
            HttpResponse<String> answer = post(program, spots);
            if (answer.statusCode() != 201) {
                ledger.unexpected(answer.statusCode() + " " + answer.body());
                return false;
            }
            ledger.acknowledged(spots);
            return true;
        } catch (IOException | InterruptedException e) {
            ledger.unanswered(spots);
            return false;
        }
    }

    static HttpResponse<String> post(RunningProgram program, SentSpots spots) throws IOException, InterruptedException {
        String[] key = spots.key().map(text -> new String[] {"Idempotency-Key", text}).orElseGet(() -> new String[0]);
        return program.post("/v1/samples/" + spots.sample() + "/spots", spots.mediaType(), spots.body(), key);
    }
}
