package surfeit.calibration;

import java.util.SplittableRandom;

/**
 * Chance from a fixed seed: the same cell, look and batch give the same numbers on any machine and thread order.
 *
 * <p>Normal numbers by the polar method with {@link StrictMath} (Marsaglia and Bray, SIAM Review 6 (1964) 260, from
 * memory). Not thread-safe; every batch has dice of its own.
 */
final class Dice {
    private static final long FNV_OFFSET = 0xcbf29ce484222325L;
    private static final long FNV_PRIME = 0x100000001b3L;

    private final SplittableRandom random;
    private double spare = Double.NaN;

    private Dice(long seed) {
        this.random = new SplittableRandom(seed);
    }

    /** Dice whose seed is a hash (64-bit FNV-1a) of the words. */
    static Dice of(String words) {
        long hash = FNV_OFFSET;
        for (int i = 0; i < words.length(); i++) {
            hash = (hash ^ words.charAt(i)) * FNV_PRIME;
        }
        return new Dice(hash);
    }

    /** Above 0 and at most 1. */
    double uniform() {
        return 1 - random.nextDouble();
    }

    boolean coin() {
        return random.nextBoolean();
    }

    /** Standard normal. */
    double normal() {
        if (!Double.isNaN(spare)) {
            double kept = spare;
            spare = Double.NaN;
            return kept;
        }
        double x;
        double y;
        double square;
        do {
            x = 2 * random.nextDouble() - 1;
            y = 2 * random.nextDouble() - 1;
            square = x * x + y * y;
        } while (square >= 1 || square == 0);
        double factor = Math.sqrt(-2 * StrictMath.log(square) / square);
        spare = y * factor;
        return x * factor;
    }

    double[] normals(int count) {
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            values[i] = normal();
        }
        return values;
    }
}
