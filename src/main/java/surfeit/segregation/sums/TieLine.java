package surfeit.segregation.sums;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import surfeit.composition.LeverRule;
import surfeit.composition.Phase;
import surfeit.composition.PhaseShare;
import surfeit.element.Element;

/**
 * The tie line between two phases over the closed elements of a group: 0 at the first phase, 1 at the second.
 *
 * <p>A position is at a phase if it lies within a quarter of the line from it and nearer to it than to the alloy as a
 * whole (nominal), but always within a twentieth. Judgement. In Al-Si, whose nominal lies a ninth of the way from (Al)
 * to (Si), a spot on the fine mixture is thus not taken for (Al).
 *
 * @param length   distance of the two compositions, root of the summed squares of atomic fractions
 * @param nearFrom positions up to here are at the first phase
 * @param nearTo   positions from here on are at the second
 */
public record TieLine(Phase from, Phase to, LeverRule rule, double[] start, double[] end, double length, double nearFrom,
                      double nearTo) {
    private static final double NEAR_MOST = 0.25;
    private static final double NEAR_LEAST = 0.05;
    /** Most tie lines of one group; 12 are those of a system of five phases and two more. Judgement, bounds memory. */
    static final int MOST = 12;

    /**
     * The tie lines an alloy's spots may lie on: between any two phases of one system, and in a binary between any two.
     * A pure element belongs to every system it is in. Phases that hold an element outside the list are left out.
     *
     * @param nominal the alloy as a whole, atomic fractions of these elements
     */
    public static List<TieLine> between(List<Phase> phases, List<Element> elements, double[] nominal) {
        List<Phase> own = phases.stream().filter(phase -> isOver(phase, elements)).toList();
        List<Set<Element>> systems = own.stream().map(Phase::systemElements).toList();
        List<TieLine> lines = new ArrayList<>();
        for (int i = 0; i < own.size(); i++) {
            for (int j = i + 1; j < own.size() && lines.size() < MOST; j++) {
                if (elements.size() == 2 || isOver(own.get(i), systems.get(j)) || isOver(own.get(j), systems.get(i))) {
                    of(own.get(i), own.get(j), elements, nominal).ifPresent(lines::add);
                }
            }
        }
        return List.copyOf(lines);
    }

    private static Optional<TieLine> of(Phase a, Phase b, List<Element> elements, double[] nominal) {
        double[] start = a.over(elements).orElseThrow();
        double[] end = b.over(elements).orElseThrow();
        double squares = 0;
        for (int i = 0; i < start.length; i++) {
            squares += (end[i] - start[i]) * (end[i] - start[i]);
        }
        if (!(squares > 0)) {
            return Optional.empty();
        }
        LeverRule rule = LeverRule.between(start, end);
        double whole = rule.fractionOfBeta(nominal);
        return Optional.of(new TieLine(a, b, rule, start, end, Math.sqrt(squares), near(whole), 1 - near(1 - whole)));
    }

    private static double near(double distance) {
        return Math.max(NEAR_LEAST, Math.min(NEAR_MOST, distance / 2));
    }

    /** Whether a phase is made of these elements only. */
    static boolean isOver(Phase phase, Collection<Element> elements) {
        return phase.atomicFractions().entrySet().stream()
            .allMatch(part -> part.getValue() == 0 || elements.contains(part.getKey()));
    }

    public boolean isBinary() {
        return start.length == 2;
    }

    /** Fraction of the second phase; below 0 or above 1 where the composition lies beyond an end of the line. */
    public double position(double[] composition) {
        return rule.fractionOfBeta(composition);
    }

    /** Weights that turn a composition into its position, but for a constant. */
    public double[] weights() {
        double[] weights = new double[start.length];
        for (int i = 0; i < weights.length; i++) {
            weights[i] = (end[i] - start[i]) / (length * length);
        }
        return weights;
    }

    /** Weights of the deviation of one element from the foot on the line, but for a constant. */
    public double[] besideWeights(int element) {
        double[] weights = weights();
        for (int i = 0; i < weights.length; i++) {
            weights[i] *= -(end[element] - start[element]);
        }
        weights[element] += 1;
        return weights;
    }

    /** Shares of the second phase at a position, which is cut to the line. */
    public PhaseShare shares(double position) {
        return PhaseShare.ofAtoms(from, to, Math.min(Math.max(position, 0), 1));
    }
}
