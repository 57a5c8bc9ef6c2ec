package surfeit.fuzz;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** Alters inputs at random: bytes, words, cells and lines. The same seed gives the same inputs. Not thread-safe. */
final class Mutation {
    /** Longest input; longer ones cost time and show no more. Limits of size have tests of their own. */
    static final int LENGTH_MAX = 32 << 10;
    private static final int STEPS_MAX = 5;
    private static final int REPEATED_MAX = 200;
    private static final String SEPARATORS = ",;\t|\n:&? ";
    private static final List<String> NUMBERS = List.of("0", "-0", "1e99", "1e-99", "-1e400", "1E+2", "0x10", "NaN",
        "Infinity", "1,234", "1.234,5", "12.5.6", "1'234", "62,40", "62.40", "-0.01", "150.0001", "1e5", ".5", "5.",
        "00012", "9223372036854775808", "-9223372036854775808", "4294967296", "0.1000000000000000055511151231257827",
        "\u0661\u0662", "\uFF11\uFF12", "+-1", "--1", "\u22121.5", "1e", "1e+", "1_000");

    private static final Pattern SCALAR =
        Pattern.compile("\"(?:[^\"\\\\]++|\\\\.)*+\"|-?\\d++(\\.\\d++)?([eE][+-]?\\d++)?|true|false|null");

    private final Random random;
    private final List<byte[]> words;

    Mutation(long seed, List<byte[]> words) {
        this.random = new Random(seed);
        this.words = words;
    }

    /** One input of the pool, altered in a few places. */
    byte[] next(List<byte[]> pool) {
        byte[] bytes = pool.get(random.nextInt(pool.size()));
        int steps = 1 + random.nextInt(STEPS_MAX);
        for (int i = 0; i < steps; i++) {
            bytes = step(bytes, pool);
            bytes = bytes.length > LENGTH_MAX ? Arrays.copyOf(bytes, LENGTH_MAX) : bytes;
        }
        return bytes;
    }

    private byte[] step(byte[] bytes, List<byte[]> pool) {
        int from = random.nextInt(bytes.length + 1);
        int to = from + random.nextInt(Math.min(bytes.length - from, 40) + 1);
        return switch (random.nextInt(18)) {
            case 0 -> replaced(bytes, from, to, new byte[0]);
            case 1 -> replaced(bytes, to, to, Arrays.copyOfRange(bytes, from, to));
            case 2, 3 -> replaced(bytes, from, from, word());
            case 4 -> replaced(bytes, from, to, word());
            case 5 -> flipped(bytes);
            case 6 -> replaced(bytes, from, from, randomBytes());
            case 7 -> spliced(bytes, pool.get(random.nextInt(pool.size())));
            case 8 -> lines(bytes);
            case 9 -> cells(bytes);
            case 10 -> number(bytes);
            case 11 -> replaced(bytes, from, from, repeated(word()));
            case 12 -> exchanged(bytes);
            default -> scalar(bytes, pool.get(random.nextInt(pool.size())));
        };
    }

    private byte[] word() {
        return words.get(random.nextInt(words.size()));
    }

    private byte[] repeated(byte[] word) {
        int times = 1 + random.nextInt(REPEATED_MAX);
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        for (int i = 0; i < times; i++) {
            all.writeBytes(word);
        }
        return all.toByteArray();
    }

    private byte[] randomBytes() {
        byte[] some = new byte[1 + random.nextInt(4)];
        random.nextBytes(some);
        return some;
    }

    private byte[] flipped(byte[] bytes) {
        byte[] other = bytes.clone();
        if (other.length > 0) {
            other[random.nextInt(other.length)] ^= (byte) (1 << random.nextInt(8));
        }
        return other;
    }

    private byte[] spliced(byte[] head, byte[] tail) {
        int from = random.nextInt(tail.length + 1);
        int to = random.nextInt(head.length + 1);
        return replaced(head, to, head.length, Arrays.copyOfRange(tail, from, tail.length));
    }

    /** Removes, repeats or exchanges whole lines. */
    private byte[] lines(byte[] bytes) {
        return parts(bytes, "\n");
    }

    /** Removes, repeats or exchanges what stands between separators. */
    private byte[] cells(byte[] bytes) {
        return parts(bytes, String.valueOf(SEPARATORS.charAt(random.nextInt(SEPARATORS.length()))));
    }

    private byte[] parts(byte[] bytes, String separator) {
        String text = new String(bytes, StandardCharsets.ISO_8859_1);
        List<String> parts = new ArrayList<>(List.of(text.split(Pattern.quote(separator), -1)));
        int one = random.nextInt(parts.size());
        switch (random.nextInt(3)) {
            case 0 -> parts.remove(one);
            case 1 -> parts.add(one, parts.get(random.nextInt(parts.size())));
            default -> Collections.swap(parts, one, random.nextInt(parts.size()));
        }
        return String.join(separator, parts).getBytes(StandardCharsets.ISO_8859_1);
    }

    /** Puts another number in the place of one. */
    private byte[] number(byte[] bytes) {
        int from = random.nextInt(bytes.length + 1);
        while (from < bytes.length && !isDigit(bytes[from])) {
            from++;
        }
        int to = from;
        while (to < bytes.length && (isDigit(bytes[to]) || bytes[to] == '.' || bytes[to] == ',')) {
            to++;
        }
        String number = NUMBERS.get(random.nextInt(NUMBERS.size()));
        return replaced(bytes, from, to, number.getBytes(StandardCharsets.UTF_8));
    }

    /** Puts a text, number or word of another input, or a strange one, in the place of one: JSON stays JSON. */
    private byte[] scalar(byte[] bytes, byte[] other) {
        String text = new String(bytes, StandardCharsets.ISO_8859_1);
        List<MatchResult> here = SCALAR.matcher(text).results().toList();
        List<MatchResult> there = SCALAR.matcher(new String(other, StandardCharsets.ISO_8859_1)).results().toList();
        if (here.isEmpty() || there.isEmpty()) {
            return bytes;
        }
        MatchResult one = here.get(random.nextInt(here.size()));
        String put = switch (random.nextInt(4)) {
            case 0 -> NUMBERS.get(random.nextInt(NUMBERS.size()));
            case 1 -> '"' + new String(word(), StandardCharsets.ISO_8859_1) + '"';
            case 2 -> one.group() + ", " + here.get(random.nextInt(here.size())).group() + ": "
                + there.get(random.nextInt(there.size())).group();
            default -> there.get(random.nextInt(there.size())).group();
        };
        return replaced(bytes, one.start(), one.end(), put.getBytes(StandardCharsets.ISO_8859_1));
    }

    /** Writes every separator of one kind as another. */
    private byte[] exchanged(byte[] bytes) {
        byte[] other = bytes.clone();
        char one = SEPARATORS.charAt(random.nextInt(SEPARATORS.length()));
        char another = SEPARATORS.charAt(random.nextInt(SEPARATORS.length()));
        for (int i = 0; i < other.length; i++) {
            other[i] = other[i] == one ? (byte) another : other[i];
        }
        return other;
    }

    private static boolean isDigit(byte b) {
        return b >= '0' && b <= '9';
    }

    private static byte[] replaced(byte[] bytes, int from, int to, byte[] middle) {
        byte[] all = new byte[from + middle.length + bytes.length - to];
        System.arraycopy(bytes, 0, all, 0, from);
        System.arraycopy(middle, 0, all, from, middle.length);
        System.arraycopy(bytes, to, all, from + middle.length, bytes.length - to);
        return all;
    }
}
