package surfeit.segregation.sums;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.segregation.uncertainty.GroupRuns;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.segregation.uncertainty.ParticleSums;

/**
 * One group of the answer: the tallies of one session, or of three and more sessions put together.
 *
 * @param name its name in the answer
 * @param keys the tallies in it; several are sessions, which then are the unit that repeats
 */
public record GroupMerge(String name, List<GroupKey> keys) {

    /** The summed-up group. */
    public GroupData data(Map<GroupKey, GroupTally> tallies, NominalFractions nominal) {
        List<GroupTally> parts = keys.stream().map(tallies::get).toList();
        GroupTally first = parts.get(0);
        GroupFacts facts = facts(parts);
        ForeignTally foreign = foreign(parts);
        boolean sessions = keys.size() > 1;
        List<GroupData.Below> below = new ArrayList<>();
        boolean[] allBelow = new boolean[first.elements().size()];
        double[] steps = new double[allBelow.length];
        long spots = parts.stream().mapToLong(GroupTally::usable).sum();
        for (int i = 0; i < allBelow.length; i++) {
            below.add(below(parts, i));
            allBelow[i] = below.get(i).count() == spots;
            steps[i] = smallestStep(parts, i);
        }
        List<GroupTally> usable = parts.stream().filter(part -> part.usable() > 0).toList();
        GroupRuns particles = new GroupRuns(runs(usable, GroupTally::raw, steps, false), allBelow);
        GroupRuns units = sessions ? new GroupRuns(runs(usable, GroupTally::raw, steps, true), allBelow) : particles;
        Optional<GroupRuns> corrected = sessions || usable.isEmpty() || first.corrected().isEmpty() ? Optional.empty()
            : Optional.of(new GroupRuns(runs(usable, part -> part.corrected().orElseThrow(), steps, false), allBelow));
        List<Element> notMeasured = nominal.elements().stream().filter(e -> !first.elements().contains(e)).toList();
        References.Offer offer = sessions && parts.stream().anyMatch(part -> part.offer().isAsked())
            ? new References.Offer(Optional.empty(),
                "Several sessions are put together here; reference spots correct groups of one session only.",
                parts.stream().mapToInt(part -> part.offer().spotCount()).sum())
            : first.offer();
        return new GroupData(name, first.key().name(),
            first.key().beamEnergyKev().map(OptionalDouble::of).orElse(OptionalDouble.empty()),
            sessions ? Optional.empty() : first.key().session(), first.elements(), notMeasured, units, particles,
            corrected, offer, sessions, below, facts, foreign,
            parts.stream().anyMatch(GroupTally::hasNegatives),
            PhaseTally.merged(parts.stream().map(GroupTally::phases).toList()));
    }

    /** Step of the last printed digit of one element; 0 where no part knows one. */
    private static double smallestStep(List<GroupTally> parts, int element) {
        double smallest = Double.POSITIVE_INFINITY;
        for (GroupTally part : parts) {
            double step = part.step(element);
            smallest = step > 0 ? Math.min(smallest, step) : smallest;
        }
        return smallest == Double.POSITIVE_INFINITY ? 0 : smallest;
    }

    private static GroupFacts facts(List<GroupTally> parts) {
        if (parts.size() == 1) {
            return parts.get(0).facts();
        }
        GroupFacts facts = new GroupFacts(parts.get(0).elements());
        parts.forEach(part -> facts.merge(part.facts()));
        return facts;
    }

    private static ForeignTally foreign(List<GroupTally> parts) {
        if (parts.size() == 1) {
            return parts.get(0).foreign();
        }
        ForeignTally foreign = new ForeignTally();
        parts.forEach(part -> foreign.merge(part.foreign()));
        return foreign;
    }

    private static GroupData.Below below(List<GroupTally> parts, int element) {
        long count = 0;
        double limit = 0;
        boolean assumed = false;
        for (GroupTally part : parts) {
            count += part.belowCount(element);
            limit = Math.max(limit, part.highestLimit(element));
            assumed |= part.limitAssumed(element);
        }
        return new GroupData.Below(count, limit, assumed);
    }

    /** The zero run, and the limit run where any part has one; a part without values below limits enters both alike. */
    private List<GroupSums> runs(List<GroupTally> parts, Function<GroupTally, FilledTally> tallies, double[] steps,
                                 boolean sessionsAsUnits) {
        if (parts.isEmpty()) {
            return List.of();
        }
        boolean twice = parts.stream().anyMatch(part -> tallies.apply(part).runs().size() > 1);
        List<GroupSums> runs = new ArrayList<>();
        for (int run = 0; run < (twice ? 2 : 1); run++) {
            List<ParticleSums> units = new ArrayList<>();
            double[][] within = new double[steps.length][steps.length];
            for (GroupTally part : parts) {
                List<RunTally> both = tallies.apply(part).runs();
                RunTally tally = both.get(Math.min(run, both.size() - 1));
                String session = keys.size() > 1 ? part.key().session().orElse("no session") : "";
                List<ParticleSums> particles = tally.particleSums();
                if (sessionsAsUnits) {
                    units.add(SessionUnit.of(session, particles));
                } else {
                    particles.forEach(particle -> units.add(session.isEmpty() ? particle
                        : particle.named(particle.name() + " (" + session + ")")));
                }
                for (int i = 0; i < steps.length; i++) {
                    for (int j = 0; j < steps.length; j++) {
                        within[i][j] += tally.coSquares()[i][j];
                    }
                }
            }
            runs.add(new GroupSums(units, within, steps));
        }
        return runs;
    }
}
