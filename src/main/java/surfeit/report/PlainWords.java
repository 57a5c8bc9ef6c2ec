package surfeit.report;

import java.util.List;
import java.util.stream.Stream;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.DepthReading;
import surfeit.segregation.answer.DiffractionMismatch;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;

/**
 * The answer in sentences that a chemist can read aloud: one text per group, per contrast of two groups, per feature
 * measured at several beam energies, and per phase that spots and diffraction do not tell alike.
 *
 * <p>A text says what it speaks about (particles of the kind, these particles, this particle, this spot), which
 * elements are enriched or depleted by what factor with its 95 % interval, how often such a result appears where
 * nothing differs, and, where it cannot tell, why not, what is excluded all the same and what to measure next. In a
 * binary both elements are one test, so it is said once, of the minor element. Never "sure", never "probably".
 * Numbers are rounded by their uncertainty. Immutable, thread-safe.
 */
public final class PlainWords {
    private final Interpretation interpretation;
    private final double margin;
    private final Signs signs;

    public PlainWords(Interpretation interpretation, Signs signs) {
        this.interpretation = interpretation;
        this.margin = interpretation.settings().judgement().marginOddsRatio();
        this.signs = signs;
    }

    /**
     * One text per group, in the order of the answer; then what features measured at several beam energies say of
     * depth, and phases that spots and diffraction do not tell alike.
     */
    public List<String> summary() {
        return Stream.of(interpretation.groups().stream().map(this::group),
            interpretation.depths().stream().map(this::depth),
            interpretation.diffraction().stream().map(this::diffraction)).flatMap(texts -> texts).toList();
    }

    /** One text per contrast, in the order of the answer. */
    public List<String> contrasts() {
        return interpretation.contrasts().stream().map(this::contrast).toList();
    }

    /** What one group shows. */
    public String group(GroupFinding group) {
        return new GroupWords(group, margin, signs).text();
    }

    /** How deep the enrichment of an element in a feature reaches. */
    public String depth(DepthReading depth) {
        return depth.feature() + ": " + depth.detail();
    }

    /** A phase that spots and diffraction do not tell alike. */
    public String diffraction(DiffractionMismatch mismatch) {
        return PhaseSentence.of(mismatch);
    }

    /** How one group differs from another. */
    public String contrast(Contrast contrast) {
        return new ContrastWords(contrast, interpretation.nominalFractions(), margin, signs).text();
    }
}
