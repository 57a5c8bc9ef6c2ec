package surfeit.xray;

/**
 * phi(rho z): how many X-rays of a line arise at each mass depth below a flat surface, beam at normal incidence.
 *
 * <pre>
 *   phi(z) = A e^(-a z) + (B z + phi0 - A) e^(-b z)              z mass depth in g/cm²
 *   F = integral of phi = R (1/S) / Q,  Q = ln U / (U^m Ec²)     {@link Stopping}, {@link Backscatter}
 *   F/Rb = 1 + X ln(1 + Y (1 - U^-0.42)) / ln(1 + Y), at least phi0;  X = 1 + 1.3 ln Zb, Y = 0.2 + Zb/200
 *   g = 0.22 ln(4 Zb) [1 - 2 exp(-Zb (U-1)/15)],  h = 1 - 10 (1 - 1/(1 + U/10))/Zb²
 *   b = sqrt2 (1 + sqrt(1 - Rb phi0/F))/Rb,  P = min(g h⁴, 0.9 b Rb² (b - 2 phi0/F)) F/Rb²
 *   a = [P + b (2 phi0 - b F)] / [b F (2 - b Rb) - phi0],  e = (a - b)/b
 *   B = [b² F (1 + e) - P - phi0 b (2 + e)]/e,  A = [B/b + phi0 - b F] (1 + e)/e
 *   emitted(chi) = A/(a+chi) + (phi0 - A)/(b+chi) + B/(b+chi)²   chi = mu cosec(take-off), cm²/g
 * </pre>
 *
 * F is in units of a free-standing layer's emission per g/cm²; Rb the mean generated depth. A and B are large and
 * cancel. |e| is kept at 1e-5 or more: the cancellation grows as 1e-16/e², and F, Rb and phi0 hold for any e.
 *
 * <p>Limits: solids, about 1 to 40 keV. Against an independent Monte Carlo at overvoltage 3 and more: emitted
 * intensity 1.00 to 1.09, absorption factor within 4 %, depth of half the signal 0.97 to 1.07. Below overvoltage 3 it
 * puts X-rays too deep (mean depth by 8 to 26 %), see {@link ModelBounds}. Never read a greatest depth from its tail.
 * Secondary fluorescence is not included.
 * Source: the XPP model, Pouchou &amp; Pichoir, in Electron Probe Quantitation (Heinrich &amp; Newbury, eds), Plenum
 * 1991, pp. 31-75; coefficients from memory. Immutable, thread-safe.
 */
