package surfeit.segregation;

import surfeit.composition.Nominal;
import surfeit.spot.Sample;

/** Interprets the spots of a sample against its nominal composition. Stateless, thread-safe. */
public final class Interpreter {

    /**
     * The answer for a sample.
     *
     * @param sample  how it was made and measured, and how it is to be judged
     * @param nominal the composition to compare with: the sample's own, or its alloy's
     * @param source  its spots
     * @param by      how to put them into groups
     * @param detectionLimitMassFraction limit taken for "not detected" without a stated limit
     * @throws surfeit.composition.CompositionException where fewer than two elements are left to compare
     */
    public Interpretation interpret(Sample sample, Nominal nominal, SpotSource source, GroupBy by,
                                    double detectionLimitMassFraction) {
        throw new IllegalStateException("not yet");
    }
}
