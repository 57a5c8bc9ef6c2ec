package surfeit.xray;

import java.util.Map;
import surfeit.element.Element;

/**
 * How fast electrons lose energy in a material, and how many ionisations they make on the way.
 *
 * <pre>
 *   M = sum C Z/A            C mass fraction, Z atomic number, A g/mol
 *   J_i = 1e-3 Z (10.04 + 8.25 exp(-Z/11.22)) keV,  ln J = sum(C Z/A ln J_i) / M
 *   -dE/d(rho s) = (M/J) / sum_k D_k (E/J)^P_k      keV cm²/g
 *   D = 6.6e-6, 1.12e-5 (1.35 - 0.45 J²), 2.2e-6/J;  P = 0.78, 0.1, -(0.5 - 0.25 J)
 *   1/S = U/(V M) sum_k D_k (V/U)^P_k [T_k U^T_k ln U - U^T_k + 1]/T_k²
 *   U = E0/Ec, V = E0/J, T_k = 1 + P_k - m, m the cross-section exponent of the line's family
 * </pre>
 *
 * Holds for about 1 to 40 keV; below 10 keV the loss lies under Bethe's on purpose.
 * Source: Pouchou &amp; Pichoir 1991 (see {@link DepthProfile}), coefficients from memory. Immutable, thread-safe.
 */
public record Stopping(double electronsPerGram, double meanIonisationKev) {

    /** The stopping of a material. */
    public static Stopping of(Material material) {
        double m = 0;
        double logJ = 0;
        for (Map.Entry<Element, Double> part : material.massFractions().entrySet()) {
            double weight = part.getValue() * part.getKey().atomicNumber() / part.getKey().atomicWeight();
            m += weight;
            logJ += weight * Math.log(elementIonisationKev(part.getKey().atomicNumber()));
        }
        return new Stopping(m, Math.exp(logJ / m));
    }

    /** Mean ionisation potential J of a pure element, keV (Zeller's formula, from memory). */
    public static double elementIonisationKev(int atomicNumber) {
        return 1e-3 * atomicNumber * (10.04 + 8.25 * Math.exp(-atomicNumber / 11.22));
    }

    /** Energy loss per mass path, keV cm²/g (positive). */
    public double lossPerMassPath(double energyKev) {
        double v = energyKev / meanIonisationKev;
        double sum = 0;
        for (int k = 0; k < 3; k++) {
            sum += factor(k) * Math.pow(v, exponent(k));
        }
        return electronsPerGram / meanIonisationKev / sum;
    }

    /** 1/S: integral of the cross-section over the electron's whole mass path, backscatter neglected. */
    double inverse(double beamEnergyKev, double overvoltage, double crossSectionExponent) {
        double v = beamEnergyKev / meanIonisationKev;
        double logU = Math.log(overvoltage);
        double sum = 0;
        for (int k = 0; k < 3; k++) {
            double t = 1 + exponent(k) - crossSectionExponent;
            double power = Math.exp(t * logU);
            sum += factor(k) * Math.pow(v / overvoltage, exponent(k)) * (t * power * logU - power + 1) / (t * t);
        }
        return overvoltage / (v * electronsPerGram) * sum;
    }

    private double factor(int k) {
        return switch (k) {
            case 0 -> 6.6e-6;
            case 1 -> 1.12e-5 * (1.35 - 0.45 * meanIonisationKev * meanIonisationKev);
            default -> 2.2e-6 / meanIonisationKev;
        };
    }

    private double exponent(int k) {
        return switch (k) {
            case 0 -> 0.78;
            case 1 -> 0.1;
            default -> -(0.5 - 0.25 * meanIonisationKev);
        };
    }
}
