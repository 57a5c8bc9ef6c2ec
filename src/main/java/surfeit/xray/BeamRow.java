package surfeit.xray;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;

/**
 * What one beam energy does for an alloy: the line an analyst would use for every element, how well it is excited, what
 * overlaps it, from how deep and how wide it comes.
 *
 * @param lines            one entry per element that has a usable line
 * @param withoutLine      elements no line of which can be used
 * @param patchShares      for the question of a patch: share of each line's signal that comes from it, with bounds
 */
public record BeamRow(double beamEnergyKev, List<SignalDepth> lines, List<Element> withoutLine,
                      Map<Element, Estimate> patchShares) {
    /** The film whose share tells how much a surface layer counts, in nm. Judgement. */
    public static final double FILM_NM = 10;
    /** An overlap that may add this share to a line where only that line is fitted is a bad one. Judgement. */
    public static final double BAD_OVERLAP = 0.10;

    public BeamRow {
        lines = List.copyOf(lines);
        withoutLine = List.copyOf(withoutLine);
        patchShares = Map.copyOf(patchShares);
    }

    /** The entry of an element, if it has a usable line. */
    public Optional<SignalDepth> line(Element element) {
        return lines.stream().filter(line -> line.element().equals(element)).findFirst();
    }

    /** Share of the signal from the top 10 nm, of the line for which it is largest. */
    public double largestFilmShare() {
        return lines.stream().mapToDouble(BeamRow::filmShare).max().orElse(0);
    }

    /** Share of the generated signal lost on the way out, of the line that loses most. */
    public double largestAbsorbedShare() {
        return lines.stream().mapToDouble(line -> 1 - line.absorptionFactor().value()).max().orElse(0);
    }

    /**
     * What the absorption correction may leave: the lost share times the spread of absorption tables, largest of the
     * lines.
     */
    public double largestAbsorptionError() {
        return lines.stream().mapToDouble(line -> (1 - line.absorptionFactor().value())
            * MassAbsorption.relativeSpread(line.line())).max().orElse(0);
    }

    /** What a film and the absorption correction may err by together. */
    public double largestError() {
        return largestFilmShare() + largestAbsorptionError();
    }

    /** Depth in nm above which half of the signal arises, of the line that reaches deepest. */
    public double deepestHalfNm() {
        return lines.stream().mapToDouble(line -> line.emitted().depth50Nm().value()).max().orElse(0);
    }

    /** Lower bound of the share of the signal that comes from the patch, of the line for which it is smallest. */
    public OptionalDouble smallestPatchShare() {
        return patchShares.values().stream().mapToDouble(Estimate::low).min();
    }

    /** The worst overlap of an alloy's own lines, if one is bad. */
    public Optional<Overlap> badOverlap() {
        return lines.stream().flatMap(line -> line.overlaps().stream())
            .filter(overlap -> overlap.unresolvedShare() >= BAD_OVERLAP).min(Overlap.WORST_FIRST);
    }

    static boolean isBadlyOverlapped(SignalDepth line) {
        return line.overlaps().stream().anyMatch(overlap -> overlap.unresolvedShare() >= BAD_OVERLAP);
    }

    /** Share of a line's signal that comes from the top 10 nm. */
    public static double filmShare(SignalDepth line) {
        return line.emitted().shareOfTop().stream().filter(share -> share.depthNm() == FILM_NM)
            .mapToDouble(share -> share.share().value()).findFirst().orElseThrow();
    }
}
