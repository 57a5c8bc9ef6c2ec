package surfeit.http.json;

import java.io.IOException;
import java.io.InputStream;
import java.io.PushbackInputStream;

/**
 * The mark that some programs, Windows scripts among them, put before UTF-8. A reader of JSON may ignore it at the start of
 * a body (RFC 8259, section 8.1), and this one does; the mark of UTF-16 is refused by name.
 */
final class ByteOrderMark {
    private static final int[] UTF_8 = {0xEF, 0xBB, 0xBF};
    private static final int LITTLE_ENDIAN = 0xFFFE;
    private static final int BIG_ENDIAN = 0xFEFF;

    private ByteOrderMark() {
    }

    /** The bytes from behind the mark on, all of them where there is none. @throws MalformedJsonException for UTF-16 */
    static InputStream passed(InputStream bytes) throws IOException {
        byte[] start = bytes.readNBytes(UTF_8.length);
        int first = start.length < 2 ? 0 : (start[0] & 0xFF) << 8 | start[1] & 0xFF;
        if (first == LITTLE_ENDIAN || first == BIG_ENDIAN) {
            throw new MalformedJsonException(
                "Expected JSON in UTF-8, got the byte order mark of UTF-16; save it as UTF-8.", 1, 1);
        }
        if (isMark(start)) {
            return bytes;
        }
        PushbackInputStream whole = new PushbackInputStream(bytes, UTF_8.length);
        whole.unread(start);
        return whole;
    }

    private static boolean isMark(byte[] start) {
        for (int i = 0; i < UTF_8.length; i++) {
            if (i >= start.length || (start[i] & 0xFF) != UTF_8[i]) {
                return false;
            }
        }
        return true;
    }
}
