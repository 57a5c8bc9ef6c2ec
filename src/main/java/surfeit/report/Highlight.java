package surfeit.report;

import java.util.Optional;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.Verdict;

/**
 * One finding of a sample in a line of a list.
 *
 * @param verdict what is said of the element
 * @param words   the verdict with what belongs to it: {@code enriched (weak, two particles)}
 * @param element symbol of the element
 * @param group   the lab's word for where
 * @param size    by how much, with its 95 % interval: {@code ×1.92 (1.74 to 2.07)}
 * @param factor  the same as numbers, where a factor says it
 * @param margin  factors up to which a shift does not matter
 * @param howSure {@code 1 in 830}; empty text for an inconclusive one
 * @param rival   the strongest other cause that could make all of it, if there is one
 */
public record Highlight(Verdict verdict, String words, String element, String group, String size,
                        Optional<Estimate> factor, Margin margin, String howSure, Optional<String> rival) {

    /** Factors at the ends of the margin around nominal. */
    public record Margin(double low, double high) {
    }
}
