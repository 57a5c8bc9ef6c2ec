package surfeit.xray;

import java.util.ArrayList;
import java.util.List;
import surfeit.element.Element;

/**
 * What a spot on a tilted surface reads at one beam energy, if the workstation takes the surface for level.
 *
 * <pre>   w_i ~ w0_i f_i(psi') / f_i(psi),  closed to one </pre>
 *
 * w0 the material's mass fractions, f absorption factors of the lines an analyst would take, psi the take-off angle of
 * the level surface and psi' that above the tilted one. Bounds as in {@link TiltEffect}: on the odds of an element,
 * reached in full at 20 degrees of change. Immutable, thread-safe.
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
        double[] read = new double[seen.size()];
        for (int i = 0; i < read.length; i++) {
            read[i] = query.material().massFraction(seen.get(i)) * factor(query, lines.get(i), beamEnergyKev, profiles);
        }
        double error = TiltEffect.error(lines, query.effectiveTakeOffDeg() - query.takeOffDeg());
        List<OfElement> elements = new ArrayList<>();
        for (int i = 0; i < read.length; i++) {
            double others = without(read, i);
            Estimate mass = new Estimate(read[i] / (read[i] + others), read[i] / (read[i] + others / (1 - error)),
                read[i] / (read[i] + others / (1 + error)));
            elements.add(new OfElement(lines.get(i), ElementReading.of(mass, seen, read, i)));
        }
        return new TiltReading(elements, unseen);
    }

    private static double without(double[] read, int index) {
        double others = 0;
        for (int j = 0; j < read.length; j++) {
            others += j == index ? 0 : read[j];
        }
        return others;
    }

    private static double factor(SignalDepthQuery query, Line line, double beamEnergyKev, ProfileCache profiles) {
        DepthProfile profile = profiles.profile(query.material(), line, beamEnergyKev);
        return profile.absorptionFactor(Absorption.chi(line, query.material(), query.effectiveTakeOffDeg()))
            / profile.absorptionFactor(Absorption.chi(line, query.material(), query.takeOffDeg()));
    }
}
