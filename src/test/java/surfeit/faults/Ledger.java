package surfeit.faults;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentLinkedQueue;

/**
 * What the senders know: which spots the service acknowledged, which requests had no answer when it was killed, and
 * what it answered that it should not have. Thread-safe.
 */
final class Ledger {
    private final Map<String, String> copperByLabel = new LinkedHashMap<>();
    private final List<SentSpots> unanswered = new ArrayList<>();
    private final ConcurrentLinkedQueue<String> unexpected = new ConcurrentLinkedQueue<>();

    synchronized void acknowledged(SentSpots spots) {
        copperByLabel.putAll(spots.copperByLabel());
    }

    synchronized void unanswered(SentSpots spots) {
        unanswered.add(spots);
    }

    void unexpected(String answer) {
        unexpected.add(answer);
    }

    synchronized int acknowledgedCount() {
        return copperByLabel.size();
    }

    /** Copper as sent, by label, of every spot acknowledged. */
    synchronized Map<String, String> acknowledged() {
        return new LinkedHashMap<>(copperByLabel);
    }

    synchronized List<SentSpots> unanswered() {
        return List.copyOf(unanswered);
    }

    List<String> unexpected() {
        return List.copyOf(unexpected);
    }
}
