package surfeit.segregation.answer;

import java.util.OptionalDouble;
import surfeit.element.Element;

/**
 * How thick a skin of a group's composition could cover a whole particle, given what the nominal holds: a mass balance.
 *
 * <pre>
 *     g = min_i w0_i / w_i        share of the particle's mass the skin may be at most
 *     v = (g/rs) / (g/rs + (1-g)/rc),    t = R (1 - (1 - v)^(1/3))
 * </pre>
 * w mass fractions of the skin, w0 of nominal, R radius; rs density of the skin, rc of what is then left for the core,
 * (w0 - g w)/(1 - g), both by the rule of mixtures. The element that decides is the one most enriched; a skin of the
 * greatest thickness leaves none of it to the core. {@code most} takes the lower end of its 95 % interval and the upper
 * limit of its nominal. Assumes a sphere, a skin of even thickness, and that the nominal holds for the particle. Where
 * spots read deeper than that, no skin of this composition covers the particle: the feature is a patch, or the skin is
 * richer than it reads.
 *
 * @param element         the element that decides
 * @param mostMassShare   g at the interval's end
 * @param thicknessNm     t at the mean, in nm
 * @param mostNm          t at the interval's end, in nm
 * @param sampledDepthNm  depth in nm above which nine tenths of the element's signal arise in that composition, where
 *                        the beam energy is known
 */
public record SkinLimit(Element element, double mostMassShare, double thicknessNm, double mostNm,
                        OptionalDouble sampledDepthNm) {

    public SkinLimit {
        if (!(thicknessNm >= 0 && mostNm >= thicknessNm && mostMassShare > 0 && mostMassShare < 1)) {
            throw new IllegalArgumentException("Expected 0 <= thickness <= greatest thickness and a mass share in 0 "
                + "to 1, got " + thicknessNm + " nm, " + mostNm + " nm and " + mostMassShare + ".");
        }
    }

    /** Whether spots read deeper than any skin of this composition could be. */
    public boolean cannotCoverParticle() {
        return sampledDepthNm.isPresent() && sampledDepthNm.getAsDouble() > mostNm;
    }
}
