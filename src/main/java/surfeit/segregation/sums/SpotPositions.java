package surfeit.segregation.sums;

import java.util.Arrays;
import java.util.Optional;
import surfeit.segregation.answer.SpotSpread;

/**
 * Where the spots of a group lie along one tie line, kept in a histogram of fixed bins. Not thread-safe.
 *
 * <p>Per bin the count, the sum and the sum of squares, so that no scatter is lost; only bins in use take memory, at
 * most {@value #BINS}. The criteria are those of {@link SpotSpread.Pattern}.
 */
final class SpotPositions {
    private static final int BINS = 64;
    private static final double LOWEST = -0.5;
    private static final double BINS_PER_LINE = 32;
    /**
     * Spots whose distance beside the line (root mean square) exceeds this share of it are on another one. Judgement.
     */
    private static final double BESIDE_MOST = 0.25;
    /** A cluster further beyond a phase than this is not at it, unless that is a solid solution. Judgement. */
    private static final double BEYOND_MOST = 0.25;
    private static final double TOGETHER_RANGE = 0.5;
    private static final double TOGETHER_DEVIATION = 0.125;
    private static final int SPREAD_FROM = 12;
    private static final int CLUSTER_LEAST = 2;
    private static final double CLUSTER_SHARE = 0.05;
    /** Share that an even spread reaches with many spots, and what is added to it for few; simulation. */
    private static final double EXPLAINED_BY_CHANCE = 0.75;
    private static final double EXPLAINED_FOR_FEW = 0.49;

    private final TieLine line;
    private int[] bins = new int[4];
    private long[] counts = new long[4];
    private double[] sums = new double[4];
    private double[] squares = new double[4];
    private int used;
    private long spots;
    private long atFrom;
    private long atTo;
    private double besideSquares;
    private double lowest = Double.POSITIVE_INFINITY;
    private double highest = Double.NEGATIVE_INFINITY;

    SpotPositions(TieLine line) {
        this.line = line;
    }

    /** Adds a spot of this composition. */
    void add(double[] composition) {
        double position = line.position(composition);
        double beside = line.isBinary() ? 0 : line.rule().distance(composition) / line.length();
        spots++;
        atFrom += position <= line.nearFrom() ? 1 : 0;
        atTo += position >= line.nearTo() ? 1 : 0;
        besideSquares += beside * beside;
        lowest = Math.min(lowest, position);
        highest = Math.max(highest, position);
        int bin = (int) Math.floor((Math.max(Math.min(position, 2), LOWEST) - LOWEST) * BINS_PER_LINE);
        add(Math.min(bin, BINS - 1), 1, position, position * position);
    }

    void merge(SpotPositions other) {
        spots += other.spots;
        atFrom += other.atFrom;
        atTo += other.atTo;
        besideSquares += other.besideSquares;
        lowest = Math.min(lowest, other.lowest);
        highest = Math.max(highest, other.highest);
        for (int i = 0; i < other.used; i++) {
            add(other.bins[i], other.counts[i], other.sums[i], other.squares[i]);
        }
    }

    private void add(int bin, long count, double sum, double square) {
        int at = Arrays.binarySearch(bins, 0, used, bin);
        if (at < 0) {
            at = -at - 1;
            open(at, bin);
        }
        counts[at] += count;
        sums[at] += sum;
        squares[at] += square;
    }

    private void open(int at, int bin) {
        if (used == bins.length) {
            bins = Arrays.copyOf(bins, 2 * used);
            counts = Arrays.copyOf(counts, 2 * used);
            sums = Arrays.copyOf(sums, 2 * used);
            squares = Arrays.copyOf(squares, 2 * used);
        }
        int after = used - at;
        System.arraycopy(bins, at, bins, at + 1, after);
        System.arraycopy(counts, at, counts, at + 1, after);
        System.arraycopy(sums, at, sums, at + 1, after);
        System.arraycopy(squares, at, squares, at + 1, after);
        bins[at] = bin;
        counts[at] = 0;
        sums[at] = 0;
        squares[at] = 0;
        used++;
    }

