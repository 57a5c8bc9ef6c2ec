package surfeit.storage;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.OptionalLong;

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

    /** What a frozen answer was made from: revisions, and how the spots were grouped. */
    void inputs(long interpretation, long sampleRevision, Optional<String> alloy, OptionalLong alloyRevision,
                String groupedBy) {
        add(interpretation);
        add(sampleRevision);
        add(alloy);
        add(alloyRevision.orElse(-1));
        add(Optional.of(groupedBy));
    }

    /** What a frozen answer was made with, and the checksums of its forms. */
    void madeWith(String method, long methodVersion, String programVersion, byte[] tables, byte[] checksums) {
        add(Optional.of(method));
        add(methodVersion);
        add(Optional.of(programVersion));
        add(tables);
        add(checksums);
    }

    /** A frozen answer in one of its forms. */
    void text(String form, byte[] bytes) {
        add(Optional.of(form));
        add(bytes);
    }

    /** The revision of the sample, or of the alloy, that put a frozen answer out of date; the other one is absent. */
    void stale(long interpretation, OptionalLong sampleRevision, OptionalLong alloyRevision) {
        add(interpretation);
        add(sampleRevision.orElse(-1));
        add(alloyRevision.orElse(-1));
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
