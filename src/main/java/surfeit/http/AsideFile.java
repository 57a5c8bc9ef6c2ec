package surfeit.http;

import java.io.IOException;
import java.io.InputStream;
import java.io.InterruptedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.TimeUnit;
import surfeit.intake.UnfinishedUploadException;

/**
 * Bytes put aside on disk while a request lasts. The file has lost its name before the first byte is in it, so that
 * nothing stays behind however the program ends (where the system lets go of names of open files; elsewhere it goes
 * with the request). Written once, by one thread, and read as often as wanted, by others too, while it is written and
 * after. Thread-safe.
 */
final class AsideFile implements AutoCloseable {
    private static final long NANOS_PER_MS = 1_000_000;

    /** Whether more may follow. */
    private enum End {
        OPEN, WHOLE, BROKEN
    }

    private final FileChannel channel;
    private long length;
    private End end = End.OPEN;

    AsideFile() throws IOException {
        Path file = Files.createTempFile("surfeit-upload-", ".tmp");
        channel = FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE,
            StandardOpenOption.DELETE_ON_CLOSE);
    }

    void append(byte[] bytes, int count) throws IOException {
        ByteBuffer rest = ByteBuffer.wrap(bytes, 0, count);
        while (rest.hasRemaining()) {
            channel.write(rest);
        }
        synchronized (this) {
            length += count;
            notifyAll();
        }
    }

    /** Nothing follows: it is all there. */
    void complete() {
        end(End.WHOLE);
    }

    /** Nothing follows, though something is missing. */
    void breakOff() {
        end(End.BROKEN);
    }

    private synchronized void end(End how) {
        end = how;
        notifyAll();
    }

    synchronized boolean isWhole() {
        return end == End.WHOLE;
    }

    /** The bytes from the first one on; waits for those to come. Closing the stream leaves the file. */
    InputStream open(Patience patience) {
        return new InputStream() {
            private long at;

            @Override
            public int read() throws IOException {
                byte[] one = new byte[1];
                return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
            }

            @Override
            public int read(byte[] bytes, int offset, int count) throws IOException {
                if (count == 0) {
                    return 0;
                }
                long there = awaitMoreThan(at, patience);
                if (there == at) {
                    return -1;
                }
                int wanted = (int) Math.min(count, there - at);
                int found = channel.read(ByteBuffer.wrap(bytes, offset, wanted), at);
                at += Math.max(found, 0);
                return found;
            }
        };
    }

    /** How many bytes there are, once there are more than so many or the end is reached. */
    private synchronized long awaitMoreThan(long count, Patience patience) throws IOException {
        while (length <= count && end == End.OPEN) {
            long before = System.nanoTime();
            long left = patience.leftNanos();
            if (left <= 0) {
                throw new UnfinishedUploadException("It comes too slowly to be waited for.");
            }
            try {
                wait(TimeUnit.NANOSECONDS.toMillis(left + NANOS_PER_MS - 1));
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new InterruptedIOException();
            }
            patience.waited(System.nanoTime() - before);
        }
        if (length <= count && end == End.BROKEN) {
            throw new IOException("The upload broke off.");
        }
        return length;
    }

    @Override
    public void close() throws IOException {
        breakOff();
        channel.close();
    }
}
