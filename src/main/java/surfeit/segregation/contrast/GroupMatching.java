package surfeit.segregation.contrast;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.segregation.sums.GroupData;

/**
 * Which group of sample A is compared with which of sample B: those of the same name, as near in beam energy and
 * session as there are.
 *
 * <p>A group that was split by beam energy or session has several counterparts. A pair stands where each is the nearest
 * the other has; a group that is then left alone is compared with its nearest ones all the same, unless these are of
 * another beam energy.
 *
 * @param pairs    what is compared, in the order of A
 * @param gone     groups of A whose name B does not have
 * @param appeared groups of B whose name A does not have
 * @param leftOfA  groups of A whose name B has, but at no beam energy to compare with
 * @param leftOfB  the same of B
 */
public record GroupMatching(List<Pair> pairs, List<GroupAnalysis> gone, List<GroupAnalysis> appeared,
                            List<GroupAnalysis> leftOfA, List<GroupAnalysis> leftOfB) {

    /** A group of A and its counterpart in B. */
    public record Pair(GroupAnalysis a, GroupAnalysis b, Nearness nearness) {
        static Pair of(GroupAnalysis a, GroupAnalysis b) {
            GroupData dataA = a.data();
            GroupData dataB = b.data();
            boolean sameEnergy = dataA.beamEnergyKev().equals(dataB.beamEnergyKev());
            boolean unstated = dataA.beamEnergyKev().isEmpty() || dataB.beamEnergyKev().isEmpty();
            boolean sameSession = dataA.session().isPresent() && dataA.session().equals(dataB.session());
            return new Pair(a, b, sameEnergy ? sameSession ? Nearness.SAME_RUN : Nearness.SAME_ENERGY
                : unstated ? Nearness.ENERGY_UNSTATED : Nearness.OTHER_ENERGY);
        }
    }

    /** How alike two groups were measured, nearest first. */
    public enum Nearness { SAME_RUN, SAME_ENERGY, ENERGY_UNSTATED, OTHER_ENERGY }

    public static GroupMatching of(List<GroupAnalysis> as, List<GroupAnalysis> bs) {
        List<Pair> candidates = new ArrayList<>();
        for (GroupAnalysis a : as) {
            bs.stream().filter(b -> a.data().baseName().equals(b.data().baseName()))
                .forEach(b -> candidates.add(Pair.of(a, b)));
        }
        List<Pair> mutual = candidates.stream()
            .filter(pair -> isNearest(pair, candidates, Pair::a) && isNearest(pair, candidates, Pair::b)).toList();
        List<Pair> pairs = candidates.stream().filter(pair -> {
            boolean nearestOfA = isNearest(pair, candidates, Pair::a);
            boolean nearestOfB = isNearest(pair, candidates, Pair::b);
            boolean alone = nearestOfA && !holds(mutual, Pair::a, pair.a) || nearestOfB && !holds(mutual, Pair::b, pair.b);
            return nearestOfA && nearestOfB || alone && pair.nearness != Nearness.OTHER_ENERGY;
        }).toList();
        return new GroupMatching(pairs, as.stream().filter(a -> !holds(candidates, Pair::a, a)).toList(),
            bs.stream().filter(b -> !holds(candidates, Pair::b, b)).toList(),
            as.stream().filter(a -> holds(candidates, Pair::a, a) && !holds(pairs, Pair::a, a)).toList(),
            bs.stream().filter(b -> holds(candidates, Pair::b, b) && !holds(pairs, Pair::b, b)).toList());
    }

    private static boolean isNearest(Pair pair, List<Pair> candidates, Function<Pair, GroupAnalysis> side) {
        return candidates.stream().filter(other -> side.apply(other) == side.apply(pair))
            .noneMatch(other -> other.nearness.compareTo(pair.nearness) < 0);
    }

    private static boolean holds(List<Pair> pairs, Function<Pair, GroupAnalysis> side, GroupAnalysis group) {
        return pairs.stream().anyMatch(pair -> side.apply(pair) == group);
    }
}
