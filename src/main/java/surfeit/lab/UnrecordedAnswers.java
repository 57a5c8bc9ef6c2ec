package surfeit.lab;

import java.util.Optional;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.UnknownAlloyException;
import surfeit.segregation.Interpreter;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.Sample;

/** Answers for samples on no record, with the alloys that came with the program. Thread-safe. */
public final class UnrecordedAnswers {
    private final AlloyCatalogue packaged;
    private final Answers answers;

    /** @param detectionLimitMassFraction limit taken for "not detected" without a stated limit */
    public UnrecordedAnswers(AlloyCatalogue packaged, Interpreter interpreter, double detectionLimitMassFraction) {
        this.packaged = packaged;
        this.answers = new Answers(new Alloys(packaged), interpreter, detectionLimitMassFraction);
    }

    /** The answer for a sample and its spots. @throws ProblemException alloy-unknown, nominal-incomplete, too-few-elements */
    public Segregation interpret(Sample sample, SpotSource spots, GroupBy by) {
        try {
            return answers.unstored(sample,
                sample.alloy().map(id -> new StoredAlloy(packaged.require(id), 0, Optional.empty())), spots, by);
        } catch (UnknownAlloyException e) {
            throw new ProblemException(Problem.ALLOY_UNKNOWN, e.getMessage());
        }
    }
}