public record DepthProfile(double beamEnergyKev, double overvoltage, double surfaceIonisation, double generated,
                           double meanMassDepth, double a, double b, double coefficientA, double coefficientB) {
    private static final double LEAST_E = 1e-5;
    private static final int MOST_STEPS = 80;

    /** The profile of a line in a material, which need not hold the line's element. */
    public static DepthProfile of(Material material, Line line, double beamEnergyKev) {
        return of(material, line.element().atomicNumber(), line.family(), line.edgeEnergyKev(), beamEnergyKev);
    }

    /** The profile for an emitting element and an edge. @throws IllegalArgumentException where U = E0/Ec <= 1 */
    public static DepthProfile of(Material material, int emitter, Family family, double edgeKev, double beamEnergyKev) {
        return of(Backscatter.of(material), Stopping.of(material), material.meanAtomicNumber(), emitter, family, edgeKev,
            beamEnergyKev);
    }

    /** The same of what a material does to electrons, which is one for all its lines. */
    static DepthProfile of(Backscatter backscatter, Stopping stopping, double meanAtomicNumber, int emitter, Family family,
                           double edgeKev, double beamEnergyKev) {
        BeamEnergy.check(beamEnergyKev);
        double u = beamEnergyKev / edgeKev;
        if (!(u > 1)) {
            throw new IllegalArgumentException("A beam of " + beamEnergyKev + " keV cannot excite an edge of " + edgeKev
                + " keV: it must exceed it.");
        }
        double m = family.crossSectionExponent(emitter);
        double crossSection = Math.log(u) / (Math.pow(u, m) * edgeKev * edgeKev);
        double area = backscatter.remainingShare(u) * stopping.inverse(beamEnergyKev, u, m) / crossSection;
        return shape(beamEnergyKev, u, meanAtomicNumber, backscatter.surfaceIonisation(u), area);
    }

    private static DepthProfile shape(double beam, double u, double z, double phi0, double area) {
        double x = 1 + 1.3 * Math.log(z);
        double y = 0.2 + z / 200;
        double areaOverMean = Math.max(phi0, 1 + x * Math.log1p(y * (1 - Math.pow(u, -0.42))) / Math.log1p(y));
        double mean = area / areaOverMean;
        double g = 0.22 * Math.log(4 * z) * (1 - 2 * Math.exp(-z * (u - 1) / 15));
        double h = 1 - 10 * (1 - 1 / (1 + u / 10)) / (z * z);
        double b = Math.sqrt(2) * (1 + Math.sqrt(Math.max(0, 1 - phi0 / areaOverMean))) / mean;
        double mostSlope = 0.9 * b * mean * mean * (b - 2 * phi0 / area);
        double slope = Math.min(g * Math.pow(h, 4), mostSlope) * area / (mean * mean);
        double a = (slope + b * (2 * phi0 - b * area)) / (b * area * (2 - b * mean) - phi0);
        double e = (a - b) / b;
        if (Math.abs(e) < LEAST_E) {
            e = Math.copySign(LEAST_E, e);
        }
        double bigB = (b * b * area * (1 + e) - slope - phi0 * b * (2 + e)) / e;
        double bigA = (bigB / b + phi0 - b * area) * (1 + e) / e;
        return new DepthProfile(beam, u, phi0, area, mean, b * (1 + e), b, bigA, bigB);
    }

    /** phi at a mass depth, relative to a free-standing layer. */
    public double phi(double massDepth) {
        return coefficientA * Math.exp(-a * massDepth)
            + (coefficientB * massDepth + surfaceIonisation - coefficientA) * Math.exp(-b * massDepth);
    }

    /** Emitted X-rays in the units of {@link #generated}; chi 0 gives the generated ones. */
    public double emitted(double chi) {
        return coefficientA / (a + chi) + (surfaceIonisation - coefficientA) / (b + chi)
            + coefficientB / ((b + chi) * (b + chi));
    }

    /** Absorption factor f(chi): emitted over generated, 0 to 1. */
    public double absorptionFactor(double chi) {
        return emitted(chi) / generated;
    }

    /** Emitted X-rays from the surface down to a mass depth, seen through the material above them. */
    public double emittedFromTop(double massDepth, double chi) {
        double ac = a + chi;
        double bc = b + chi;
        double decay = Math.exp(-bc * massDepth);
        double fromTop = -coefficientA * Math.expm1(-ac * massDepth) / ac
            - (surfaceIonisation - coefficientA) * Math.expm1(-bc * massDepth) / bc
            + coefficientB * (1 - decay * (1 + bc * massDepth)) / (bc * bc);
        return Math.max(0, fromTop); // far below the width of an atom, rounding alone may leave less than nothing
    }

    /** Share (0 to 1) of the emitted signal that comes from the top mass depth; chi 0 for the generated X-rays. */
    public double shareOfTop(double massDepth, double chi) {
        return Math.min(1, Math.max(0, emittedFromTop(massDepth, chi) / emitted(chi)));
    }

    /** Mean mass depth of the emitted X-rays; chi 0 for the generated ones. */
    public double meanMassDepth(double chi) {
        double ac = a + chi;
        double bc = b + chi;
        return (coefficientA / (ac * ac) + (surfaceIonisation - coefficientA) / (bc * bc)
            + 2 * coefficientB / (bc * bc * bc)) / emitted(chi);
    }

    /** Mass depth above which the given share (0 to 1, both excluded) of the emitted signal arises. */
    public double massDepthOfShare(double share, double chi) {
        if (!(share > 0 && share < 1)) {
            throw new IllegalArgumentException("Share is " + share + ", must lie between 0 and 1.");
        }
        double wanted = share * emitted(chi);
        double low = 0;
        double high = meanMassDepth;
        while (emittedFromTop(high, chi) < wanted) {
            low = high;
            high *= 2;
        }
        double depth = (low + high) / 2;
        for (int step = 0; step < MOST_STEPS && high - low > 1e-12 * high; step++) {
            double excess = emittedFromTop(depth, chi) - wanted;
            if (excess > 0) {
                high = depth;
            } else {
                low = depth;
            }
            double newton = depth - excess / (phi(depth) * Math.exp(-chi * depth));
            double next = newton > low && newton < high ? newton : (low + high) / 2;
            if (Math.abs(next - depth) <= 1e-13 * depth) {
                return next;
            }
            depth = next;
        }
        return depth;
    }
}
