package surfeit.xray;

/**
 * How far the depth model was found from independent calculations, by overvoltage.
 *
 * <p>Ratios model / Monte Carlo over 17 cases (Al, Si, Cu, Ag, Sn, Au and two alloys, 10 to 25 keV, take-off 35
 * degrees), rounded outwards:
 * <pre>
 *                         U of 3 and more    U below 3
 *   depth of 50 %         0.96 to 1.08       1.00 to 1.16
 *   depth of 90 %         0.99 to 1.14       1.00 to 1.31
 *   mean depth            1.00 to 1.15       1.00 to 1.26
 *   1 - absorption factor 1.00 to 1.13       1.00 to 1.25
 *   share of the top      0.93 to 1.07       0.90 to 1.12
 * </pre>
 * Other materials and beam energies are an extrapolation. Bounds are ratios, not confidence intervals.
 */
public final class ModelBounds {
    /** Below this overvoltage the model puts X-rays too deep. */
    public static final double WEAK_BELOW_OVERVOLTAGE = 3.0;

    private ModelBounds() {
    }

    /** Whether the profile lies where the model was found too deep. */
    public static boolean weak(DepthProfile profile) {
        return profile.overvoltage() < WEAK_BELOW_OVERVOLTAGE;
    }

    static Estimate halfDepth(DepthProfile profile, double depth) {
        return weak(profile) ? Estimate.ofRatios(depth, 1, 1.16) : Estimate.ofRatios(depth, 0.96, 1.08);
    }

    static Estimate ninetyPercentDepth(DepthProfile profile, double depth) {
        return weak(profile) ? Estimate.ofRatios(depth, 1, 1.31) : Estimate.ofRatios(depth, 0.99, 1.14);
    }

    static Estimate meanDepth(DepthProfile profile, double depth) {
        return weak(profile) ? Estimate.ofRatios(depth, 1, 1.26) : Estimate.ofRatios(depth, 1, 1.15);
    }

    static Estimate topShare(DepthProfile profile, double share) {
        Estimate open = weak(profile) ? Estimate.ofRatios(share, 0.90, 1.12) : Estimate.ofRatios(share, 0.93, 1.07);
        return new Estimate(share, open.low(), Math.min(1, open.high()));
    }

    /** Lost shares 1 - f at three absorptions (expected, least, most) to the absorption factor with its bounds. */
    static Estimate absorption(DepthProfile profile, double lost, double leastLost, double mostLost) {
        return new Estimate(1 - lost, 1 - mostLost, 1 - leastLost / (weak(profile) ? 1.25 : 1.13));
    }
}
