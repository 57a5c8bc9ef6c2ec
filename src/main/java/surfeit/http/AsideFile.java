package surfeit.http;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * Bytes put aside on disk while a request lasts. The file has lost its name before the first byte is in it, so that
 * nothing stays behind however the program ends (where the system lets go of names of open files; elsewhere it goes
 * with the request). Written once, then read as often as wanted. Not thread-safe.
 */
final class AsideFile implements AutoCloseable {
    private final FileChannel channel;

    AsideFile() throws IOException {
        Path file = Files.createTempFile("surfeit-upload-", ".tmp");
        channel = FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE,
            StandardOpenOption.DELETE_ON_CLOSE);
    }

    void append(byte[] bytes, int length) throws IOException {
        ByteBuffer rest = ByteBuffer.wrap(bytes, 0, length);
        while (rest.hasRemaining()) {
            channel.write(rest);
        }
    }

    /** The bytes from the first one on; closing the stream leaves the file. */
    InputStream open() {
        return new InputStream() {
            private long at;

            @Override
            public int read() throws IOException {
                byte[] one = new byte[1];
                return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
            }

            @Override
            public int read(byte[] bytes, int offset, int length) throws IOException {
                if (length == 0) {
                    return 0;
                }
                int count = channel.read(ByteBuffer.wrap(bytes, offset, length), at);
                at += Math.max(count, 0);
                return count;
            }
        };
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
