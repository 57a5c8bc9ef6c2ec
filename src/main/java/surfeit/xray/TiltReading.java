package surfeit.xray;

import java.util.ArrayList;
import java.util.List;
import surfeit.element.Element;

/**
 * What a spot on a tilted surface reads at one beam energy, if the workstation takes the surface for level.
 *
 * <pre>   I_i = w0_i emitted_i(psi') </pre>
 *
 * turned to mass fractions by {@link MatrixCorrection} at psi. w0 the material's mass fractions, emitted_i of the lines
 * an analyst would take, psi the take-off angle of the level surface and psi' that above the tilted one. Bounds take the
 * error of {@link TiltEffect} on the intensity of the element's own line against all others, reached in full at 20
 * degrees of change. Immutable, thread-safe.
 *
 * @param withoutLine elements no line of which can be used; the others are closed without them
 */
public record TiltReading(List<OfElement> elements, List<Element> withoutLine) {

    /** One element: its line and what is read. */
    public record OfElement(Line line, ElementReading read) {
    }

    public TiltReading {
        elements = List.copyOf(elements);
        withoutLine = List.copyOf(withoutLine);
    }

    /** The material of a question on its tilted surface, at one of its beam energies. */
    public static TiltReading of(SignalDepthQuery query, double beamEnergyKev, ProfileCache profiles) {
        List<Element> seen = new ArrayList<>();
        List<Line> lines = new ArrayList<>();
        List<Element> unseen = new ArrayList<>();
        query.material().massFractions().forEach((element, fraction) -> {
            if (fraction > 0) {
                LineChoice choice = LineChoice.at(element, beamEnergyKev);
                (choice.chosen().isPresent() ? seen : unseen).add(element);
                choice.chosen().ifPresent(lines::add);
            }
        });
        double[] first = seen.stream().mapToDouble(query.material()::massFraction).toArray();
        double[] intensities = new double[first.length];
        for (int i = 0; i < first.length; i++) {
            intensities[i] = first[i] * emitted(query, lines.get(i), beamEnergyKev, profiles);
        }
        MatrixCorrection correction = new MatrixCorrection(lines, beamEnergyKev, query.takeOffDeg());
        double error = TiltEffect.error(lines, query.effectiveTakeOffDeg() - query.takeOffDeg());
        double[] read = first.length == 0 ? first : correction.read(intensities, first);
        List<OfElement> elements = new ArrayList<>();
        for (int i = 0; i < read.length; i++) {
            double low = read(correction, intensities, first, i, 1 - error);
            double high = read(correction, intensities, first, i, 1 + error);
            Estimate mass = new Estimate(read[i], Math.min(read[i], Math.min(low, high)),
                Math.max(read[i], Math.max(low, high)));
            elements.add(new OfElement(lines.get(i), ElementReading.of(mass, seen, read, i)));
        }
        return new TiltReading(elements, unseen);
    }

    private static double read(MatrixCorrection correction, double[] intensities, double[] first, int index,
                               double factor) {
        double[] moved = intensities.clone();
        moved[index] *= factor;
        return correction.read(moved, first)[index];
    }

    /** What comes out of the tilted surface. */
    private static double emitted(SignalDepthQuery query, Line line, double beamEnergyKev, ProfileCache profiles) {
        return profiles.profile(query.material(), line, beamEnergyKev)
            .emitted(Absorption.chi(line, query.material(), query.effectiveTakeOffDeg()));
    }
}
