package surfeit.lab;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import surfeit.spot.Sample;
import surfeit.spot.Spot;
import surfeit.spot.SpotKey;

/**
 * The rows of a small upload, read before their turn to be recorded, so that the one writer need not. They are as good
 * as read then for as long as the sample is described alike; else they are read again. Not thread-safe.
 */
public final class RowsReadAhead implements SpotRows {
    private final SpotRows rows;
    private final Sample sample;
    private final List<Consumer<Sink>> found;
    private final List<SpotKey> keys;
    private final Optional<RuntimeException> refusal;

    private RowsReadAhead(SpotRows rows, Sample sample, List<Consumer<Sink>> found, List<SpotKey> keys,
                          Optional<RuntimeException> refusal) {
        this.rows = rows;
        this.sample = sample;
        this.found = found;
        this.keys = keys;
        this.refusal = refusal;
    }

    /**
     * Reads an upload for a sample. A refusal waits for its turn too: an answer that was kept for a repeated request goes
     * before it.
     */
    public static RowsReadAhead of(SpotRows rows, Upload upload, Sample sample) throws IOException {
        Recorder recorder = new Recorder();
        Optional<RuntimeException> refusal = Optional.empty();
        try {
            rows.read(upload, sample, recorder);
        } catch (RuntimeException e) {
            refusal = Optional.of(e);
        }
        return new RowsReadAhead(rows, sample, recorder.found, recorder.keys, refusal);
    }

    /** What an import of these rows into a sample will ask. */
    public Foreseen foreseen(String name) {
        return new Foreseen(Optional.of(name), keys);
    }

    @Override
    public void read(Upload upload, Sample present, Sink sink) throws IOException {
        if (!present.equals(sample)) {
            rows.read(upload, present, sink);
            return;
        }
        found.forEach(each -> each.accept(sink));
        if (refusal.isPresent()) {
            throw refusal.get();
        }
    }

    /** Keeps what a reader finds, in its order. */
    private static final class Recorder extends FoundRows {
        private final List<Consumer<Sink>> found = new ArrayList<>();
        private final List<SpotKey> keys = new ArrayList<>();

        @Override
        public void spot(Spot spot, Row row) {
            keys.add(spot.key());
            super.spot(spot, row);
        }

        @Override
        void keep(Consumer<Sink> next) {
            found.add(next);
        }
    }
}
