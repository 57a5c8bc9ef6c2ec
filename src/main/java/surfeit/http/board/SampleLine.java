package surfeit.http.board;

import java.util.Optional;
import surfeit.lab.StoredSample;
import surfeit.report.Highlights;
import surfeit.segregation.answer.Verdict;

/**
 * A sample in the list.
 *
 * @param alloyRevision of its alloy; 0 where it needs none or it came with the program
 * @param found   its strongest findings; empty where they are not known
 * @param instead why they are not known, in a sentence; empty text where they are
 */
public record SampleLine(StoredSample sample, long alloyRevision, Optional<Highlights> found, String instead) {
    /** True where any of its findings has this verdict. */
    public boolean shows(Verdict verdict) {
        return found.filter(known -> known.tests().containsKey(verdict)).isPresent();
    }
}
