package surfeit.lab;

import java.util.OptionalLong;

/**
 * The ids that the world sees: a prefix and a record number in the 32 digits of Crockford, {@code spt_00A7}.
 *
 * <p>One number has one text, so that an id can be compared as text. Texts sort as their numbers only while they are
 * equally long.
 */
public final class PublicId {
    public static final String SPOT = "spt_";
    public static final String IMPORT = "imp_";
    public static final String TOKEN = "tok_";
    public static final String INTERPRETATION = "int_";

    private static final String DIGITS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
    private static final int DIGITS_MIN = 4;
    private static final int DIGITS_MAX = 12;
    private static final int BITS = 5;

    private PublicId() {
    }

    public static String of(String prefix, long number) {
        StringBuilder text = new StringBuilder(prefix.length() + DIGITS_MIN);
        long rest = number;
        while (rest > 0 || text.length() < DIGITS_MIN) {
            text.append(DIGITS.charAt((int) (rest & (DIGITS.length() - 1))));
            rest >>>= BITS;
        }
        return prefix + text.reverse();
    }

    /** The record number behind an id; empty where the text is no id with this prefix. */
    public static OptionalLong number(String prefix, String id) {
        int digits = id.length() - prefix.length();
        if (!id.startsWith(prefix) || digits < DIGITS_MIN || digits > DIGITS_MAX) {
            return OptionalLong.empty();
        }
        long number = 0;
        for (int i = prefix.length(); i < id.length(); i++) {
            int digit = DIGITS.indexOf(id.charAt(i));
            if (digit < 0) {
                return OptionalLong.empty();
            }
            number = (number << BITS) | digit;
        }
        return of(prefix, number).equals(id) ? OptionalLong.of(number) : OptionalLong.empty();
    }
}
