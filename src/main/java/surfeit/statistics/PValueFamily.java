package surfeit.statistics;

import java.util.Arrays;
import java.util.Comparator;
import java.util.PriorityQueue;
import java.util.function.DoubleConsumer;
import java.util.function.LongToDoubleFunction;
import java.util.function.Supplier;

/**
 * The p values of a family of tests, however many, in constant memory: beyond {@value #MOST_HELD} they are put aside in
 * sorted pieces of that many, which are merged when they are read. Not thread-safe.
 */
public final class PValueFamily implements AutoCloseable {
    /** P values held in memory: one MiB of them. Judgement. */
    static final int MOST_HELD = 1 << 17;

    private final int mostHeld;
    private final Supplier<NumbersAside> room;
    private final NumberList values;

    /** @param room where numbers are put that are too many for memory */
    public PValueFamily(Supplier<NumbersAside> room) {
        this(MOST_HELD, room);
    }

    PValueFamily(int mostHeld, Supplier<NumbersAside> room) {
        this.mostHeld = mostHeld;
        this.room = room;
        this.values = new NumberList(mostHeld, (piece, count) -> Arrays.sort(piece, 0, count), room);
    }

    /** Adds the p value of a test. */
    public void add(double p) {
        if (!(p >= 0 && p <= 1)) {
            throw new IllegalArgumentException("A p value is " + p + ", must lie in 0 to 1.");
        }
        values.add(p);
    }

    long size() {
        return values.size();
    }

    /** Hands over every p value, the largest first. Ends the adding. */
    void forEachDescending(DoubleConsumer taken) {
        long size = values.size();
        LongToDoubleFunction at = values.read();
        PriorityQueue<Piece> pieces = new PriorityQueue<>(Comparator.reverseOrder());
        for (long begin = 0; begin < size; begin += mostHeld) {
            pieces.add(new Piece(at, begin, Math.min(begin + mostHeld, size)));
        }
        while (!pieces.isEmpty()) {
            Piece largest = pieces.remove();
            do {
                taken.accept(largest.last);
            } while (largest.step() && (pieces.isEmpty() || largest.compareTo(pieces.element()) >= 0));
            if (!largest.isEmpty()) {
                pieces.add(largest);
            }
        }
    }

    /** Room for numbers about this family: as many as twice those it holds in memory stay there themselves. */
    NumberList numbers() {
        return new NumberList(2 * mostHeld, (piece, count) -> { }, room);
    }

    @Override
    public void close() {
        values.close();
    }

    /** What is left of a sorted piece: all from its begin up to the last one. */
    private static final class Piece implements Comparable<Piece> {
        private final LongToDoubleFunction at;
        private final long begin;
        private long end;
        private double last;

        Piece(LongToDoubleFunction at, long begin, long end) {
            this.at = at;
            this.begin = begin;
            this.end = end;
            this.last = at.applyAsDouble(end - 1);
        }

        /** Goes on to the one before; false where there is none. */
        boolean step() {
            end--;
            if (isEmpty()) {
                return false;
            }
            last = at.applyAsDouble(end - 1);
            return true;
        }

        boolean isEmpty() {
            return end == begin;
        }

        @Override
        public int compareTo(Piece other) {
            return Double.compare(last, other.last);
        }
    }
}
