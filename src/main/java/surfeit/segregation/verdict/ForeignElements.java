package surfeit.segregation.verdict;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import surfeit.element.Element;
import surfeit.segregation.answer.ForeignElement;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.sums.ForeignTally;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.segregation.uncertainty.RandomLadder;
import surfeit.spot.Sample;
import surfeit.statistics.CombinedError;
import surfeit.statistics.RandomPart;

/**
 * Elements found outside the nominal, as shares of everything reported and not excluded.
 *
 * <p>No factor and no log odds: the mean, its linear 95 % interval with the shared error
 * {@code u^2 = (1 - C)^2 e^2 + C^2 e_others^2}, and the limit: the
 * stated one, else that {@linkplain ForeignTally from counts}, else the lab's default. Present means: lower end above 0 and mean above the
 * limit. The others' error is taken as r0 times their shares.
 */
final class ForeignElements {
    /** Above this share of all atoms the nominal covers too little of a spot. Judgement. */
    static final double MUCH = 0.10;

    private ForeignElements() {
    }

    static List<ForeignElement> of(ForeignTally tally, Collection<Element> nominal, MethodSettings settings) {
        List<ForeignElement> found = new ArrayList<>();
        for (Element element : tally.elements()) {
            if (!nominal.contains(element)) {
                found.add(one(tally, element, settings));
            }
        }
        return found;
    }

    private static ForeignElement one(ForeignTally tally, Element element, MethodSettings settings) {
        GroupSums sums = tally.sums(element);
        double mean = sums.mean()[0];
        double meanWeight = meanWeight(tally);
        ForeignTally.Shares shares = tally.shares(element);
        OptionalDouble known = shares.highestLimit();
        double limit = known.orElse(settings.detectionLimitMassFraction() * meanWeight / element.atomicWeight());
        double u = sharedUncertainty(tally, element, mean, meanWeight, settings);
        List<RandomPart> parts = RandomLadder.population(sums, 0, mean).parts();
        if (parts.isEmpty()) {
            return new ForeignElement(element, mean, OptionalDouble.empty(), OptionalDouble.empty(), limit,
                known.isEmpty(), mean - 1.96 * u > 0 && mean > limit, shares.spots());
        }
        double h = 0;
        for (RandomPart part : parts) {
            h = Math.max(h, CombinedError.halfWidth(part, u, 0.95));
        }
        return new ForeignElement(element, mean, OptionalDouble.of(Math.max(mean - h, 0)),
            OptionalDouble.of(Math.min(mean + h, 1)), limit, known.isEmpty(), mean - h > 0 && mean > limit, shares.spots());
    }

    private static double sharedUncertainty(ForeignTally tally, Element element, double mean, double meanWeight,
                                            MethodSettings settings) {
        double relative = settings.accuracy().relativeUncertainty();
        double own = Math.hypot(relative * mean, settings.floorMassFraction() * meanWeight / element.atomicWeight());
        double others = 0;
        for (Element other : tally.elements()) {
            double share = other.equals(element) ? 0 : tally.sums(other).mean()[0];
            others += relative * relative * share * share;
        }
        return Math.sqrt((1 - mean) * (1 - mean) * own * own + mean * mean * others);
    }

    private static double meanWeight(ForeignTally tally) {
        double weight = 0;
        double sum = 0;
        for (Element element : tally.elements()) {
            double share = Math.max(tally.sums(element).mean()[0], 0);
            weight += share * element.atomicWeight();
            sum += share;
        }
        return sum > 0 ? weight / sum : 1;
    }

    /** Carbon, oxygen and the coating, which may be found anywhere. */
    static Set<Element> usual(Sample sample) {
        Set<Element> usual = new TreeSet<>(Set.of(Element.of("C"), Element.of("O")));
        sample.coating().ifPresent(coating -> usual.add(coating.element()));
        return usual;
    }

    /** Share of all foreign elements but carbon, oxygen and the coating. */
    static double shareBeyondUsual(List<ForeignElement> foreign, Set<Element> usual) {
        return foreign.stream().filter(found -> !usual.contains(found.element())).mapToDouble(ForeignElement::mean).sum();
    }

    /** The foreign elements that are present and not usual, where together they are too much to be left aside. */
    static List<ForeignElement> muchBeyondUsual(List<ForeignElement> foreign, Set<Element> usual) {
        return shareBeyondUsual(foreign, usual) <= MUCH ? List.of()
            : foreign.stream().filter(found -> found.present() && !usual.contains(found.element())).toList();
    }
}
