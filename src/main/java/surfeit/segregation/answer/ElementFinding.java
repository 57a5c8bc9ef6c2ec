package surfeit.segregation.answer;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;

/**
 * What one group shows of one element of the nominal.
 *
 * @param element         the element
 * @param nominalLow      lower limit of the nominal as an atomic fraction; equal to the high limit for a point
 * @param nominalHigh     upper limit
 * @param nominalDerived  true where the limits are the balance of the others
 * @param outcome         the verdict and its numbers, in the scope of the group
 * @param theseParticles  the same for the measured particles themselves, where there are two or more
 * @param meanMassFraction the group's mean composition turned to mass fractions
 * @param fragileWithout  particles whose leaving out, one at a time, changes the verdict
 * @param seenOn          particles that show the verdict's direction each by itself; empty below two particles and where
 *                        none could
 * @param belowLimitCount spots where the element was below its limit
 * @param detectionLimit  the limit used for them, as an atomic fraction, if any were
 * @param limitAssumed    true where that limit was assumed, not stated
 * @param nextStep        what to measure next, in words; empty for a settled verdict
 */
public record ElementFinding(Element element, double nominalLow, double nominalHigh, boolean nominalDerived,
                             Outcome outcome, Optional<Outcome> theseParticles, double meanMassFraction,
                             List<String> fragileWithout, Optional<SeenOn> seenOn, long belowLimitCount,
                             OptionalDouble detectionLimit, boolean limitAssumed, Optional<String> nextStep) {

    /**
     * How many of the particles show it individually, unadjusted.
     *
     * @param particles those that do
     * @param tested    those with more than one spot or a stated uncertainty, so that they could
     * @param of        all of them
     */
    public record SeenOn(int particles, int tested, int of) {
    }

    public boolean isFragile() {
        return !fragileWithout.isEmpty();
    }
}
