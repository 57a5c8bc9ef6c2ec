package surfeit.calibration;

/** So many hits in so many draws, with the Monte Carlo error of the share. */
record Share(long hits, long draws) {
    /** Two-sided 95 % of the normal distribution. */
    private static final double TWO_SIDED_95 = 1.959964;

    boolean isKnown() {
        return draws > 0;
    }

    double percent() {
        return 100.0 * hits / draws;
    }

    /** Half width of the binomial 95 % interval in percentage points; for a share of 0 or 1 that of half a hit. */
    double error() {
        double p = Math.max(0.5, Math.min(draws - 0.5, hits)) / draws;
        return 100 * TWO_SIDED_95 * Math.sqrt(p * (1 - p) / draws);
    }

    boolean isSurelyBelow(double percent) {
        return isKnown() && percent() + error() < percent;
    }

    boolean isSurelyAbove(double percent) {
        return isKnown() && percent() - error() > percent;
    }

    static Share lower(Share a, Share b) {
        return !b.isKnown() || a.isKnown() && a.percent() <= b.percent() ? a : b;
    }

    static Share higher(Share a, Share b) {
        return !b.isKnown() || a.isKnown() && a.percent() >= b.percent() ? a : b;
    }
}
