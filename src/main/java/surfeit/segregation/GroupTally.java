package surfeit.segregation;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.spot.ReportedValue;
import surfeit.spot.Sample;
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
    private final NominalFractions nominal;
    private final Sample sample;
    private final References references;
    private final GroupKey key;
    private final double defaultLimit;
    private final Set<Element> listed;
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
    private final PhaseTally.Source phaseSource;
    private final PhaseTally phases;

    GroupTally(NominalFractions nominal, Sample sample, References references, GroupKey key, double defaultLimit,
               Set<Element> listed, boolean negatives, PhaseTally.Source phaseSource) {
        this.nominal = nominal;
        this.sample = sample;
        this.references = references;
        this.key = key;
        this.defaultLimit = defaultLimit;
        this.listed = new TreeSet<>(listed);
        this.negatives = negatives;
        this.elements = nominal.elements().stream().filter(listed::contains).toList();
        this.facts = new GroupFacts(elements);
        int n = elements.size();
        boolean median = sample.judgement().spotCentre() == SpotCentre.MEDIAN;
        this.parts = new SpotParts(elements, defaultLimit, negatives);
        this.raw = new FilledTally(n, median, Optional.empty());
        this.offer = references.isEmpty() || n < 2
            ? new References.Offer(Optional.empty(), "", 0) : references.offer(elements, key);
        this.corrected = offer.correction().map(correction -> new FilledTally(n, median, Optional.of(correction)));
        this.belowCounts = new long[n];
        this.highestLimits = new double[n];
        this.limitAssumed = new boolean[n];
        this.steps = new double[n];
        Arrays.fill(steps, Double.POSITIVE_INFINITY);
        this.foreign = new ForeignTally(sample.excludedElements());
        this.phaseSource = phaseSource;
        this.phases = phaseSource.over(elements, offer.correction());
    }

    /** A tally that starts from what this spot shows. */
    static GroupTally startingWith(Spot spot, NominalFractions nominal, Sample sample, References references,
                                   GroupKey key, double defaultLimit, PhaseTally.Source phases) {
        return new GroupTally(nominal, sample, references, key, defaultLimit, listedIn(spot, nominal), false, phases);
    }

    void add(Spot spot, String particle) {
        notice(spot);
        if (stale) {
            return;
        }
        facts.add(spot);
        foreign.add(particle, spot);
        parts.read(spot);
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

    private void notice(Spot spot) {
        for (Element element : nominal.elements()) {
            if (isListed(spot, element)) {
                stale |= listed.add(element);
            }
            if (spot.values().get(element) instanceof ReportedValue.Measured measured) {
                zeros |= measured.fraction() == 0;
                boolean first = measured.fraction() < 0 && !negatives;
                negatives |= first;
                stale |= first;
            }
        }
    }

    private static Set<Element> listedIn(Spot spot, NominalFractions nominal) {
        Set<Element> listed = new TreeSet<>();
        for (Element element : nominal.elements()) {
            if (isListed(spot, element)) {
                listed.add(element);
            }
        }
        return listed;
    }

    private static boolean isListed(Spot spot, Element element) {
        return spot.values().containsKey(element) && !(spot.values().get(element) instanceof ReportedValue.NotReported);
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
    static GroupTally readFrom(SumsIn in, NominalFractions nominal, Sample sample, References references,
                               GroupKey key, double defaultLimit, PhaseTally.Source phases) {
        Set<Element> listed = new TreeSet<>(in.elements());
        GroupTally tally = new GroupTally(nominal, sample, references, key, defaultLimit, listed, in.aside(), phases);
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
        return new GroupTally(nominal, sample, references, key, defaultLimit, listedInAll, negativesInAll, phaseSource);
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
