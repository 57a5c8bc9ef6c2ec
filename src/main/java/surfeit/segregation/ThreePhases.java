package surfeit.segregation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import surfeit.composition.Phase;

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
        for (int i = 0; i < phases.size(); i++) {
            for (int j = i + 1; j < phases.size(); j++) {
                for (int k = j + 1; k < phases.size(); k++) {
                    Optional<ThreePhases> found = triangle(mean, uncertainty,
                        List.of(phases.get(i), phases.get(j), phases.get(k)));
                    if (found.isPresent()) {
                        return found;
                    }
                }
            }
        }
        return Optional.empty();
    }

    private static Optional<ThreePhases> triangle(double[] mean, double[] uncertainty, List<PhaseField> three) {
        double[] corner = three.get(0).composition();
        double[] p = difference(three.get(1).composition(), corner);
        double[] q = difference(three.get(2).composition(), corner);
        double[] d = difference(mean, corner);
        double determinant = dot(p, p) * dot(q, q) - dot(p, q) * dot(p, q);
        if (!(determinant > 1e-9 * dot(p, p) * dot(q, q))) {
            return Optional.empty();
        }
        double b = (dot(d, p) * dot(q, q) - dot(d, q) * dot(p, q)) / determinant;
        double c = (dot(d, q) * dot(p, p) - dot(d, p) * dot(p, q)) / determinant;
        boolean near = IntStream.range(0, mean.length)
            .allMatch(i -> Math.abs(d[i] - b * p[i] - c * q[i])
                <= TWO_SIDED_95 * Math.hypot(uncertainty[i], PhaseFits.UNCERTAINTY));
        return b >= 0 && c >= 0 && b + c <= 1 && near
            ? Optional.of(new ThreePhases(three.stream().map(PhaseField::phase).toList(),
            new double[] {1 - b - c, b, c})) : Optional.empty();
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
        return IntStream.range(0, a.length).mapToDouble(i -> a[i] - b[i]).toArray();
    }

    private static double dot(double[] a, double[] b) {
        return IntStream.range(0, a.length).mapToDouble(i -> a[i] * b[i]).sum();
    }
}
