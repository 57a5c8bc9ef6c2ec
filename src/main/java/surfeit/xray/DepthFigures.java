package surfeit.xray;

import java.util.List;

/**
 * How deep a line's X-rays arise, in nm below the surface: mean, half of them, nine tenths of them, and how much of
 * the signal the top layers hold.
 *
 * <p>Either for the generated X-rays or for those that get out. There is no greatest depth: the model's tail does not
 * carry one. Immutable, thread-safe.
 */
public record DepthFigures(Estimate meanNm, Estimate depth50Nm, Estimate depth90Nm, List<TopShare> shareOfTop) {
    /** Share (0 to 1) of the signal from above a depth in nm. */
    public record TopShare(double depthNm, Estimate share) {
    }

    public DepthFigures {
        shareOfTop = List.copyOf(shareOfTop);
    }

    /** The figures of a profile; chi 0 for the generated X-rays, else for the emitted ones. */
    static DepthFigures of(DepthProfile profile, Material material, double chi, List<Double> topNm) {
        return new DepthFigures(
            ModelBounds.meanDepth(profile, material.depthNm(profile.meanMassDepth(chi))),
            ModelBounds.halfDepth(profile, material.depthNm(profile.massDepthOfShare(0.5, chi))),
            ModelBounds.ninetyPercentDepth(profile, material.depthNm(profile.massDepthOfShare(0.9, chi))),
            topNm.stream().map(depth -> new TopShare(depth,
                ModelBounds.topShare(profile, profile.shareOfTop(material.massDepth(depth), chi)))).toList());
    }
}
