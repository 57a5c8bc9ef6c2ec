package surfeit.segregation.uncertainty;

import java.util.Optional;

/**
 * The closed spots of one particle (or of one session, where sessions are the unit) summed up per element.
 *
 * <p>Memory grows with elements, not with spots.
 *
 * @param name      the lab's name of the particle
 * @param spots     how many spots
 * @param centre    mean (or median) closed atomic fraction per element; negative parts are measurements
 * @param squares   sum of squared deviations from the mean per element
 * @param counting  sums over the spots of their stated variances, if every spot has them
 */
public record ParticleSums(String name, int spots, double[] centre, double[] squares, Optional<CountingSums> counting) {
    public ParticleSums {
        if (spots < 1 || centre.length != squares.length) {
            throw new IllegalArgumentException("A particle has at least one spot and one sum per element, got "
                + spots + " spots, " + centre.length + " and " + squares.length + " elements.");
        }
    }

    public ParticleSums named(String other) {
        return new ParticleSums(other, spots, centre, squares, counting);
    }

    /**
     * Sums over spots of squared standard uncertainties stated or counted for each spot.
     *
     * @param closed variances of the closed fractions
     * @param parts  variances of the independent parts before closing, on the scale where the parts add up to one
     */
    public record CountingSums(double[] closed, double[] parts) {
    }
}
