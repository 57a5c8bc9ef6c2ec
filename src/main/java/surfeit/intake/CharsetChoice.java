package surfeit.intake;

import java.io.FilterReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/**
 * Decides the characters of a table from its bytes: a byte order mark, else the stated charset, else UTF-16 where every
 * other byte is zero, else UTF-8 where the whole file is valid UTF-8, else windows-1252.
 *
 * <p>The last step is the one that cannot be sure; it touches words only, digits are the same in both, and the report
 * echoes it. An upload that still arrives is taken for UTF-8 until a byte says otherwise; then it is to be read again when
 * it is whole. Files of other programs (workbooks, archives, PDF) are told apart by their first bytes.
 *
 * @param skipped   bytes of the byte order mark
 * @param isAssumed true where the end of the upload, which nobody has seen yet, might decide otherwise
 */
record CharsetChoice(Charset charset, int skipped, boolean isAssumed) {
    static final Charset WINDOWS_1252 = Charset.forName("windows-1252");
    private static final int SAMPLE = 4096;
    private static final int CHUNK = 1 << 16;
    private static final Map<String, String> OTHER_FILES = Map.of(
        "504b0304", "a workbook or zip archive", "d0cf11e0", "a workbook of the old binary kind", "25504446", "a PDF",
        "1f8b08", "a gzip archive");
    /** Bytes that windows-1252 leaves undefined. Source: the Unicode Consortium's mapping table CP1252.TXT. */
    private static final String UNDEFINED_1252 = "\u0081\u008D\u008F\u0090\u009D";

    private CharsetChoice(Charset charset, int skipped) {
        this(charset, skipped, false);
    }

    static CharsetChoice of(Upload upload, StatedDialect stated) throws IOException {
        byte[] start;
        try (InputStream in = upload.open()) {
            start = in.readNBytes(SAMPLE);
        }
        refuseOtherFiles(start);
        CharsetChoice marked = byMark(start);
        if (stated.charset().isPresent()) {
            return stated(stated.charset().get(), marked, start);
        }
        if (marked.skipped > 0) {
            return marked;
        }
        int[] zeros = zeros(start);
        if (zeros[0] + zeros[1] > 0) {
            return utf16(start, zeros);
        }
        if (!upload.isWhole()) {
            return new CharsetChoice(StandardCharsets.UTF_8, 0, true);
        }
        if (isUtf8(upload)) {
            return new CharsetChoice(StandardCharsets.UTF_8, 0);
        }
        requireWindows1252(upload);
        return new CharsetChoice(WINDOWS_1252, 0);
    }

