package surfeit.statistics;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.LongToDoubleFunction;
import java.util.function.ObjIntConsumer;
import java.util.function.Supplier;

/**
 * A growing list of numbers, in memory up to a length; a longer one is put aside in pieces of that length, the last one
 * as long as it comes. Written once, then read. Not thread-safe while it is written.
 */
final class NumberList implements AutoCloseable {
    private static final int FIRST = 64;

    private final int mostHeld;
    private final ObjIntConsumer<double[]> prepare;
    private final Supplier<NumbersAside> room;
    private double[] held;
    private int count;
    private long asideCount;
    private Optional<NumbersAside> aside = Optional.empty();

    /**
     * @param mostHeld numbers of a piece
     * @param prepare  may reorder the first so many numbers of a piece, before it is put aside or read
     * @param room     where a list is put that is longer than a piece; not asked for one that is not
     */
    NumberList(int mostHeld, ObjIntConsumer<double[]> prepare, Supplier<NumbersAside> room) {
        this.mostHeld = mostHeld;
        this.prepare = prepare;
        this.room = room;
        this.held = new double[Math.min(FIRST, mostHeld)];
    }

    void add(double number) {
        if (count == mostHeld) {
            putAside();
        }
        if (count == held.length) {
            held = Arrays.copyOf(held, Math.min(mostHeld, 2 * count));
        }
        held[count++] = number;
    }

    private void putAside() {
        if (aside.isEmpty()) {
            aside = Optional.of(room.get());
        }
        prepare.accept(held, count);
        aside.get().append(held, count);
        asideCount += count;
        count = 0;
    }

    long size() {
        return asideCount + count;
    }

    /** Ends the writing and gives the number at each place. */
    LongToDoubleFunction read() {
        if (aside.isEmpty()) {
            double[] all = Arrays.copyOf(held, count);
            prepare.accept(all, count);
            return at -> all[(int) at];
        }
        putAside();
        return aside.get().read();
    }

    @Override
    public void close() {
        aside.ifPresent(NumbersAside::close);
    }
}
