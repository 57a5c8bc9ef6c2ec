package surfeit.storage;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Writes values one after another into bytes, as {@link PackedReader} reads them.
 *
 * <p>Whole numbers take seven bits a byte, lowest first, the high bit saying that more follow; negative ones are folded
 * to positive first. Doubles are their eight bytes, so that every bit comes back. Texts whose characters all fit one
 * byte take one byte a character, others two, so that every text comes back. Not thread-safe; can be used again after
 * {@link #toBytes}.
 */
final class PackedWriter {
    private byte[] bytes = new byte[256];
    private int length;

    PackedWriter octet(int value) {
        reserve(1);
        bytes[length++] = (byte) value;
        return this;
    }

    PackedWriter count(long value) {
        reserve(10);
        long rest = value;
        while ((rest & ~0x7fL) != 0) {
            bytes[length++] = (byte) (rest & 0x7f | 0x80);
            rest >>>= 7;
        }
        bytes[length++] = (byte) rest;
        return this;
    }

    PackedWriter number(long value) {
        return count(value << 1 ^ value >> 63);
    }

    PackedWriter real(double value) {
        reserve(8);
        long bits = Double.doubleToRawLongBits(value);
        for (int shift = 56; shift >= 0; shift -= 8) {
            bytes[length++] = (byte) (bits >>> shift);
        }
        return this;
    }

    PackedWriter text(String text) {
        boolean narrow = isNarrow(text);
        count((long) text.length() << 1 | (narrow ? 0 : 1));
        reserve(2 * text.length());
        if (narrow) {
            byte[] narrowed = text.getBytes(StandardCharsets.ISO_8859_1);
            System.arraycopy(narrowed, 0, bytes, length, narrowed.length);
            length += narrowed.length;
            return this;
        }
        for (int i = 0; i < text.length(); i++) {
            char character = text.charAt(i);
            bytes[length++] = (byte) (character >>> 8);
            bytes[length++] = (byte) character;
        }
        return this;
    }

    PackedWriter real(OptionalDouble value) {
        return value.isPresent() ? real(value.getAsDouble()) : this;
    }

    PackedWriter text(Optional<String> text) {
        return text.isPresent() ? text(text.get()) : this;
    }

    /** What was written since the start or the last call. */
    byte[] toBytes() {
        byte[] result = Arrays.copyOf(bytes, length);
        length = 0;
        return result;
    }

    private static boolean isNarrow(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) > 0xff) {
                return false;
            }
        }
        return true;
    }

    private void reserve(int more) {
        if (length + more > bytes.length) {
            bytes = Arrays.copyOf(bytes, Math.max(2 * bytes.length, length + more));
        }
    }
}