    /** The upload's text, without the byte order mark; bytes that are no characters end it with an exception. */
    Reader open(Upload upload) throws IOException {
        InputStream in = upload.open();
        in.skipNBytes(skipped);
        Reader text = new InputStreamReader(in, charset.newDecoder().onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT));
        return isAssumed ? new AssumedText(text) : text;
    }

    /** Text in characters that were assumed. */
    private static final class AssumedText extends FilterReader {
        AssumedText(Reader text) {
            super(text);
        }

        @Override
        public int read(char[] chars, int offset, int length) throws IOException {
            try {
                return in.read(chars, offset, length);
            } catch (CharacterCodingException e) {
                throw new UnfinishedUploadException("It is no UTF-8; what else, its end may tell.");
            }
        }

        @Override
        public int read() throws IOException {
            char[] one = new char[1];
            return read(one, 0, 1) < 0 ? -1 : one[0];
        }
    }

    private static CharsetChoice byMark(byte[] start) {
        if (startsWith(start, 0xEF, 0xBB, 0xBF)) {
            return new CharsetChoice(StandardCharsets.UTF_8, 3);
        }
        if (startsWith(start, 0xFF, 0xFE)) {
            return new CharsetChoice(StandardCharsets.UTF_16LE, 2);
        }
        return startsWith(start, 0xFE, 0xFF) ? new CharsetChoice(StandardCharsets.UTF_16BE, 2)
            : new CharsetChoice(StandardCharsets.UTF_8, 0);
    }

    private static CharsetChoice stated(Charset stated, CharsetChoice marked, byte[] start) {
        if (marked.skipped == 0) {
            return stated.equals(StandardCharsets.UTF_16) ? utf16(start, zeros(start)) : new CharsetChoice(stated, 0);
        }
        boolean agree = stated.equals(marked.charset)
            || stated.equals(StandardCharsets.UTF_16) && marked.charset.name().startsWith("UTF-16");
        if (!agree) {
            throw Refusal.expected(FaultCode.UNREADABLE_TABLE, "the stated charset " + stated.name(),
                "the byte order mark of " + marked.charset.name());
        }
        return marked;
    }

    private static CharsetChoice utf16(byte[] start, int[] zeros) {
        if (start.length > 0 && zeros[0] == 0 && zeros[1] * 4 > start.length) {
            return new CharsetChoice(StandardCharsets.UTF_16LE, 0);
        }
        if (start.length > 0 && zeros[1] == 0 && zeros[0] * 4 > start.length) {
            return new CharsetChoice(StandardCharsets.UTF_16BE, 0);
        }
        throw Refusal.expected(FaultCode.UNREADABLE_TABLE, "text",
            "zero bytes that are no UTF-16; save the table as CSV");
    }

    /** Zero bytes at even and at odd places. */
    private static int[] zeros(byte[] start) {
        int[] zeros = new int[2];
        for (int i = 0; i < start.length; i++) {
            zeros[i % 2] += start[i] == 0 ? 1 : 0;
        }
        return zeros;
    }

    private static boolean isUtf8(Upload upload) throws IOException {
        CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
        ByteBuffer bytes = ByteBuffer.allocate(CHUNK);
        CharBuffer chars = CharBuffer.allocate(CHUNK);
        try (InputStream in = upload.open()) {
            while (true) {
                int read = in.read(bytes.array(), bytes.position(), bytes.remaining());
                bytes.limit(bytes.position() + Math.max(read, 0)).position(0);
                CoderResult result = decoder.decode(bytes, chars.clear(), read < 0);
                if (result.isError()) {
                    return false;
                }
                if (read < 0) {
                    return true;
                }
                bytes.compact();
            }
        }
    }

    private static void requireWindows1252(Upload upload) throws IOException {
        byte[] chunk = new byte[CHUNK];
        try (InputStream in = upload.open()) {
            for (int read = in.read(chunk); read >= 0; read = in.read(chunk)) {
                for (int i = 0; i < read; i++) {
                    int c = chunk[i] & 0xFF;
                    if (c < ' ' && c != '\t' && c != '\n' && c != '\r' && c != '\f' || UNDEFINED_1252.indexOf(c) >= 0) {
                        throw Refusal.expected(FaultCode.UNREADABLE_TABLE, "UTF-8, UTF-16 or windows-1252 text",
                            "the byte 0x" + Integer.toHexString(c) + "; state the charset, or save the table as UTF-8");
                    }
                }
            }
        }
    }

    private static void refuseOtherFiles(byte[] start) {
        StringBuilder hex = new StringBuilder();
        for (int i = 0; i < Math.min(4, start.length); i++) {
            hex.append(Character.forDigit(start[i] >> 4 & 0xF, 16)).append(Character.forDigit(start[i] & 0xF, 16));
        }
        OTHER_FILES.forEach((magic, what) -> {
            if (hex.indexOf(magic) == 0) {
                throw Refusal.expected(FaultCode.UNREADABLE_TABLE, "a table as text", what + "; save the table as CSV");
            }
        });
    }

    private static boolean startsWith(byte[] start, int... mark) {
        for (int i = 0; i < mark.length; i++) {
            if (i >= start.length || (start[i] & 0xFF) != mark[i]) {
                return false;
            }
        }
        return true;
    }
}
