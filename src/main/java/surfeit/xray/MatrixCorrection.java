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
 * it is worked out by steps, as matrix corrections are (iteration: common practice, no source). Steps shrink, or swing
 * where lines absorb each other strongly, by a factor q that is nearly the same from one to the next, so that of every
 * two the sum of all that would follow is added at once: q/(1 - q) times the second (Aitken). Immutable, thread-safe.
 */
final class MatrixCorrection {
    private static final double CLOSE = 1e-9;
    private static final int MOST_STEPS = 100;

    private final List<Line> lines;
    private final double beamEnergyKev;
    /** chi of each line in each pure element. */
    private final double[][] chi;

    MatrixCorrection(List<Line> lines, double beamEnergyKev, double takeOffDeg) {
        this.lines = List.copyOf(lines);
        this.beamEnergyKev = beamEnergyKev;
        this.chi = this.lines.stream().map(line -> this.lines.stream().map(Line::element).mapToDouble(absorber ->
            Absorption.chi(MassAbsorption.standard().coefficient(line, absorber), takeOffDeg)).toArray())
            .toArray(double[][]::new);
    }

    /**
     * Mass fractions by element, in the order of the lines.
     *
     * @param intensities zero or more, of each line; not zero of all
     * @param first       mass fractions to start from
     */
    double[] read(double[] intensities, double[] first) {
        double[] read = closed(first);
        for (int step = 0; step < MOST_STEPS; step += 2) {
            double[] next = corrected(intensities, read);
            if (furthest(read, next) <= CLOSE) {
                return next;
            }
            double[] afterNext = corrected(intensities, next);
            if (furthest(next, afterNext) <= CLOSE) {
                return afterNext;
            }
            read = foreseen(read, next, afterNext);
        }
        return read;
    }

    private static double furthest(double[] from, double[] to) {
        double most = 0;
        for (int j = 0; j < from.length; j++) {
            most = Math.max(most, Math.abs(to[j] - from[j]));
        }
        return most;
    }

    /** Where such steps lead; the last of them where that would leave less than nothing of an element. */
    private static double[] foreseen(double[] read, double[] next, double[] afterNext) {
        double squares = 0;
        double products = 0;
        for (int j = 0; j < read.length; j++) {
            double first = next[j] - read[j];
            squares += first * first;
            products += first * (afterNext[j] - next[j]);
        }
        double factor = products / squares;
        double[] foreseen = new double[read.length];
        for (int j = 0; j < read.length; j++) {
            foreseen[j] = afterNext[j] + factor / (1 - factor) * (afterNext[j] - next[j]);
            if (!(foreseen[j] >= 0)) {
                return afterNext;
            }
        }
        return closed(foreseen);
    }

    private double[] corrected(double[] intensities, double[] fractions) {
        Map<Element, Double> parts = new TreeMap<>();
        for (int j = 0; j < fractions.length; j++) {
            parts.put(lines.get(j).element(), fractions[j]);
        }
        // What is emitted per mass depends on no density.
        Material material = Material.of(parts, 1);
        Backscatter backscatter = Backscatter.of(material);
        Stopping stopping = Stopping.of(material);
        double atomicNumber = material.meanAtomicNumber();
        double[] next = new double[fractions.length];
        for (int j = 0; j < next.length; j++) {
            Line line = lines.get(j);
            next[j] = intensities[j] == 0 ? 0 : intensities[j] / DepthProfile.of(backscatter, stopping, atomicNumber,
                line.element().atomicNumber(), line.family(), line.edgeEnergyKev(), beamEnergyKev)
                .emitted(sumOfProducts(fractions, chi[j]));
        }
        return closed(next);
    }

    private static double sumOfProducts(double[] fractions, double[] values) {
        double sum = 0;
        for (int j = 0; j < fractions.length; j++) {
            sum += fractions[j] * values[j];
        }
        return sum;
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
