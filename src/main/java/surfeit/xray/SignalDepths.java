package surfeit.xray;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import surfeit.element.Element;

/**
 * Where the X-rays of a material come from: per beam energy, every selectable line of every element, and the elements
 * no line of which can be used.
 *
 * <p>Lines of elements with mass fraction 0 are left out. Immutable, thread-safe.
 */
public record SignalDepths(SignalDepthQuery query, double backscatterCoefficient, List<AtBeamEnergy> byBeamEnergy) {
    private static final double HEAVY_FROM_ATOMIC_NUMBER = 45;

    /** One beam energy: electron range (Kanaya-Okayama, nm), lines by atomic number, elements without a line. */
    public record AtBeamEnergy(double beamEnergyKev, double electronRangeNm, List<SignalDepth> lines,
                               List<LineChoice> withoutLine) {
    }

    /** Answers a question; profiles already known to the cache are not worked out again. */
    public static SignalDepths of(SignalDepthQuery query, ProfileCache profiles) {
        return new SignalDepths(query, Backscatter.of(query.material()).coefficient(),
            query.beamEnergiesKev().stream().map(beam -> at(query, beam, profiles)).toList());
    }

    private static AtBeamEnergy at(SignalDepthQuery query, double beam, ProfileCache profiles) {
        List<SignalDepth> lines = new ArrayList<>();
        List<LineChoice> without = new ArrayList<>();
        query.material().massFractions().forEach((element, fraction) -> {
            if (fraction > 0) {
                LineChoice choice = LineChoice.at(element, beam);
                choice.selectable().forEach(line -> lines.add(depth(query, choice, line, profiles)));
                if (choice.chosen().isEmpty()) {
                    without.add(choice);
                }
            }
        });
        return new AtBeamEnergy(beam, ElectronRange.kanayaOkayamaNm(query.material(), beam), List.copyOf(lines),
            List.copyOf(without));
    }

    private static SignalDepth depth(SignalDepthQuery query, LineChoice choice, Line line, ProfileCache profiles) {
        Material material = query.material();
        double beam = choice.beamEnergyKev();
        double takeOff = query.effectiveTakeOffDeg();
        DepthProfile profile = profiles.profile(material, line, beam);
        double diameter = LateralSpread.withProbeNm(
            LateralSpread.reedDiameterNm(material, line.edgeEnergyKev(), beam), query.probeDiameterNm());
        return new SignalDepth(line.element(), line, beam, line.overvoltage(beam), Excitation.of(line, beam),
            choice.chosen().filter(line::equals).isPresent(), query.resolution().fwhmEv(line.energyKev()),
            Absorption.coefficient(line, material), Absorption.factor(profile, line, material, takeOff),
            DepthFigures.of(profile, material, 0, query.topDepthsNm()),
            DepthFigures.of(profile, material, Absorption.chi(line, material, takeOff), query.topDepthsNm()), diameter,
            ElectronRange.andersonHaslerNm(material, line.edgeEnergyKev(), beam), overlaps(query, line, beam),
            caveats(query, line, profile));
    }

    /** Peaks of the material's own elements at their amounts, then those of the others at equal amounts. */
    private static List<Overlap> overlaps(SignalDepthQuery query, Line line, double beam) {
        LineOverlap finder = new LineOverlap(query.resolution(), beam);
        List<Overlap> found = new ArrayList<>(finder.disturbing(line, query.material().massFractions()));
        SortedSet<Element> outside = new TreeSet<>(query.others());
        outside.removeIf(element -> query.material().massFraction(element) > 0);
        found.addAll(finder.disturbing(line, outside));
        return found;
    }

    private static List<DepthCaveat> caveats(SignalDepthQuery query, Line line, DepthProfile profile) {
        List<DepthCaveat> caveats = new ArrayList<>();
        if (ModelBounds.weak(profile)) {
            caveats.add(DepthCaveat.LOW_OVERVOLTAGE);
        }
        if (profile.overvoltage() < Excitation.PREFERRED_OVERVOLTAGE) {
            caveats.add(DepthCaveat.POORLY_EXCITED);
        }
        if (LineChoice.soft(line)) {
            caveats.add(DepthCaveat.SOFT_LINE);
        }
        if (query.tiltDeg() != 0) {
            caveats.add(DepthCaveat.TILTED);
        }
        if (!query.material().densityGiven()) {
            caveats.add(DepthCaveat.DENSITY_FROM_ELEMENTS);
        }
        if (query.material().meanAtomicNumber() >= HEAVY_FROM_ATOMIC_NUMBER) {
            caveats.add(DepthCaveat.HEAVY_MATERIAL);
        }
        caveats.add(DepthCaveat.NO_SECONDARY_FLUORESCENCE);
        return caveats;
    }
}
