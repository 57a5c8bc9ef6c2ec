package surfeit.segregation.answer;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;

/**
 * One group against another, element by element; the calibration error they share mostly cancels.
 *
 * @param groupA        name of the first group
 * @param groupB        name of the second
 * @param paired        true where the same particles carry both and were compared pair by pair
 * @param commonParticles particles compared pair by pair
 * @param leftOut       particles that only one of the groups has, when paired
 * @param scope         {@code particles} or {@code these_particles}
 * @param correlation   correlation of the calibration error taken between the two: 0.9 within a session and beam
 *                      energy, else 0
 * @param note          what a reader must know about the pair, if anything
 * @param elements      one finding per element both groups have
 */
public record Contrast(String groupA, String groupB, boolean paired, List<String> commonParticles,
                       List<String> leftOut, Scope scope, double correlation, Optional<String> note,
                       List<ElementContrast> elements) {

    /** Word for one element of a contrast: A against B. */
    public enum Word {
        HIGHER("higher"), LOWER("lower"), EQUIVALENT("equivalent"), INCONCLUSIVE("inconclusive");

        private final String word;

        Word(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** One element of A against B; fractions are atomic. */
    public record ElementContrast(Element element, Word verdict, double meanA, double meanB,
                                  Optional<Estimate> oddsRatio, Estimate difference, OptionalDouble pValue,
                                  OptionalDouble pAdjusted, OptionalDouble pEquivalence, OptionalDouble confidence,
                                  double uncertaintyRandom, double uncertaintyShared, OptionalDouble degreesOfFreedom,
                                  Optional<Reason> reason, String scale) {
    }
}
