package surfeit.http;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;

/** Passes bytes on, but neither flushes nor closes what it passes them to. */
final class UnendedStream extends FilterOutputStream {
    UnendedStream(OutputStream to) {
        super(to);
    }

    @Override
    public void write(byte[] bytes, int offset, int length) throws IOException {
        out.write(bytes, offset, length);
    }

    @Override
    public void flush() {
        // what is sent so far is decided by the size of the answer, not by who writes it
    }

    @Override
    public void close() {
        // a close on the way out of a failure must not look like the end of the answer
    }
}
