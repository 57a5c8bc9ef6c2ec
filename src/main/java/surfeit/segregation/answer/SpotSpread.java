package surfeit.segregation.answer;

import java.util.Optional;

/**
 * How the single spots of a group lie along a tie line: 0 at its first phase, 1 at its second.
 *
 * <p>A spot is at a phase if it lies within a quarter of the line from it and nearer to it than to the alloy as a
 * whole, but always within a twentieth, or beyond it. Judgement.
 *
 * @param spots    how many spots
 * @param atFrom   spots at its first phase
 * @param between  spots at neither
 * @param atTo     spots at its second phase
 * @param lowest   lowest position of a spot
 * @param highest  highest position of a spot
 * @param pattern  what the spots look like
 * @param clusters the two clusters, where there are two
 */
public record SpotSpread(long spots, long atFrom, long between, long atTo, double lowest, double highest,
                         Pattern pattern, Optional<Clusters> clusters) {

    /**
     * What the spots look like along the line.
     *
     * <p>The split into two clusters that explains most of the scatter is sought, each of at least two spots and 5 % of
     * them. It counts if it explains more than {@code 0.75 + 0.49 / sqrt n} of the sum of squares: spots spread evenly
     * over the line reach that in at most 6 of 100 groups, bell-shaped scatter in at most 3 (simulation, 4 to 1000
     * spots). Two tight clusters are found with 8 spots in 9 of 10 groups, with 12 in 99 of 100.
     */
    public enum Pattern {
        /** Within half the length of the line, or with a standard deviation of at most an eighth of it. */
        TOGETHER("together"),
        /** In two clusters, shown by the criterion. */
        TWO_CLUSTERS("two clusters"),
        /** Twelve spots or more that lie neither together nor in two clusters. */
        SPREAD("spread"),
        /** Neither together nor in two clusters, and fewer than twelve spots. */
        CANNOT_TELL("cannot tell");

        private final String word;

        Pattern(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /**
     * Two clusters of spots.
     *
     * @param explained    share of the sum of squares that the split explains
     * @param atBothPhases true where the centre of each is at its phase: the beam hit one phase or the other
     */
    public record Clusters(long lowerCount, double lowerCentre, long upperCount, double upperCentre, double explained,
                           boolean atBothPhases) {
    }
}
