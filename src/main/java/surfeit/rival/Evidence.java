package surfeit.rival;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import surfeit.composition.Basis;
import surfeit.element.Element;
import surfeit.spot.Position;

/**
 * What the spots of a group say beside their composition. Immutable, thread-safe.
 *
 * @param stances       how they lay to the detector
 * @param featureUm     smallest stated diameter of the feature, micrometres
 * @param totals        raw totals as fractions; the sum of what was reported where none was stated
 * @param beside        elements outside the closed ones: what was found of them
 * @param lines         lines the values were read from, as reported
 * @param bases         what the reported values are fractions of
 * @param sessions      sessions of its spots, unnamed ones left out
 * @param positions     stated positions of its spots
 * @param everyPosition true where every spot states its position
 */
public record Evidence(List<Stance> stances, OptionalDouble featureUm, Totals totals, Map<Element, Found> beside,
                       Map<Element, String> lines, Set<Basis> bases, Set<String> sessions, Set<Position> positions,
                       boolean everyPosition) {

    /** Lowest and highest raw total, and whether every one is 100 %, which says nothing. */
    public record Totals(double lowest, double highest, boolean allNormalised) {
    }

    /**
     * An element outside the closed ones.
     *
     * @param perClosedAtom mean number of its atoms per atom of the closed elements; spots without it count zero
     * @param limit         largest limit it was looked for with, in the same measure; 0 where none was stated
     */
    public record Found(double perClosedAtom, double limit) {
        static final Found NOT_LOOKED_FOR = new Found(0, 0);

        /** At most this much of it was there: what was found, or the limit where nothing was. */
        double most() {
            return perClosedAtom > 0 ? perClosedAtom : limit;
        }
    }

    public Evidence {
        stances = List.copyOf(stances);
        beside = Map.copyOf(beside);
        lines = Map.copyOf(lines);
        bases = Set.copyOf(bases);
        sessions = Set.copyOf(sessions);
        positions = Set.copyOf(positions);
    }
}
