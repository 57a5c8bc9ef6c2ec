package surfeit.segregation.answer;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import surfeit.composition.Phase;
import surfeit.composition.PhaseShare;
import surfeit.element.Element;

/**
 * What one group of spots says of the alloy's known phases.
 *
 * <p>It speaks of what was measured, not of other particles. EDS sees compositions, not crystals: a mixture finer than
 * the X-ray source and one homogeneous (supersaturated, amorphous) phase of the same composition read alike.
 *
 * @param kind        what the group looks like
 * @param phases      every phase it was compared with
 * @param tieLine     the tie line it was read on, if any
 * @param ofThree     about what share of the mass three phases would be, where two do not make the mixture; else empty
 * @param heldByNone  measured elements that none of these phases holds: of the nominal, and others where there is much
 *                    of them
 * @param mainElement at least how much of its atoms are one element, where that is most of them
 * @param detail      the same in a sentence or two
 */
public record PhaseReading(Kind kind, List<Fit> phases, Optional<OnTieLine> tieLine, List<MassShare> ofThree,
                           List<Element> heldByNone, Optional<AtLeast> mainElement, String detail) {
    public PhaseReading {
        phases = List.copyOf(phases);
        heldByNone = List.copyOf(heldByNone);
        ofThree = List.copyOf(ofThree);
    }

    /** Names of the phases that are not excluded, each once. */
    public List<String> fitting() {
        return namesOf(phases);
    }

    public static List<String> namesOf(List<Fit> fits) {
        Set<String> names = new LinkedHashSet<>();
        for (Fit fit : fits) {
            if (fit.fits()) {
                names.add(fit.phase().name());
            }
        }
        return List.copyOf(names);
    }

    /** What a group of spots looks like beside the known phases. */
    public enum Kind {
        /** Fits one phase and no other, and is at least half made of it. */
        ONE_PHASE("one phase"),
        /** Fits no phase by itself, and lies between two of them; with three or more elements, perhaps among three. */
        MIXTURE("mixture"),
        /** The spots fall into two clusters at two phases; their mean is a composition of nothing. */
        ONE_OR_THE_OTHER("one phase or the other"),
        /** Fits no phase and no mixture of two. */
        NEITHER("neither"),
        /** The data do not tell. */
        CANNOT_TELL("cannot tell");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /**
     * One phase and whether the group may be it.
     *
     * @param fits      true where the phase is not excluded at the risk alpha over all groups of the answer; where
     *                  nothing tells the scatter, not by the calibration error alone
     * @param pAdjusted p of "the group is this phase", times the number of elements and of groups; empty where nothing
     *                  tells the scatter
     */
    public record Fit(Phase phase, boolean fits, OptionalDouble pAdjusted) {
    }

    /**
     * Where the group lies on the tie line between two phases.
     *
     * @param position     lever rule in atomic fractions, not cut: below 0 or above 1 it lies beyond an end
     * @param shareOfAtoms share of the second phase, cut to 0..1, with its 95 % interval
     * @param shareOfMass  the same of the mass
     * @param shareOfVolume the same of the volume, where both densities are known
     * @param nominal      share of the second phase in an alloy of nominal composition, where that lies on the line
     * @param beside       distance of the group beside the line, root of summed squares of atomic fractions; 0 in a
     *                     binary
     * @param spots        how the single spots lie on it
     */
    public record OnTieLine(Phase from, Phase to, Estimate position, Estimate shareOfAtoms, Estimate shareOfMass,
                            Optional<Estimate> shareOfVolume, Optional<PhaseShare> nominal, double beside,
                            SpotSpread spots) {
    }

    /** One phase and its share of the mass. */
    public record MassShare(Phase phase, double ofMass) {
    }

    /** At least this atomic fraction is this element: the lower end of the 95 % interval of the mean. */
    public record AtLeast(Element element, double atomicFraction) {
    }
}
