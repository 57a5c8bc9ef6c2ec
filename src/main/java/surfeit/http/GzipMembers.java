package surfeit.http;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.zip.CRC32;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import java.util.zip.ZipException;

/**
 * Inflates gzip: every member to the end of the bytes (RFC 1952, section 2.2), each checked by its sum and size. Not
 * thread-safe.
 *
 * <p>{@link java.util.zip.GZIPInputStream} ends after a member whose successor has not arrived yet or does not begin as
 * one, and also where the connection breaks between two, without a word: part of an upload would pass for the whole.
 */
final class GzipMembers extends InputStream {
    private static final int MAGIC_1 = 0x1f;
    private static final int MAGIC_2 = 0x8b;
    private static final int DEFLATED = 8;
    private static final int HEADER_SUM = 2;
    private static final int EXTRA = 4;
    private static final int NAME = 8;
    private static final int COMMENT = 16;
    private static final int RESERVED = 0xe0;
    /** Time of change, flags of the compressor and system: nothing that is needed here. */
    private static final int UNUSED_BYTES = 6;
    private static final int PIECE = 16 << 10;

    private final InputStream in;
    private final Inflater inflater = new Inflater(true);
    private final CRC32 sum = new CRC32();
    private final byte[] piece = new byte[PIECE];
    private int at;
    private int end;
    private boolean over;

    /** @throws IOException where the first member does not begin as one */
    GzipMembers(InputStream in) throws IOException {
        this.in = in;
        try {
            header(required());
        } catch (IOException | RuntimeException e) {
            inflater.end();
            throw e;
        }
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] bytes, int offset, int length) throws IOException {
        while (!over && length > 0) {
            int count = inflate(bytes, offset, length);
            if (count > 0) {
                sum.update(bytes, offset, count);
                return count;
            }
            if (inflater.finished()) {
                endOfMember();
            } else if (inflater.needsDictionary()) {
                throw new ZipException("It needs a dictionary.");
            } else if (fill()) {
                inflater.setInput(piece, 0, end);
                at = end;
            } else {
                throw new EOFException();
            }
        }
        return length == 0 ? 0 : -1;
    }

    private int inflate(byte[] bytes, int offset, int length) throws ZipException {
        try {
            return inflater.inflate(bytes, offset, length);
        } catch (DataFormatException e) {
            throw new ZipException(e.getMessage());
        }
    }

    private void endOfMember() throws IOException {
        at = end - inflater.getRemaining();
        if (number(Integer.BYTES) != sum.getValue()
            || number(Integer.BYTES) != (inflater.getBytesWritten() & 0xffffffffL)) {
            throw new ZipException("Its sum or size is another.");
        }
        int next = next();
        if (next < 0) {
            over = true;
        } else {
            header(next);
        }
    }

    private void header(int first) throws IOException {
        if (first != MAGIC_1 || required() != MAGIC_2 || required() != DEFLATED) {
            throw new ZipException("It does not begin as gzip.");
        }
        int flags = required();
        if ((flags & RESERVED) != 0) {
            throw new ZipException("It has parts that nobody knows.");
        }
        pass(UNUSED_BYTES);
        if ((flags & EXTRA) != 0) {
            pass(number(2));
        }
        for (int text : new int[] {flags & NAME, flags & COMMENT}) {
            if (text != 0) {
                passText();
            }
        }
        if ((flags & HEADER_SUM) != 0) {
            pass(2);
        }
        inflater.reset();
        sum.reset();
        inflater.setInput(piece, at, end - at);
        at = end;
    }

    private void passText() throws IOException {
        while (required() != 0) {
            // the name of a file, or a comment, ends with a zero
        }
    }

    private void pass(long count) throws IOException {
        for (long i = 0; i < count; i++) {
            required();
        }
    }

    /** A whole number, its lowest byte first. */
    private long number(int bytes) throws IOException {
        long number = 0;
        for (int i = 0; i < bytes; i++) {
            number |= (long) required() << Byte.SIZE * i;
        }
        return number;
    }

    private int required() throws IOException {
        int found = next();
        if (found < 0) {
            throw new EOFException();
        }
        return found;
    }

    private int next() throws IOException {
        return at < end || fill() ? piece[at++] & 0xff : -1;
    }

    private boolean fill() throws IOException {
        at = 0;
        end = Math.max(in.read(piece, 0, PIECE), 0);
        return end > 0;
    }

    @Override
    public void close() throws IOException {
        inflater.end();
        in.close();
    }
}
