package surfeit.segregation.plan;

import java.util.function.ToDoubleFunction;
import surfeit.statistics.ScatterEstimates;

/**
 * The random error a planned mean will have: with reference spots that scatter as those of a particle do, and with ones
 * that do not scatter. Where nobody has measured the piece, a plan promises what either gives: a quiet piece leaves less
 * error, but fewer degrees of freedom to tell it.
 *
 * @param scattered with the scatter of the reference spots, if any
 * @param quiet     without; the same where no piece is planned for, or its own spots do not tell or have told its scatter
 */
record PlannedError(ScatterEstimates scattered, ScatterEstimates quiet) {

    static PlannedError of(ScatterEstimates random) {
        return new PlannedError(random, random);
    }

    double standardError() {
        return scattered.standardError();
    }

    /** The smaller of a chance with either. */
    double least(ToDoubleFunction<ScatterEstimates> chance) {
        double own = chance.applyAsDouble(scattered);
        return scattered == quiet ? own : Math.min(own, chance.applyAsDouble(quiet));
    }
}
