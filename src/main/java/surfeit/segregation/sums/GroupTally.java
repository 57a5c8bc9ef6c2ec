package surfeit.segregation.sums;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import surfeit.element.Element;
import surfeit.spot.Spot;
import surfeit.spot.SpotCentre;

/**
 * Adds up the spots of one group as they come. Not thread-safe.
 *
 * <p>How a spot is closed depends on facts of the whole group: which elements of the nominal any of its spots lists, and
 * whether any value is negative. The tally starts from what it is told, or from what its first spot shows. A later spot
 * that shows otherwise makes it stale: it then only goes on collecting those facts, and the spots are read a second time.
 * Memory grows with particles and elements, not with spots.
 */
public final class GroupTally {
    private final SpotInHand hand;
    private final GroupKey key;
    private Closing closing;
    private final boolean[] isClosedOver;
    private final Set<Element> seen = new TreeSet<>();
    private final boolean[] isSeen;
    private boolean negatives;
    private boolean zeros;
    private boolean stale;

    private final List<Element> elements;
    private final SpotParts parts;
    private final FilledTally raw;
    private final References.Offer offer;
    private final Optional<FilledTally> corrected;
    private final long[] belowCounts;
    private final double[] highestLimits;
    private final boolean[] limitAssumed;
    private final double[] steps;
    private long usable;
    private final GroupFacts facts;
    private final ForeignTally foreign;
    private final PhaseTally phases;

    /**
     * What the spots of a group are closed by.
     *
     * @param listed    elements of the nominal that any of them lists
     * @param negatives whether any of their values is negative, so that zero is a number like any other
     */
    public record Closing(Set<Element> listed, boolean negatives) {
        /** What one spot shows. */
        public static Closing of(SpotInHand hand) {
            return new Closing(hand.listed(), false);
        }

        public Closing and(Closing other) {
            Set<Element> both = new TreeSet<>(listed);
            both.addAll(other.listed);
            return new Closing(both, negatives || other.negatives);
        }
    }

    public GroupTally(SpotInHand hand, References references, GroupKey key, Closing closing) {
        this.hand = hand;
        this.key = key;
        this.closing = new Closing(new TreeSet<>(closing.listed()), closing.negatives());
        List<Element> nominal = hand.nominal().elements();
        this.elements = nominal.stream().filter(closing.listed()::contains).toList();
        this.isClosedOver = new boolean[nominal.size()];
        this.isSeen = new boolean[nominal.size()];
        for (int i = 0; i < isClosedOver.length; i++) {
            isClosedOver[i] = closing.listed().contains(nominal.get(i));
        }
        this.facts = new GroupFacts(elements);
        int n = elements.size();
        boolean median = hand.sample().judgement().spotCentre() == SpotCentre.MEDIAN;
        this.parts = hand.parts(elements, closing.negatives());
        this.raw = new FilledTally(n, median, Optional.empty());
        this.offer = references.isEmpty() || n < 2
            ? new References.Offer(Optional.empty(), "", 0) : references.offer(elements, key);
        this.corrected = offer.correction().map(correction -> new FilledTally(n, median, Optional.of(correction)));
        this.belowCounts = new long[n];
        this.highestLimits = new double[n];
        this.limitAssumed = new boolean[n];
        this.steps = new double[n];
        Arrays.fill(steps, Double.POSITIVE_INFINITY);
        this.foreign = new ForeignTally();
        this.phases = hand.phases().over(elements, offer.correction());
    }

    /** Adds a spot, which counts for the particle of this name. */
    public void add(Spot spot, String particle) {
        hand.take(spot);
        notice();
        if (stale) {
            return;
        }
        parts.read(spot);
        facts.add(spot, hand, parts);
        foreign.add(particle, hand);
        if (elements.isEmpty() || !parts.isClosable()) {
            facts.addUnusable(spot);
            return;
        }
        usable++;
        double sum = parts.sum();
        for (int i = 0; i < belowCounts.length; i++) {
            if (parts.below[i]) {
                belowCounts[i]++;
                highestLimits[i] = Math.max(highestLimits[i], parts.limits[i] / sum);
                limitAssumed[i] |= parts.limitAssumed[i];
            } else {
                double step = parts.step(spot, i);
                steps[i] = step > 0 ? Math.min(steps[i], step / sum) : steps[i];
            }
        }
        raw.add(particle, parts);
        if (corrected.isPresent()) {
            corrected.get().add(particle, parts);
        }
        phases.add(parts);
    }

    private void notice() {
        for (int i = 0; i < isSeen.length; i++) {
            if (hand.isListed(i) && !isSeen[i]) {
                isSeen[i] = true;
                seen.add(hand.nominal().elements().get(i));
                stale |= !isClosedOver[i];
            }
        }
        zeros |= hand.hasZero();
        negatives |= hand.hasNegative();
        stale |= hand.hasNegative() && !closing.negatives();
    }

