package surfeit.lab;

import java.io.IOException;
import java.util.function.Consumer;
import surfeit.spot.Sample;

/**
 * Reads an upload in a thread of its own, while whoever asked for its rows deals with those read before. The sink hears
 * everything in the order of the upload and in the thread that asked. Thread-safe, as far as its reader is.
 */
final class RowsAlong implements SpotRows {
    private final SpotRows rows;

    RowsAlong(SpotRows rows) {
        this.rows = rows;
    }

    @Override
    public void read(Upload upload, Sample sample, Sink sink) throws IOException {
        try {
            Alongside.<Consumer<Sink>>run("surfeit-rows", taker -> read(upload, sample, taker), found -> found.accept(sink));
        } catch (UnreadableException e) {
            throw e.cause;
        }
    }

    private void read(Upload upload, Sample sample, Consumer<Consumer<Sink>> taker) {
        try {
            rows.read(upload, sample, new FoundRows() {
                @Override
                void keep(Consumer<Sink> found) {
                    taker.accept(found);
                }
            });
        } catch (IOException e) {
            throw new UnreadableException(e);
        }
    }

    /** Carries a failure to read from one thread to the other. */
    private static final class UnreadableException extends RuntimeException {
        private final transient IOException cause;

        UnreadableException(IOException cause) {
            super(cause);
            this.cause = cause;
        }
    }
}
