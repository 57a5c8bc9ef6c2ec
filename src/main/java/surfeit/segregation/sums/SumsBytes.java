package surfeit.segregation.sums;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * Puts sums into bytes, as {@link SumsIn} reads them: doubles to the last bit, whole numbers in eight bytes, a text in
 * full once and later by its number. Not thread-safe.
 */
public final class SumsBytes implements SumsOut {
    private final Map<String, Integer> texts = new HashMap<>();
    private ByteBuffer bytes = ByteBuffer.allocate(1024);

    @Override
    public void text(String what, String text) {
        int next = texts.size();
        int number = texts.computeIfAbsent(text, unseen -> next);
        room(2 * Integer.BYTES + text.length() * Character.BYTES).putInt(number);
        if (number == next) {
            bytes.putInt(text.length());
            for (int i = 0; i < text.length(); i++) {
                bytes.putChar(text.charAt(i));
            }
        }
    }

    @Override
    public void count(String what, long count) {
        room(Long.BYTES).putLong(count);
    }

    @Override
    public void real(String what, double value) {
        room(Double.BYTES).putLong(Double.doubleToRawLongBits(value));
    }

    @Override
    public void aside(boolean flag) {
        room(1).put((byte) (flag ? 1 : 0));
    }

    private ByteBuffer room(int more) {
        if (bytes.remaining() < more) {
            ByteBuffer larger = ByteBuffer.allocate(Math.max(2 * bytes.capacity(), bytes.position() + more));
            bytes = larger.put(bytes.flip());
        }
        return bytes;
    }

    public byte[] toBytes() {
        return Arrays.copyOf(bytes.array(), bytes.position());
    }
}
