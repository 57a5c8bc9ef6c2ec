package surfeit.composition;

import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import surfeit.element.Element;

/**
 * The composition an alloy should have: per element a point with tolerance, a range, or the balance.
 *
 * <p>Fractions of the stated basis, in the order given. A nominal that misses one by at most {@link #CLOSING_LIMIT}
 * is closed by {@link #resolve}, and {@link #isClosed} lets the answer say so; beyond that it is refused as
 * incomplete. Immutable, thread-safe.
 */
public record Nominal(Basis basis, Map<Element, NominalPart> parts) {
    /** How far the stated parts may add up beside one and still be closed in place of refused. Judgement. */
    public static final double CLOSING_LIMIT = 0.01;
    private static final double ROUNDING = 1e-9;

    public Nominal {
        parts = Collections.unmodifiableMap(new LinkedHashMap<>(parts));
        requireComplete(parts.values());
    }

    /** The elements, in the order of the nominal. */
    public List<Element> elements() {
        return List.copyOf(parts.keySet());
    }

    /** What the stated parts add up to, as near to one as their ranges allow; one where an element is the balance. */
    public double statedSum() {
        return hasBalance(parts.values()) ? 1 : Math.min(Math.max(1, lows(parts.values())), highs(parts.values()));
    }

    /** True where the stated parts do not add up to one, so that they were scaled to do so. */
    public boolean isClosed() {
        return Math.abs(statedSum() - 1) > ROUNDING;
    }

    /** The nominal as closed atomic fractions with their limits. */
    public NominalFractions resolve() {
        return NominalFractions.of(this);
    }

    /** Low and high limits and the middle composition in the stated basis. */
    NominalLimits limits() {
        return NominalLimits.of(List.copyOf(parts.values()));
    }

    private static void requireComplete(Collection<NominalPart> parts) {
        if (parts.isEmpty()) {
            throw new CompositionException(CompositionException.Kind.TOO_FEW_ELEMENTS,
                "A nominal names its elements and how much of each, got none.");
        }
        long balances = parts.stream().filter(NominalPart.Balance.class::isInstance).count();
        double lows = lows(parts);
        double highs = highs(parts);
        if (balances > 1) {
            throw incomplete("At most one element of a nominal can be the balance, got " + balances + ".");
        }
        if (balances == 1 && lows > 1 + ROUNDING) {
            throw incomplete("The elements beside the balance add up to at least " + Percent.rounded(lows)
                + "; at most 100 % is possible.");
        }
        if (balances == 0 && (lows > 1 + CLOSING_LIMIT + ROUNDING || highs < 1 - CLOSING_LIMIT - ROUNDING)) {
            String highest = lows == highs ? "" : " to " + Percent.rounded(highs);
            throw incomplete("The nominal adds up to " + Percent.rounded(lows) + highest
                + "; it must reach 100 % within " + Percent.text(CLOSING_LIMIT)
                + ", or name one element as the balance.");
        }
    }

    private static CompositionException incomplete(String message) {
        return new CompositionException(CompositionException.Kind.NOT_SUMMING_TO_ONE, message);
    }

    private static boolean hasBalance(Collection<NominalPart> parts) {
        return parts.stream().anyMatch(NominalPart.Balance.class::isInstance);
    }

    private static double lows(Collection<NominalPart> parts) {
        return parts.stream().mapToDouble(NominalLimits::low).sum();
    }

    private static double highs(Collection<NominalPart> parts) {
        return parts.stream().mapToDouble(NominalLimits::high).sum();
    }
}
