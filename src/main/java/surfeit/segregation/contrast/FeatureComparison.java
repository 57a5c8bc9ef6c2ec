package surfeit.segregation.contrast;

import java.util.List;
import java.util.Optional;
import surfeit.element.Element;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.ForeignElement;
import surfeit.segregation.answer.GroupFinding;

/**
 * One feature of sample A against the same feature of sample B.
 *
 * @param feature        the lab's word for it, with beam energy or session where these split it
 * @param state          what became of it from A to B
 * @param contrast       A against B, element by element; empty where only one sample has it or nothing can be compared
 * @param explanationSet elements each of which alone could have changed so that the rest follows by closing; empty
 *                       where the question does not arise (two elements, nothing flagged); more than one changed where
 *                       the list is empty
 * @param a              the feature in A against A's nominal, if A has it
 * @param b              the feature in B against B's nominal, if B has it
 * @param seenInA        on how many of A's particles it was measured; empty where particles are not named
 * @param seenInB        the same for B
 * @param foreignOnlyInA elements outside the nominal that were found in A and not in B
 * @param foreignOnlyInB elements outside the nominal that were found in B and not in A
 * @param nextStep       what to measure next, in words; empty for a settled comparison
 */
public record FeatureComparison(String feature, State state, Optional<Contrast> contrast,
                                Optional<List<Element>> explanationSet, Optional<GroupFinding> a,
                                Optional<GroupFinding> b, Optional<Presence> seenInA, Optional<Presence> seenInB,
                                List<ForeignElement> foreignOnlyInA, List<ForeignElement> foreignOnlyInB,
                                Optional<String> nextStep) {

    /** What became of a feature. */
    public enum State {
        /** At least one element is shown to be higher or lower. */
        CHANGED("changed"),
        /** Every element is shown to lie within the margin. */
        UNCHANGED("unchanged, shown"),
        /** Neither is shown. */
        UNDECIDED("undecided"),
        /** Spots of it in A, none in B. */
        GONE("gone"),
        /** Spots of it in B, none in A. */
        APPEARED("appeared"),
        /** Spots of it in both, but they share fewer than two elements. */
        NOT_COMPARED("not compared");

        private final String word;

        State(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /**
     * On how many of a sample's particles a feature was measured, with the 95 % interval of the share of such particles
     * that have it (Wilson's). It speaks about other particles only if these were picked without regard to the feature.
     */
    public record Presence(int particles, int of, double shareLow, double shareHigh) {
    }

    /** The compared elements that carry this word, in order. */
    public List<Element> elementsThatAre(Contrast.Word word) {
        return contrast.stream().flatMap(pair -> pair.elements().stream())
            .filter(element -> element.verdict() == word).map(Contrast.ElementContrast::element).toList();
    }
}
