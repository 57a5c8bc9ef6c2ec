package surfeit.composition;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import surfeit.element.Element;

/**
 * The composition an alloy should have: per element a point with tolerance, a range, or the balance.
 *
 * <p>Fractions of the stated basis, in the order given. A nominal that misses one by at most {@link #CLOSING_LIMIT}
 * is closed by {@link #resolve}, and {@link #statedSum} lets the answer say so; beyond that it is refused as
 * incomplete. Immutable, thread-safe.
 */
public record Nominal(Basis basis, Map<Element, NominalPart> parts) {
    /** How far the stated parts may add up beside one and still be closed in place of refused. Judgement. */
    public static final double CLOSING_LIMIT = 0.01;
    private static final double ROUNDING = 1e-9;

    public Nominal {
        parts = Collections.unmodifiableMap(new LinkedHashMap<>(parts));
        requireComplete(parts);
    }

    /** The elements, in the order of the nominal. */
    public List<Element> elements() {
        return List.copyOf(parts.keySet());
    }

    /** What the stated points and range middles add up to; one where an element is the balance. */
    public double statedSum() {
        return hasBalance(parts) ? 1 : sumOfMiddles(parts);
    }

    /** The nominal as closed atomic fractions with their limits. */
    public NominalFractions resolve() {
        return NominalFractions.of(this);
    }

    private static void requireComplete(Map<Element, NominalPart> parts) {
        long balances = parts.values().stream().filter(NominalPart.Balance.class::isInstance).count();
        if (balances > 1) {
            throw incomplete("At most one element of a nominal can be the balance, got %d.", balances);
        }
        double lows = 0;
        double highs = 0;
        for (NominalPart part : parts.values()) {
            lows += low(part);
            highs += high(part);
        }
        if (balances == 1 && lows > 1 + ROUNDING) {
            throw incomplete("The elements beside the balance add up to at least %.6g %%; at most 100 %% is possible.", lows * 100);
        }
        if (balances == 0 && (lows > 1 + CLOSING_LIMIT + ROUNDING || highs < 1 - CLOSING_LIMIT - ROUNDING)) {
            throw incomplete("The nominal adds up to %s; it must reach 100 %% within %.3g %%, or name one element as the balance.",
                lows == highs ? percent(lows) : percent(lows) + " to " + percent(highs), CLOSING_LIMIT * 100);
        }
    }

    private static String percent(double fraction) {
        return String.format(Locale.ROOT, "%.6g %%", fraction * 100);
    }

    private static CompositionException incomplete(String format, Object... arguments) {
        return new CompositionException(CompositionException.Kind.NOT_SUMMING_TO_ONE,
            String.format(Locale.ROOT, format, arguments));
    }

    private static boolean hasBalance(Map<Element, NominalPart> parts) {
        return parts.values().stream().anyMatch(NominalPart.Balance.class::isInstance);
    }

    private static double sumOfMiddles(Map<Element, NominalPart> parts) {
        return parts.values().stream().mapToDouble(part -> (low(part) + high(part)) / 2).sum();
    }

    private static double low(NominalPart part) {
        return part instanceof NominalPart.Point point ? point.value()
            : part instanceof NominalPart.Range range ? range.low() : 0;
    }

    private static double high(NominalPart part) {
        return part instanceof NominalPart.Point point ? point.value()
            : part instanceof NominalPart.Range range ? range.high() : 0;
    }

    /** Low and high limits in the stated basis, the balance filled in as one less the rest. */
    double[][] limits() {
        List<NominalPart> list = new ArrayList<>(parts.values());
        double[] lows = list.stream().mapToDouble(Nominal::low).toArray();
        double[] highs = list.stream().mapToDouble(Nominal::high).toArray();
        for (int i = 0; i < list.size(); i++) {
            if (list.get(i) instanceof NominalPart.Balance) {
                double otherLows = 0;
                double otherHighs = 0;
                for (int j = 0; j < list.size(); j++) {
                    otherLows += j == i ? 0 : lows[j];
                    otherHighs += j == i ? 0 : highs[j];
                }
                lows[i] = Math.max(1 - otherHighs, 0);
                highs[i] = 1 - otherLows;
            }
        }
        return new double[][] {lows, highs};
    }
}
