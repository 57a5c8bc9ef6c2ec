package surfeit.storage;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** Reads what {@link PackedWriter} wrote; bytes that end too early or go on too long are damage. Not thread-safe. */
final class PackedReader {
    private final byte[] bytes;
    private final Optional<RepeatedTexts> repeated;
    private int at;

    PackedReader(byte[] bytes) {
        this(bytes, Optional.empty());
    }

    /** @param repeated where texts are looked up that may have been read before, if anywhere */
    PackedReader(byte[] bytes, Optional<RepeatedTexts> repeated) {
        this.bytes = bytes;
        this.repeated = repeated;
    }

    int octet() {
        require(1);
        return bytes[at++] & 0xff;
    }

    long count() {
        long value = 0;
        for (int shift = 0; shift < 64; shift += 7) {
            int octet = octet();
            value |= (long) (octet & 0x7f) << shift;
            if (octet < 0x80) {
                return value;
            }
        }
        throw damaged("a number has more than ten bytes");
    }

    /** How many items follow, each of at least one byte. */
    int size() {
        long size = count();
        if (size < 0 || size > bytes.length - at) {
            throw damaged("a list of " + size + " items");
        }
        return (int) size;
    }

    long number() {
        long folded = count();
        return folded >>> 1 ^ -(folded & 1);
    }

    double real() {
        require(8);
        long bits = 0;
        for (int i = 0; i < 8; i++) {
            bits = bits << 8 | bytes[at++] & 0xff;
        }
        return Double.longBitsToDouble(bits);
    }

    String text() {
        return text(Optional.empty());
    }

    /** A text that may have been read before. */
    String repeatedText() {
        return text(repeated);
    }

    private String text(Optional<RepeatedTexts> known) {
        long head = count();
        boolean narrow = (head & 1) == 0;
        long characters = head >>> 1;
        if (characters > bytes.length) {
            throw damaged("a text of " + characters + " characters");
        }
        int length = (int) characters;
        require(narrow ? length : 2 * length);
        if (narrow) {
            String text = known.isPresent() ? known.get().of(bytes, at, length)
                : new String(bytes, at, length, StandardCharsets.ISO_8859_1);
            at += length;
            return text;
        }
        char[] wide = new char[length];
        for (int i = 0; i < length; i++) {
            wide[i] = (char) ((bytes[at++] & 0xff) << 8 | bytes[at++] & 0xff);
        }
        return new String(wide);
    }

    /** A number that is there if the flag was set. */
    OptionalDouble real(boolean present) {
        return present ? OptionalDouble.of(real()) : OptionalDouble.empty();
    }

    Optional<String> text(boolean present) {
        return present ? Optional.of(repeatedText()) : Optional.empty();
    }

    /** A list written as its size and its items. */
    <T> List<T> list(Function<PackedReader, T> item) {
        List<T> items = new ArrayList<>();
        for (long left = count(); left > 0; left--) {
            items.add(item.apply(this));
        }
        return items;
    }

    /** The constant of an enum that was written by its place in a list. */
    <T> T oneOf(T[] constants) {
        int index = octet();
        if (index >= constants.length) {
            throw damaged("word " + index + " of " + constants.length);
        }
        return constants[index];
    }

    /** Refuses any version but the one this program writes and reads. */
    void requireVersion(int version, String what) {
        int found = octet();
        if (found != version) {
            throw damaged(what + " is stored in form " + found + ", this program reads form " + version);
        }
    }

    void requireEnd() {
        if (at != bytes.length) {
            throw damaged(bytes.length - at + " bytes too many");
        }
    }

    private void require(int more) {
        if (more > bytes.length - at) {
            throw damaged("it ends after " + bytes.length + " bytes");
        }
    }

    private static StorageException damaged(String how) {
        return new StorageException("A stored record is damaged or was written by a newer program: " + how
            + ". Stop the service and restore the last backup, or use the newer program.");
    }
}
