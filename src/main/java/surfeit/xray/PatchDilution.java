package surfeit.xray;

/**
 * What a spot on a patch smaller than its X-ray source says about the patch.
 *
 * <pre>   share = 1 - exp(-ln2 (3a/D)^p),  p 1.0 to 1.3 </pre>
 *
 * share of the signal that comes from a round patch of radius a with the beam at its centre; D Reed's diameter in the
 * PATCH material ({@link LateralSpread}), with the probe's width. Holds for a patch deeper than the signal. Bounds from
 * an independent Monte Carlo: at overvoltage 3 and more the true share lay 0.03 below to 0.09 above the two powers, in
 * one material as well as for a copper-rich plug in a silver-rich matrix and a silicon plug in gold (after normalising;
 * electrons that leave a light plug lower the total). Below overvoltage 3 it lay up to 0.11 below. From a radius of
 * 1.3 D on at least 0.99 came from the patch (copper-rich plug 0.997 at 1.3 D, silicon plug 1.00 at 1.05 D).
 *
 * <p>A flake thinner than the signal is diluted by depth however wide it is; see {@link #flakeShare}.
 * Formula fitted for this project. Dilution is bounded, never silently corrected. Stateless.
 */
public final class PatchDilution {
    private static final double LEAST_POWER = 1.0;
    private static final double MOST_POWER = 1.3;
    private static final double TRUTH_BELOW = 0.03;
    private static final double TRUTH_BELOW_WHERE_WEAK = 0.12;
    private static final double TRUTH_ABOVE = 0.10;
    private static final double NEARLY_WHOLE = 0.99;
    /** Radius over Reed's diameter from which on nearly all of the signal comes from the patch. */
    private static final double NEARLY_WHOLE_FROM = 1.3;
    /** A 200 nm disc of silicon on gold reported 1.33 times its share by depth. */
    private static final double FLAKE_EXCESS = 1.5;

    private PatchDilution() {
    }

    /** Share (0 to 1) of a line's signal that comes from a deep patch, with bounds. */
    public static Estimate share(Material patch, Line line, double beamEnergyKev, double radiusNm,
                                 double probeDiameterNm) {
        if (!(line.overvoltage(beamEnergyKev) > 1)) {
            throw new IllegalArgumentException("A beam of " + beamEnergyKev + " keV does not excite "
                + line.label() + ".");
        }
        double diameter = LateralSpread.withProbeNm(
            LateralSpread.reedDiameterNm(patch, line.edgeEnergyKev(), beamEnergyKev), probeDiameterNm);
        return share(diameter, line.overvoltage(beamEnergyKev), radiusNm);
    }

    /** The same where the diameter D of the source in the patch's material is known; overvoltage above 1. */
    public static Estimate share(double sourceDiameterNm, double overvoltage, double radiusNm) {
        if (!(radiusNm > 0)) {
            throw new IllegalArgumentException("Patch radius is " + radiusNm + " nm, must be above 0.");
        }
        double one = ofPower(radiusNm, sourceDiameterNm, LEAST_POWER);
        double other = ofPower(radiusNm, sourceDiameterNm, MOST_POWER);
        double below = overvoltage < ModelBounds.WEAK_BELOW_OVERVOLTAGE ? TRUTH_BELOW_WHERE_WEAK : TRUTH_BELOW;
        double least = radiusNm >= NEARLY_WHOLE_FROM * sourceDiameterNm ? NEARLY_WHOLE : 0;
        double low = Math.max(least, Math.min(one, other) - below);
        return new Estimate(Math.max(low, (one + other) / 2), low, Math.min(1, Math.max(one, other) + TRUTH_ABOVE));
    }

    /**
     * Bounds on the share of a flake: between both dilutions taken as independent and the one by depth alone.
     *
     * <p>{@code depthShare}: share of the emitted signal from the flake's thickness in its own material
     * ({@link DepthProfile#shareOfTop}). The value is the middle of the bounds; it is no estimate.
     */
    public static Estimate flakeShare(Estimate deepShare, double depthShare) {
        if (!(depthShare >= 0 && depthShare <= 1)) {
            throw new IllegalArgumentException("Share by depth is " + depthShare + ", must lie in 0 to 1.");
        }
        double low = deepShare.low() * depthShare;
        double high = Math.min(1, FLAKE_EXCESS * depthShare);
        return new Estimate((low + high) / 2, low, high);
    }

    /**
     * Mass fraction the patch itself may have, from what the spot reported: matrix + (reported - matrix)/share.
     *
     * <p>Each end is held within 0 to 1. Mass fractions, not atomic. With a share whose lower bound is 0 the patch may
     * be anything up to pure (or free of the element).
     */
    public static Estimate trueFraction(double reported, double matrix, Estimate share) {
        double nearest = undiluted(reported, matrix, share.high());
        double farthest = undiluted(reported, matrix, share.low());
        return new Estimate(undiluted(reported, matrix, share.value()), Math.min(nearest, farthest),
            Math.max(nearest, farthest));
    }

    private static double undiluted(double reported, double matrix, double share) {
        double difference = reported - matrix;
        double value = difference == 0 ? matrix : matrix + difference / share;
        return Math.max(0, Math.min(1, value));
    }

    private static double ofPower(double radius, double diameter, double power) {
        return -Math.expm1(-Math.log(2) * Math.pow(3 * radius / diameter, power));
    }
}
