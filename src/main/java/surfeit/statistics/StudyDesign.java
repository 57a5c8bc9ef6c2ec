package surfeit.statistics;

/**
 * A plan: how many particles, how many spots on each, and how much both scatter.
 *
 * <p>The standard error of the mean is {@code √(s_b²/k + s_w²/(k n))} with k - 1 degrees of freedom; s_b standard
 * deviation between particles, s_w between spots of one particle, both in the unit of the shift (log odds, say).
 * Immutable.
 */
public record StudyDesign(double betweenParticles, double withinParticle, int particles, int spotsPerParticle) {

    public StudyDesign {
        if (!(betweenParticles >= 0 && withinParticle >= 0 && betweenParticles + withinParticle > 0
            && betweenParticles + withinParticle < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("Standard deviations are " + betweenParticles + " and " + withinParticle
                + ", must be 0 or above, finite, and not both 0.");
        }
        if (particles < 2 || spotsPerParticle < 1) {
            throw new IllegalArgumentException("Expected at least 2 particles and 1 spot, found " + particles + " and "
                + spotsPerParticle + ".");
        }
    }

    public double standardError() {
        double variance = betweenParticles * betweenParticles + withinParticle * withinParticle / spotsPerParticle;
        return Math.sqrt(variance / particles);
    }

    public int degreesOfFreedom() {
        return particles - 1;
    }

    /** The random error of the mean. */
    public RandomPart random() {
        return new RandomPart(standardError(), degreesOfFreedom());
    }

    public StudyDesign withParticles(int number) {
        return new StudyDesign(betweenParticles, withinParticle, number, spotsPerParticle);
    }
}
