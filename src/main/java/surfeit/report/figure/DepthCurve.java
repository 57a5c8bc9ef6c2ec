package surfeit.report.figure;

import surfeit.xray.Absorption;
import surfeit.xray.DepthProfile;
import surfeit.xray.Material;
import surfeit.xray.SignalDepth;
import surfeit.xray.SignalDepthQuery;

/**
 * The emitted signal of one line by depth.
 *
 * @param chi absorption path factor in cm²/g, {@link Absorption#chi}
 */
record DepthCurve(SignalDepth depth, Material material, DepthProfile profile, double chi) {
    private static final int STEPS = 64;

    static DepthCurve of(SignalDepth depth, SignalDepthQuery query) {
        return new DepthCurve(depth, query.material(),
            DepthProfile.of(query.material(), depth.line(), depth.beamEnergyKev()),
            Absorption.chi(depth.line(), query.material(), query.effectiveTakeOffDeg()));
    }

    /** Depth in nm above which this share (0 to 1) of the signal arises. */
    double depthNm(double share) {
        return material.depthNm(profile.massDepthOfShare(share, chi));
    }

    /** Depths in nm and shares in percent along a logarithmic axis, one after the other. */
    double[] points(Scale depths) {
        double[] points = new double[2 * STEPS + 2];
        for (int i = 0; i <= STEPS; i++) {
            double nm = depths.low() * Math.pow(depths.high() / depths.low(), (double) i / STEPS);
            points[2 * i] = nm;
            points[2 * i + 1] = 100 * profile.shareOfTop(material.massDepth(nm), chi);
        }
        return points;
    }
}