    void writeTo(SumsOut out) {
        out.reals("start of a tie line", line.start());
        out.reals("end of a tie line", line.end());
        out.real("reach of its first phase", line.nearFrom());
        out.real("reach of its second phase", line.nearTo());
        out.count("spots", spots);
        out.count("spots at its first phase", atFrom);
        out.count("spots at its second phase", atTo);
        out.real("squares beside the line", besideSquares);
        out.real("lowest position", lowest);
        out.real("highest position", highest);
        out.count("bins", used);
        for (int i = 0; i < used; i++) {
            out.count("bin", bins[i]);
            out.count("spots in a bin", counts[i]);
            out.real("sum of a bin", sums[i]);
            out.real("squares of a bin", squares[i]);
        }
    }

    void readFrom(SumsIn in) {
        in.require("tie line", line.start());
        in.require("tie line", line.end());
        in.require("tie line", line.nearFrom());
        in.require("tie line", line.nearTo());
        spots = in.count();
        atFrom = in.count();
        atTo = in.count();
        besideSquares = in.real();
        lowest = in.real();
        highest = in.real();
        for (long left = in.count(); left > 0; left--) {
            add((int) in.count(), in.count(), in.real(), in.real());
        }
    }

    int binsInUse() {
        return used;
    }

    /** How the spots lie. */
    SpotSpread spread() {
        double sum = 0;
        double square = 0;
        for (int i = 0; i < used; i++) {
            sum += sums[i];
            square += squares[i];
        }
        double total = square - sum * sum / spots;
        Optional<SpotSpread.Clusters> clusters = highest - lowest < TOGETHER_RANGE ? Optional.empty()
            : clusters(sum, total);
        return new SpotSpread(spots, atFrom, spots - atFrom - atTo, atTo, lowest, highest,
            pattern(clusters.isPresent(), total), clusters);
    }

    private SpotSpread.Pattern pattern(boolean clusters, double total) {
        if (clusters) {
            return SpotSpread.Pattern.TWO_CLUSTERS;
        }
        if (highest - lowest < TOGETHER_RANGE || total / spots <= TOGETHER_DEVIATION * TOGETHER_DEVIATION) {
            return SpotSpread.Pattern.TOGETHER;
        }
        return spots >= SPREAD_FROM ? SpotSpread.Pattern.SPREAD : SpotSpread.Pattern.CANNOT_TELL;
    }

    private Optional<SpotSpread.Clusters> clusters(double sum, double total) {
        long least = Math.max(CLUSTER_LEAST, (long) Math.ceil(CLUSTER_SHARE * spots));
        long count = 0;
        double part = 0;
        double best = 0;
        long lowerCount = 0;
        double lower = 0;
        double upper = 0;
        for (int i = 0; i < used - 1; i++) {
            count += counts[i];
            part += sums[i];
            double below = part / count;
            double above = (sum - part) / (spots - count);
            double explained = (double) count * (spots - count) / spots * (above - below) * (above - below);
            if (count >= least && spots - count >= least && explained > best) {
                best = explained;
                lowerCount = count;
                lower = below;
                upper = above;
            }
        }
        double share = best / total;
        if (!(share > EXPLAINED_BY_CHANCE + EXPLAINED_FOR_FEW / Math.sqrt(spots))) {
            return Optional.empty();
        }
        return Optional.of(new SpotSpread.Clusters(lowerCount, lower, spots - lowerCount, upper, share,
            atBothPhases(lower, upper)));
    }

    /** Beyond a solid solution lies only the pure element, which is the same phase with less in it. */
    private boolean atBothPhases(double lower, double upper) {
        boolean first = lower <= line.nearFrom() && (line.from().isTerminal() || lower >= -BEYOND_MOST);
        boolean second = upper >= line.nearTo() && (line.to().isTerminal() || upper <= 1 + BEYOND_MOST);
        return first && second && Math.sqrt(besideSquares / spots) <= BESIDE_MOST;
    }
}
