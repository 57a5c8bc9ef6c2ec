package surfeit.statistics;

import java.util.Arrays;

/**
 * Spots nested in particles nested in lots, the same number everywhere: the analysis of variance of both levels.
 *
 * <p>a lots of b particles of n spots. Each mean square is tested against the next lower one (lots against particles,
 * not against spots: spots of one particle are no independent evidence about lots). Variances that come out negative
 * are reported as 0. Immutable. Source: Montgomery, Design and Analysis of Experiments, nested designs, both factors
 * random.
 */
public record TwoLevelNesting(int lots, int particlesPerLot, int spotsPerParticle,
                              double sumOfSquaresLots, double sumOfSquaresParticles, double sumOfSquaresSpots) {

    public TwoLevelNesting {
        if (lots < 2 || particlesPerLot < 2 || spotsPerParticle < 2) {
            throw new IllegalArgumentException("Expected at least 2 of each level, found " + lots + " lots of "
                + particlesPerLot + " particles of " + spotsPerParticle + " spots.");
        }
        if (!(sumOfSquaresLots >= 0 && sumOfSquaresParticles >= 0 && sumOfSquaresSpots >= 0)) {
            throw new IllegalArgumentException("Sums of squares must be 0 or above, found " + sumOfSquaresLots + ", "
                + sumOfSquaresParticles + " and " + sumOfSquaresSpots + ".");
        }
    }

    /** From values indexed by lot, particle, spot. @throws IllegalArgumentException for unequal numbers */
    public static TwoLevelNesting of(double[][][] values) {
        int particles = values[0].length;
        int spots = values[0][0].length;
        double spotSquares = 0;
        double particleSquares = 0;
        double[] lotMeans = new double[values.length];
        for (int lot = 0; lot < values.length; lot++) {
            if (values[lot].length != particles || Arrays.stream(values[lot]).anyMatch(p -> p.length != spots)) {
                throw new IllegalArgumentException("Lot " + (lot + 1) + " differs from the first in its number of"
                    + " particles or spots; expected " + particles + " of " + spots + ".");
            }
            Moments[] ofParticles = Arrays.stream(values[lot]).map(Moments::of).toArray(Moments[]::new);
            Moments ofLot = Moments.of(Arrays.stream(ofParticles).mapToDouble(Moments::mean).toArray());
            spotSquares += Arrays.stream(ofParticles).mapToDouble(Moments::sumOfSquaredDeviations).sum();
            particleSquares += spots * ofLot.sumOfSquaredDeviations();
            lotMeans[lot] = ofLot.mean();
        }
        double lotSquares = (double) spots * particles * Moments.of(lotMeans).sumOfSquaredDeviations();
        return new TwoLevelNesting(values.length, particles, spots, lotSquares, particleSquares, spotSquares);
    }

    public int degreesOfFreedomLots() {
        return lots - 1;
    }

    public int degreesOfFreedomParticles() {
        return lots * (particlesPerLot - 1);
    }

    public int degreesOfFreedomSpots() {
        return lots * particlesPerLot * (spotsPerParticle - 1);
    }

    /** F of lots against particles. */
    public double fOfLots() {
        return meanSquareLots() / meanSquareParticles();
    }

    /** F of particles against spots. */
    public double fOfParticles() {
        return meanSquareParticles() / varianceOfSpots();
    }

    public double pOfLots() {
        return FDistribution.survival(fOfLots(), degreesOfFreedomLots(), degreesOfFreedomParticles());
    }

    public double pOfParticles() {
        return FDistribution.survival(fOfParticles(), degreesOfFreedomParticles(), degreesOfFreedomSpots());
    }

    public double varianceOfLots() {
        return Math.max(0, (meanSquareLots() - meanSquareParticles()) / (particlesPerLot * spotsPerParticle));
    }

    public double varianceOfParticles() {
        return Math.max(0, (meanSquareParticles() - varianceOfSpots()) / spotsPerParticle);
    }

    public double varianceOfSpots() {
        return sumOfSquaresSpots / degreesOfFreedomSpots();
    }

    private double meanSquareLots() {
        return sumOfSquaresLots / degreesOfFreedomLots();
    }

    private double meanSquareParticles() {
        return sumOfSquaresParticles / degreesOfFreedomParticles();
    }
}
