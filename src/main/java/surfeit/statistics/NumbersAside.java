package surfeit.statistics;

import java.util.Arrays;
import java.util.function.LongToDoubleFunction;

/**
 * A list of numbers that may be too long for memory, put aside elsewhere: written once from front to back, then read at
 * any place. Closing it gives up what was never read; what {@link #read} handed out stays readable.
 */
public interface NumbersAside extends AutoCloseable {

    /** Adds the first so many numbers of the array. For one thread. */
    void append(double[] numbers, int count);

    /** Ends the writing and gives the number at each place, counted from 0, bit by bit as it was; for any threads. */
    LongToDoubleFunction read();

    @Override
    void close();

    /** A list in memory after all, for numbers about things that are in memory themselves. */
    static NumbersAside inMemory() {
        return new NumbersAside() {
            private double[] all = new double[0];

            @Override
            public void append(double[] numbers, int count) {
                int before = all.length;
                all = Arrays.copyOf(all, before + count);
                System.arraycopy(numbers, 0, all, before, count);
            }

            @Override
            public LongToDoubleFunction read() {
                double[] read = all;
                return at -> read[(int) at];
            }

            @Override
            public void close() {
                all = new double[0];
            }
        };
    }
}
