package surfeit.segregation.phase;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.composition.Phase;
import surfeit.segregation.answer.PhaseReading;
import surfeit.segregation.sums.PhaseField;

/**
 * Whether a composition could be a mixture of three phases, for alloys of three or more elements.
 *
 * <p>Shares a, b, c of the atoms are the least-squares solution of {@code m = a A + b B + c C}, a + b + c = 1; it
 * counts if none is negative and m deviates by no more than 1.96 standard uncertainties in any element. With three
 * elements every composition inside the triangle is met exactly, so this excludes little and is told as a possibility.
 */
record ThreePhases(List<Phase> phases, double[] ofAtoms) {
    private static final double TWO_SIDED_95 = 1.96;

    /** The first three phases that could make up the mean. */
    static Optional<ThreePhases> of(double[] mean, double[] uncertainty, List<PhaseField> phases) {
        double[] limits = new double[mean.length];
        for (int i = 0; i < limits.length; i++) {
            limits[i] = TWO_SIDED_95 * Math.hypot(uncertainty[i], PhaseFits.UNCERTAINTY);
        }
        for (int i = 0; i < phases.size(); i++) {
            for (int j = i + 1; j < phases.size(); j++) {
                for (int k = j + 1; k < phases.size(); k++) {
                    Optional<ThreePhases> found = triangle(mean, limits, phases.get(i), phases.get(j),
                        phases.get(k));
                    if (found.isPresent()) {
                        return found;
                    }
                }
            }
        }
        return Optional.empty();
    }

    private static Optional<ThreePhases> triangle(double[] mean, double[] limits, PhaseField first, PhaseField second,
                                                  PhaseField third) {
        double[] corner = first.composition();
        double[] p = difference(second.composition(), corner);
        double[] q = difference(third.composition(), corner);
        double[] d = difference(mean, corner);
        double pp = dot(p, p);
        double qq = dot(q, q);
        double pq = dot(p, q);
        double determinant = pp * qq - pq * pq;
        if (!(determinant > 1e-9 * pp * qq)) {
            return Optional.empty();
        }
        double b = (dot(d, p) * qq - dot(d, q) * pq) / determinant;
        double c = (dot(d, q) * pp - dot(d, p) * pq) / determinant;
        if (!(b >= 0 && c >= 0 && b + c <= 1)) {
            return Optional.empty();
        }
        for (int i = 0; i < d.length; i++) {
            if (!(Math.abs(d[i] - b * p[i] - c * q[i]) <= limits[i])) {
                return Optional.empty();
            }
        }
        return Optional.of(new ThreePhases(List.of(first.phase(), second.phase(), third.phase()),
            new double[] {1 - b - c, b, c}));
    }

    /** Shares of the mass. */
    List<PhaseReading.MassShare> ofMass() {
        double mass = 0;
        for (int i = 0; i < 3; i++) {
            mass += ofAtoms[i] * phases.get(i).meanAtomicWeight();
        }
        List<PhaseReading.MassShare> shares = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            shares.add(new PhaseReading.MassShare(phases.get(i), ofAtoms[i] * phases.get(i).meanAtomicWeight() / mass));
        }
        return shares;
    }

    private static double[] difference(double[] a, double[] b) {
        double[] difference = new double[a.length];
        for (int i = 0; i < a.length; i++) {
            difference[i] = a[i] - b[i];
        }
        return difference;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
