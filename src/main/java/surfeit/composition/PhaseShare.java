package surfeit.composition;

import java.util.OptionalDouble;

/**
 * How much of a two-phase mixture the second phase is: of the atoms, of the mass, and of the volume where both
 * densities are known.
 *
 * <pre>
 *     mass share = f Mb / (f Mb + (1 - f) Ma),     volume share = (g/rb) / (g/rb + (1 - g)/ra)
 * </pre>
 * f share of the atoms, g share of the mass, M mean atomic weights, r densities. The three differ: 18.6 at% of
 * silicon in gold is 3.2 wt% and 21 vol%. What a section or an image shows as area is the volume share.
 */
public record PhaseShare(double ofAtoms, double ofMass, OptionalDouble ofVolume) {

    /** From the share of the atoms, as the lever rule gives it in atomic fractions. */
    public static PhaseShare ofAtoms(Phase alpha, Phase beta, double share) {
        double mass = weighted(share, alpha.meanAtomicWeight(), beta.meanAtomicWeight());
        OptionalDouble alphaDensity = alpha.densityGPerCm3();
        OptionalDouble betaDensity = beta.densityGPerCm3();
        return new PhaseShare(share, mass, alphaDensity.isEmpty() || betaDensity.isEmpty() ? OptionalDouble.empty()
            : OptionalDouble.of(weighted(mass, 1 / alphaDensity.getAsDouble(), 1 / betaDensity.getAsDouble())));
    }

    private static double weighted(double share, double alphaWeight, double betaWeight) {
        return share * betaWeight / (share * betaWeight + (1 - share) * alphaWeight);
    }
}
