package surfeit.bench;

import java.util.Arrays;
import java.util.Locale;

/** Two figures taken in turns, so that what disturbs the machine disturbs both: medians of the rounds. */
public record InTurns(double ceiling, double ours, double ratio) {
    static final int ROUNDS = Integer.getInteger("surfeit.bench.rounds", 7);

    /** Takes one figure. */
    public interface Figure {
        double take() throws Exception;
    }

    /** Each figure once to warm up, then both in turns. The ratio is the median of the rounds' own ratios. */
    static InTurns of(Figure ceiling, Figure ours) throws Exception {
        return of(ROUNDS, ceiling, ours);
    }

    public static InTurns of(int rounds, Figure ceiling, Figure ours) throws Exception {
        ceiling.take();
        ours.take();
        double[] ceilings = new double[rounds];
        double[] own = new double[rounds];
        double[] ratios = new double[rounds];
        for (int i = 0; i < rounds; i++) {
            ceilings[i] = ceiling.take();
            own[i] = ours.take();
            ratios[i] = own[i] / ceilings[i];
        }
        return new InTurns(median(ceilings), median(own), median(ratios));
    }

    static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    /** Three digits, never as a power of ten where that can be read as well without. */
    public static String digits(double value) {
        double size = Math.abs(value);
        return String.format(Locale.ROOT, size == 0 ? "0" : size < 1e-3 || size >= 1e7 ? "%.1e" : size >= 100 ? "%.0f"
            : size >= 10 ? "%.1f" : size >= 0.1 ? "%.2f" : "%.4f", value);
    }
}
