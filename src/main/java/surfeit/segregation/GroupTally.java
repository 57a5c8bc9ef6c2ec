package surfeit.segregation;

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
 * whether any value is negative. The tally starts from what its first spot shows. A later spot that shows otherwise
 * makes it stale: it then only goes on collecting those facts, and the group is read a second time. Memory grows with
 * particles and elements, not with spots.
 */
final class GroupTally {
    private final SpotInHand hand;
    private final References references;
    private final GroupKey key;
    private final Set<Element> listed;
    private final boolean[] isListed;
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

    GroupTally(SpotInHand hand, References references, GroupKey key, Set<Element> listed, boolean negatives) {
        this.hand = hand;
        this.references = references;
        this.key = key;
        this.listed = new TreeSet<>(listed);
        this.negatives = negatives;
        List<Element> nominal = hand.nominal().elements();
        this.elements = nominal.stream().filter(listed::contains).toList();
        this.isListed = new boolean[nominal.size()];
        for (int i = 0; i < isListed.length; i++) {
            isListed[i] = listed.contains(nominal.get(i));
        }
        this.facts = new GroupFacts(elements);
        int n = elements.size();
        boolean median = hand.sample().judgement().spotCentre() == SpotCentre.MEDIAN;
        this.parts = hand.parts(elements, negatives);
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

    /** A tally that starts from what this spot shows. */
    static GroupTally startingWith(Spot spot, SpotInHand hand, References references, GroupKey key) {
        hand.take(spot);
        return new GroupTally(hand, references, key, hand.listed(), false);
    }

    void add(Spot spot, String particle) {
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
        for (int i = 0; i < isListed.length; i++) {
            if (hand.isListed(i) && !isListed[i]) {
                isListed[i] = true;
                listed.add(hand.nominal().elements().get(i));
                stale = true;
            }
        }
        zeros |= hand.hasZero();
        stale |= hand.hasNegative() && !negatives;
        negatives |= hand.hasNegative();
    }

    /** Nothing here is stale: the group was read again where it had to be. */
    void writeTo(SumsOut out) {
        out.elements(listed);
        out.aside(negatives);
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
    static GroupTally readFrom(SumsIn in, SpotInHand hand, References references, GroupKey key) {
        Set<Element> listed = new TreeSet<>(in.elements());
        GroupTally tally = new GroupTally(hand, references, key, listed, in.aside());
        tally.readSums(in);
        return tally;
    }

    private void readSums(SumsIn in) {
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
    boolean mustReadAgain(Set<Element> listedInAll, boolean negativesInAll) {
        return stale || !listed.equals(listedInAll) || zeros && negatives != negativesInAll;
    }

    /** An empty tally for reading the group again. */
    GroupTally again(Set<Element> listedInAll, boolean negativesInAll) {
        return new GroupTally(hand, references, key, listedInAll, negativesInAll);
    }

    Set<Element> listed() {
        return listed;
    }

    boolean hasNegatives() {
        return negatives;
    }

    GroupKey key() {
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
