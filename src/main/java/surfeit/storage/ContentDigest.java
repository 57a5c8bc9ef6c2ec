package surfeit.storage;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * SHA-256 over what a change recorded. Each field goes in with its length in front, so that no value can pose as two;
 * an absent one goes in with length -1. Not thread-safe.
 */
final class ContentDigest {
    private final Sha256 digest = new Sha256();
    private final ByteBuffer number = ByteBuffer.allocate(Long.BYTES);
    private boolean empty = true;

    /** A spot at one of its revisions. */
    void spot(long spot, long revision, boolean withdrawn, Optional<String> reason, byte[] payload) {
        add(spot);
        add(revision);
        add(withdrawn ? 1 : 0);
        add(reason);
        add(payload);
    }

    /** What tells a spot from the others, as it stands beside the spot itself. */
    void key(String session, String label, long acquired) {
        add(Optional.of(session));
        add(Optional.of(label));
        add(acquired);
    }

    /** What lists are filtered by, as it stands beside the spot itself. */
    void group(boolean reference, Optional<String> feature, Optional<String> particle) {
        add(reference ? 1 : 0);
        add(feature);
        add(particle);
    }

    /** A named thing as it is described at one of its revisions. */
    void described(String name, long revision, byte[] description) {
        add(Optional.of(name));
        add(revision);
        add(description);
    }

    private void add(Optional<String> text) {
        if (text.isPresent()) {
            add(text.get().getBytes(StandardCharsets.UTF_8));
        } else {
            add(-1);
        }
    }

    private void add(byte[] bytes) {
        add(bytes.length);
        digest.add(bytes);
    }

    private void add(long value) {
        empty = false;
        digest.add(number.putLong(0, value).array());
    }

    /** The hash in hex of all that was added since the last time; empty where nothing was. */
    Optional<String> take() {
        if (empty) {
            return Optional.empty();
        }
        empty = true;
        return Optional.of(digest.take());
    }

    /** Forgets what was added. */
    void reset() {
        digest.take();
        empty = true;
    }
}
