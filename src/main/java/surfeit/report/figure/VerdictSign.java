package surfeit.report.figure;

import java.util.Arrays;
import java.util.Optional;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.Verdict;

/** The sign of a verdict as a small picture for running text; the word stands beside it, so it tells nothing alone. */
public final class VerdictSign {
    private VerdictSign() {
    }

    /** The sign for words that begin with a verdict's, on a page that holds {@link Figure#STYLE}; else empty text. */
    public static String inline(String words) {
        return mark(words).map(mark -> {
            Drawing drawing = new Drawing();
            mark.draw(0, 0, Mark.SIZE, drawing);
            return "<svg class=\"figure sign\" viewBox=\"-7 -7 14 14\" width=\"14\" height=\"14\" aria-hidden=\"true\">"
                + drawing.elements().strip() + "</svg>";
        }).orElse("");
    }

    private static Optional<Mark> mark(String words) {
        Optional<Mark> verdict = Arrays.stream(Verdict.values()).filter(value -> words.startsWith(value.word()))
            .findFirst()
            .map(Mark::of);
        return verdict.or(() -> Arrays.stream(Contrast.Word.values()).filter(value -> words.startsWith(value.word()))
            .findFirst()
            .map(Mark::of));
    }
}
