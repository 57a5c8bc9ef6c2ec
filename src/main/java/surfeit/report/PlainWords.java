package surfeit.report;

import java.util.List;
import surfeit.segregation.Contrast;
import surfeit.segregation.GroupFinding;
import surfeit.segregation.Interpretation;

/**
 * The answer in sentences that a chemist can read aloud: one text per group, and one per contrast of two groups.
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

    /** One text per group, in the order of the answer. */
    public List<String> summary() {
        return interpretation.groups().stream().map(this::group).toList();
    }

    /** One text per contrast, in the order of the answer. */
    public List<String> contrasts() {
        return interpretation.contrasts().stream().map(this::contrast).toList();
    }

    /** What one group shows. */
    public String group(GroupFinding group) {
        return new GroupWords(group, margin, signs).text();
    }

    /** How one group differs from another. */
    public String contrast(Contrast contrast) {
        return new ContrastWords(contrast, interpretation.nominalFractions(), margin, signs).text();
    }
}
