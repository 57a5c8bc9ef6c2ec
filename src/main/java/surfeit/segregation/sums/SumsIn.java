package surfeit.segregation.sums;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import surfeit.element.Element;
import surfeit.element.ElementTable;

/** Reads what {@link SumsBytes} wrote, and refuses what was made from other inputs. Not thread-safe. */
public final class SumsIn {
    private final ByteBuffer bytes;
    private final List<String> texts = new ArrayList<>();

    public SumsIn(byte[] bytes) {
        this.bytes = ByteBuffer.wrap(bytes);
    }

    /** Says that kept sums cannot be gone on from: what they were made from is not what there is. */
    public static final class UnfitException extends RuntimeException {
        private static final long serialVersionUID = 1;

        public UnfitException(String what) {
            super(what, null, false, false);
        }
    }

    public String text() {
        int number = (int) whole(Integer.BYTES);
        if (number == texts.size()) {
            int length = (int) whole(Integer.BYTES);
            if (length < 0 || length > bytes.remaining() / Character.BYTES) {
                throw new UnfitException("a text of " + length + " characters");
            }
            char[] characters = new char[length];
            bytes.asCharBuffer().get(characters);
            bytes.position(bytes.position() + length * Character.BYTES);
            texts.add(new String(characters));
        }
        if (number < 0 || number >= texts.size()) {
            throw new UnfitException("text " + number + " of " + texts.size());
        }
        return texts.get(number);
    }

    public long count() {
        return whole(Long.BYTES);
    }

    double real() {
        return Double.longBitsToDouble(whole(Long.BYTES));
    }

    public boolean yesOrNo() {
        return count() == 1;
    }

    boolean aside() {
        return whole(1) == 1;
    }

    private long whole(int size) {
        try {
            return size == 1 ? bytes.get() : size == Integer.BYTES ? bytes.getInt() : bytes.getLong();
        } catch (BufferUnderflowException e) {
            throw new UnfitException("an early end");
        }
    }

    void reals(double[] into) {
        for (int i = 0; i < into.length; i++) {
            into[i] = real();
        }
    }

    /** An element of the present table, of the same weight. */
    Element element() {
        String symbol = text();
        Element element = ElementTable.standard().bySymbol(symbol).orElseThrow(() -> new UnfitException(symbol));
        require("atomic weight", element.atomicWeight());
        return element;
    }

    public List<Element> elements() {
        List<Element> elements = new ArrayList<>();
        for (long left = count(); left > 0; left--) {
            elements.add(element());
        }
        return elements;
    }

    public void texts(Collection<String> into) {
        for (long left = count(); left > 0; left--) {
            into.add(text());
        }
    }

    public Optional<Double> optionalReal() {
        return yesOrNo() ? Optional.of(real()) : Optional.empty();
    }

    public Optional<String> optionalText() {
        return yesOrNo() ? Optional.of(text()) : Optional.empty();
    }

    <E extends Enum<E>> E oneOf(E[] constants) {
        String name = text();
        for (E constant : constants) {
            if (constant.name().equals(name)) {
                return constant;
            }
        }
        throw new UnfitException(name);
    }

    public void require(String what, long count) {
        if (count() != count) {
            throw new UnfitException(what);
        }
    }

    public void require(String what, boolean yes) {
        require(what, yes ? 1L : 0L);
    }

    public void require(String what, double value) {
        if (whole(Long.BYTES) != Double.doubleToRawLongBits(value)) {
            throw new UnfitException(what);
        }
    }

    void require(String what, double[] values) {
        for (double value : values) {
            require(what, value);
        }
    }

    public void require(String what, String text) {
        if (!text().equals(text)) {
            throw new UnfitException(what);
        }
    }

    public void requireElements(Collection<Element> elements) {
        if (!elements().equals(List.copyOf(elements))) {
            throw new UnfitException("elements");
        }
    }

    public void requireEnd() {
        if (bytes.hasRemaining()) {
            throw new UnfitException("a late end");
        }
    }
}
