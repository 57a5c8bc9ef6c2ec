package surfeit.xray;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import surfeit.element.Element;

/**
 * What a spot on a small patch reads at one beam energy, by the line an analyst would take for each element.
 *
 * <pre>   w = surroundings + share (patch - surroundings) </pre>
 *
 * w mass fractions, share as in {@link PatchDilution}. Every line has its own width and so its own share: the elements
 * need not add up to one. Bounds are those of the share; below overvoltage 3 they are wide. Immutable, thread-safe.
 *
 * @param withoutLine elements of patch or surroundings no line of which can be used
 */
public record PatchReading(List<OfElement> elements, List<Element> withoutLine) {

    /** One element: its line, the share of that line's signal from the patch (0 to 1), and what is read. */
    public record OfElement(Line line, Estimate share, ElementReading read) {
    }

    public PatchReading {
        elements = List.copyOf(elements);
        withoutLine = List.copyOf(withoutLine);
    }

    /** A patch in the material of a question, at one of its beam energies. */
    public static PatchReading of(Patch patch, SignalDepthQuery query, double beamEnergyKev, ProfileCache profiles) {
        Material around = query.material();
        SortedSet<Element> all = new TreeSet<>(around.massFractions().keySet());
        all.addAll(patch.material().massFractions().keySet());
        all.removeIf(element -> around.massFraction(element) + patch.material().massFraction(element) == 0);
        List<Element> seen = new ArrayList<>();
        List<Line> lines = new ArrayList<>();
        List<Element> unseen = new ArrayList<>();
        for (Element element : all) {
            Optional<Line> line = LineChoice.at(element, beamEnergyKev).chosen();
            (line.isPresent() ? seen : unseen).add(element);
            line.ifPresent(lines::add);
        }
        List<Estimate> shares = lines.stream().map(line -> share(patch, line, query, beamEnergyKev, profiles)).toList();
        double[] others = new double[seen.size()];
        for (int j = 0; j < others.length; j++) {
            others[j] = mixed(patch, around, seen.get(j), shares.get(j).low());
        }
        List<OfElement> elements = new ArrayList<>();
        for (int i = 0; i < others.length; i++) {
            elements.add(new OfElement(lines.get(i), shares.get(i),
                ElementReading.of(mixed(patch, around, seen.get(i), shares.get(i)), seen, others, i)));
        }
        return new PatchReading(elements, unseen);
    }

    private static Estimate share(Patch patch, Line line, SignalDepthQuery query, double beam, ProfileCache profiles) {
        Estimate deep = PatchDilution.share(patch.material(), line, beam, patch.diameterNm() / 2,
            query.probeDiameterNm());
        if (patch.thicknessNm().isEmpty()) {
            return deep;
        }
        double byDepth = profiles.profile(patch.material(), line, beam).shareOfTop(
            patch.material().massDepth(patch.thicknessNm().getAsDouble()),
            Absorption.chi(line, patch.material(), query.effectiveTakeOffDeg()));
        return PatchDilution.flakeShare(deep, Math.min(1, byDepth));
    }

    private static Estimate mixed(Patch patch, Material around, Element element, Estimate share) {
        double least = mixed(patch, around, element, share.low());
        double most = mixed(patch, around, element, share.high());
        return new Estimate(mixed(patch, around, element, share.value()), Math.min(least, most),
            Math.max(least, most));
    }

    private static double mixed(Patch patch, Material around, Element element, double share) {
        return (1 - share) * around.massFraction(element) + share * patch.material().massFraction(element);
    }
}
