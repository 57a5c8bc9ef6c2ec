package surfeit.statistics;

import java.util.ArrayList;
import java.util.List;

/**
 * The random error of a planned mean, and equally likely estimates of it that the study may come to.
 *
 * <pre>
 *     one part:   s_i = se sqrt(chi2(df) / df)                  at 400 midpoints of probability
 *     two parts:  every of 20 estimates of the one with every of 20 of the other, joined as the study will join them
 * </pre>
 * se true standard error, df degrees of freedom of its estimate, as whole numbers; the parts are independent and joined
 * by {@link WelchSatterthwaite}. Twenty by twenty is within 0.002 of a thousand by a thousand in the power of a test
 * (computed outside, degrees of freedom from 2 on). Immutable.
 */
public final class ScatterEstimates {
    private final double standardError;
    private final List<RandomPart> estimates;

    private ScatterEstimates(double standardError, List<RandomPart> estimates) {
        this.standardError = standardError;
        this.estimates = estimates;
    }

    /** Of an error that is estimated as a whole. */
    public static ScatterEstimates of(RandomPart random) {
        return new ScatterEstimates(random.standardError(), estimates(random, ScatterMidpoints.POINTS));
    }

    /**
     * Of a sum of two independent errors.
     *
     * @param own       the one
     * @param error     true standard error of the other
     * @param estimates what the study may find for the other, each equally likely
     */
    public static ScatterEstimates ofSum(RandomPart own, double error, List<RandomPart> estimates) {
        List<RandomPart> sums = new ArrayList<>();
        for (RandomPart part : fewEstimates(own)) {
            estimates.forEach(other -> sums.add(part.plus(other)));
        }
        return new ScatterEstimates(Math.hypot(own.standardError(), error), sums);
    }

    /** Twenty equally likely estimates of one error; one where it is known. */
    public static List<RandomPart> fewEstimates(RandomPart random) {
        return estimates(random, ScatterMidpoints.FEW);
    }

    private static List<RandomPart> estimates(RandomPart random, int points) {
        double df = random.degreesOfFreedom();
        if (df > StudentT.NORMAL_ABOVE || random.standardError() == 0) {
            return List.of(random);
        }
        List<RandomPart> estimates = new ArrayList<>(points);
        for (double factor : ScatterMidpoints.of((int) Math.max(1, Math.floor(df)), points)) {
            estimates.add(new RandomPart(random.standardError() * factor, Math.max(df, 1)));
        }
        return estimates;
    }

    /** se, which the study will not know. */
    public double standardError() {
        return standardError;
    }

    List<RandomPart> estimates() {
        return estimates;
    }
}