    /** Takes in what another tally of the group added up of later spots; the other one is of no use afterwards. */
    public void merge(GroupTally later) {
        stale |= later.stale || !closing.listed().equals(later.closing.listed()) || zerosWereTakenOtherwise(later);
        seen.addAll(later.seen);
        for (int i = 0; i < isSeen.length; i++) {
            isSeen[i] |= later.isSeen[i];
        }
        negatives |= later.negatives;
        zeros |= later.zeros;
        closing = closing.and(later.closing);
        if (stale) {
            return;
        }
        usable += later.usable;
        for (int i = 0; i < belowCounts.length; i++) {
            belowCounts[i] += later.belowCounts[i];
            highestLimits[i] = Math.max(highestLimits[i], later.highestLimits[i]);
            limitAssumed[i] |= later.limitAssumed[i];
            steps[i] = Math.min(steps[i], later.steps[i]);
        }
        raw.merge(later.raw);
        corrected.ifPresent(tally -> tally.merge(later.corrected.orElseThrow()));
        facts.merge(later.facts);
        foreign.merge(later.foreign);
        phases.merge(later.phases);
    }

    private boolean zerosWereTakenOtherwise(GroupTally later) {
        return closing.negatives() != later.closing.negatives() && (zeros || later.zeros);
    }

    /** Nothing here is stale: the group was read again where it had to be. */
    public void writeTo(SumsOut out) {
        out.elements(closing.listed());
        out.aside(closing.negatives());
        out.elements(seen);
        out.yesOrNo("negative values", negatives);
        out.aside(zeros);
        out.yesOrNo("corrected", corrected.isPresent());
        offer.correction().ifPresent(correction -> out.reals("gain of the reference spots", correction.gain()));
        out.count("spots that can be closed", usable);
        for (int i = 0; i < belowCounts.length; i++) {
            out.count("spots below their limit", belowCounts[i]);
            out.real("highest limit", highestLimits[i]);
            out.yesOrNo("assumed limit", limitAssumed[i]);
            out.real("step of the last digit", steps[i]);
        }
        raw.writeTo(out);
        corrected.ifPresent(tally -> tally.writeTo(out));
        facts.writeTo(out);
        foreign.writeTo(out);
        phases.writeTo(out);
    }

    /** A tally that goes on from what another one wrote, provided that reference spots correct it in the same way. */
    public static GroupTally readFrom(SumsIn in, SpotInHand hand, References references, GroupKey key) {
        Set<Element> listed = new TreeSet<>(in.elements());
        GroupTally tally = new GroupTally(hand, references, key, new Closing(listed, in.aside()));
        tally.readSums(in);
        return tally;
    }

    private void readSums(SumsIn in) {
        seen.addAll(in.elements());
        for (int i = 0; i < isSeen.length; i++) {
            isSeen[i] = seen.contains(hand.nominal().elements().get(i));
        }
        negatives = in.yesOrNo();
        zeros = in.aside();
        in.require("correction", corrected.isPresent());
        offer.correction().ifPresent(correction -> in.require("gain", correction.gain()));
        usable = in.count();
        for (int i = 0; i < belowCounts.length; i++) {
            belowCounts[i] = in.count();
            highestLimits[i] = in.real();
            limitAssumed[i] = in.yesOrNo();
            steps[i] = in.real();
        }
        raw.readFrom(in);
        corrected.ifPresent(tally -> tally.readFrom(in));
        facts.readFrom(in);
        foreign.readFrom(in);
        phases.readFrom(in);
    }

    /** Whether the group must be read again, given what the whole group (or the groups merged with it) shows. */
    public boolean mustReadAgain(Closing all) {
        return stale || !closing.listed().equals(all.listed()) || zeros && closing.negatives() != all.negatives();
    }

    /** A later spot showed what the tally did not begin with: there are no sums, only what the spots list. */
    public boolean isStale() {
        return stale;
    }

    /** What its spots are closed by. */
    public Closing closing() {
        return closing;
    }

    /** What its own spots show. */
    public Closing shown() {
        return new Closing(seen, negatives);
    }

    boolean hasNegatives() {
        return negatives;
    }

    public GroupKey key() {
        return key;
    }

    List<Element> elements() {
        return elements;
    }

    FilledTally raw() {
        return raw;
    }

    Optional<FilledTally> corrected() {
        return corrected;
    }

    References.Offer offer() {
        return offer;
    }

    long usable() {
        return usable;
    }

    long belowCount(int element) {
        return belowCounts[element];
    }

    double highestLimit(int element) {
        return highestLimits[element];
    }

    boolean limitAssumed(int element) {
        return limitAssumed[element];
    }

    double step(int element) {
        return Double.isInfinite(steps[element]) ? 0 : steps[element];
    }

    GroupFacts facts() {
        return facts;
    }

    ForeignTally foreign() {
        return foreign;
    }

    PhaseTally phases() {
        return phases;
    }
}
