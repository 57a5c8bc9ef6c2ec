package surfeit.statistics;

import java.util.function.DoubleConsumer;
import java.util.function.LongToDoubleFunction;

/**
 * Benjamini and Hochberg's adjustment of p values, for screening long lists: the expected share of false ones among
 * the flags stays at or below alpha, if the tests are independent or positively dependent. Immutable.
 *
 * <p>The p at rank j of m is worth {@code m p/j}; one is adjusted to the least worth at its rank or above, at most 1.
 * It is kept as a function of p, for families too long to be held in their order: only the ranks where that least worth
 * changes are kept, as many as the family has in memory, more of them put aside.
 * Source: Benjamini and Hochberg, J. R. Statist. Soc. B 57 (1995) 289 (from memory).
 */
public final class StepUpAdjustment {
    /** The p values at which a lower worth begins, descending, each followed by that worth. */
    private final LongToDoubleFunction steps;
    private final long count;

    private StepUpAdjustment(LongToDoubleFunction steps, long count) {
        this.steps = steps;
        this.count = count;
    }

    /** @param pValues the whole family, which takes no more values then */
    public static StepUpAdjustment of(PValueFamily pValues) {
        try (NumberList steps = pValues.numbers()) {
            pValues.forEachDescending(new Descent(pValues.size(), steps));
            return new StepUpAdjustment(steps.read(), steps.size() / 2);
        }
    }

    /** Goes down the ranks and keeps the steps. */
    private static final class Descent implements DoubleConsumer {
        private final long size;
        private final NumberList steps;
        private long rank;
        private double least = 1;

        Descent(long size, NumberList steps) {
            this.size = size;
            this.steps = steps;
            this.rank = size;
        }

        @Override
        public void accept(double p) {
            double worth = p * size / rank--;
            if (worth < least) {
                least = worth;
                steps.add(p);
                steps.add(worth);
            }
        }
    }

    /** The adjusted p of a test whose p is one of the family. */
    public double of(double p) {
        long from = 0;
        long to = count;
        while (from < to) {
            long middle = (from + to) >>> 1;
            if (steps.applyAsDouble(2 * middle) >= p) {
                from = middle + 1;
            } else {
                to = middle;
            }
        }
        return from == 0 ? 1 : steps.applyAsDouble(2 * from - 1);
    }

    /** How many steps it has. */
    public long size() {
        return count;
    }
}
