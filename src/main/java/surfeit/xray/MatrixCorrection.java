package surfeit.xray;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import surfeit.element.Element;

/**
 * What a workstation makes of the intensities of a spot by taking it for one homogeneous material.
 *
 * <pre>   w_j = (I_j / emitted_j(w)) / sum_k (I_k / emitted_k(w)) </pre>
 *
 * I_j intensity of the line of element j in the units of {@link DepthProfile#emitted}, emitted_j(w) that of the line in
 * a bulk of composition w, at the same beam energy and take-off angle. The composition that is read corrects itself, so
 * it is worked out by steps, as matrix corrections are (iteration: common practice, no source). Immutable, thread-safe.
 */
record MatrixCorrection(List<Line> lines, double beamEnergyKev, double takeOffDeg) {
    private static final double CLOSE = 1e-9;
    private static final int MOST_STEPS = 100;
    /** From here on only half of each step is taken: where lines absorb each other strongly, whole ones swing. */
    private static final int WHOLE_STEPS = 20;

    MatrixCorrection {
        lines = List.copyOf(lines);
    }

    /**
     * Mass fractions by element, in the order of the lines; zeros where nothing is emitted at all.
     *
     * @param intensities zero or more, of each line
     * @param first       mass fractions to start from
     */
    double[] read(double[] intensities, double[] first) {
        double[] read = closed(first);
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] next = corrected(intensities, read);
            double change = 0;
            for (int j = 0; j < read.length; j++) {
                change = Math.max(change, Math.abs(next[j] - read[j]));
                read[j] = step < WHOLE_STEPS ? next[j] : (next[j] + read[j]) / 2;
            }
            if (change <= CLOSE) {
                break;
            }
        }
        return read;
    }

    private double[] corrected(double[] intensities, double[] fractions) {
        Map<Element, Double> parts = new TreeMap<>();
        for (int j = 0; j < fractions.length; j++) {
            parts.put(lines.get(j).element(), fractions[j]);
        }
        // What is emitted per mass depends on no density.
        Material material = Material.of(parts, 1);
        double[] next = new double[fractions.length];
        for (int j = 0; j < next.length; j++) {
            Line line = lines.get(j);
            next[j] = intensities[j] == 0 ? 0 : intensities[j]
                / DepthProfile.of(material, line, beamEnergyKev).emitted(Absorption.chi(line, material, takeOffDeg));
        }
        return closed(next);
    }

    private static double[] closed(double[] parts) {
        double sum = 0;
        for (double part : parts) {
            sum += part;
        }
        double[] closed = parts.clone();
        for (int j = 0; j < closed.length; j++) {
            closed[j] /= sum;
        }
        return closed;
    }
}
