package surfeit.segregation.sums;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import surfeit.composition.Basis;
import surfeit.element.Element;
import surfeit.rival.Evidence;
import surfeit.spot.ReportedValue;
import surfeit.spot.ReportedValues;
import surfeit.spot.Spot;

/**
 * Adds up the elements outside the closed ones, excluded ones too, as atoms per closed atom. Not thread-safe.
 *
 * <p>They give a film, a residue or an oxide away. A spot that does not list an element counts zero for it.
 */
final class BesideTally {
    private final List<Element> closed;
    private final Map<Element, Sum> sums = new TreeMap<>();
    private final Map<Element, String> lines = new LinkedHashMap<>();
    private long spots;

    private static final class Sum {
        private double perClosedAtom;
        private double limit;
    }

    BesideTally(List<Element> closed) {
        this.closed = closed;
    }

    void add(Spot spot, SpotInHand hand, SpotParts parts) {
        spots++;
        if (parts.holdAll() && !hand.hasLines()) {
            return; // most spots have neither an element beside the closed ones nor a line to note
        }
        double inside = 0;
        boolean outside = false;
        ReportedValues values = hand.values();
        for (int i = 0; i < values.size(); i++) {
            Element element = values.element(i);
            boolean isClosed = closed.contains(element);
            outside |= !isClosed;
            if (values.value(i) instanceof ReportedValue.Measured measured) {
                inside += isClosed ? atoms(measured.fraction(), element, spot.basis()) : 0;
                if (isClosed && measured.line().isPresent()) {
                    lines.putIfAbsent(element, measured.line().get());
                }
            }
        }
        if (outside && inside > 0) {
            addOutside(spot, inside);
        }
    }

    private void addOutside(Spot spot, double inside) {
        for (Map.Entry<Element, ReportedValue> entry : spot.values().entrySet()) {
            if (closed.contains(entry.getKey()) || entry.getValue() instanceof ReportedValue.NotReported) {
                continue;
            }
            Sum sum = sums.computeIfAbsent(entry.getKey(), element -> new Sum());
            OptionalDouble limit = OptionalDouble.empty();
            if (entry.getValue() instanceof ReportedValue.Measured measured) {
                sum.perClosedAtom += Math.max(atoms(measured.fraction(), entry.getKey(), spot.basis()) / inside, 0);
                limit = measured.limit();
            } else if (entry.getValue() instanceof ReportedValue.BelowLimit below) {
                limit = OptionalDouble.of(below.limitFraction());
            } else if (entry.getValue() instanceof ReportedValue.NotDetected notDetected) {
                limit = notDetected.limitFraction();
            }
            if (limit.isPresent()) {
                sum.limit = Math.max(sum.limit, atoms(limit.getAsDouble(), entry.getKey(), spot.basis()) / inside);
            }
        }
    }

    private static double atoms(double fraction, Element element, Basis basis) {
        return basis == Basis.MASS ? fraction / element.atomicWeight() : fraction;
    }

    void writeTo(SumsOut out) {
        out.count("spots", spots);
        out.count("elements beside", sums.size());
        sums.forEach((element, sum) -> {
            out.element(element);
            out.real("atoms per closed atom", sum.perClosedAtom);
            out.real("limit beside", sum.limit);
        });
        out.count("lines", lines.size());
        lines.forEach((element, line) -> {
            out.element(element);
            out.text("line", line);
        });
    }

    void readFrom(SumsIn in) {
        spots = in.count();
        for (long left = in.count(); left > 0; left--) {
            Sum sum = new Sum();
            sums.put(in.element(), sum);
            sum.perClosedAtom = in.real();
            sum.limit = in.real();
        }
        for (long left = in.count(); left > 0; left--) {
            lines.put(in.element(), in.text());
        }
    }

    void merge(BesideTally other) {
        spots += other.spots;
        other.lines.forEach(lines::putIfAbsent);
        other.sums.forEach((element, theirs) -> {
            Sum own = sums.computeIfAbsent(element, e -> new Sum());
            own.perClosedAtom += theirs.perClosedAtom;
            own.limit = Math.max(own.limit, theirs.limit);
        });
    }

    /** What was found of each, or looked for and not found; limits of the lab's default where none was stated. */
    Map<Element, Evidence.Found> found(double defaultMassFraction, double meanWeight) {
        if (sums.isEmpty()) {
            return Map.of();
        }
        Map<Element, Evidence.Found> found = new TreeMap<>();
        sums.forEach((element, sum) -> found.put(element, new Evidence.Found(sum.perClosedAtom / spots,
            sum.limit > 0 ? sum.limit : defaultMassFraction * meanWeight / element.atomicWeight())));
        return found;
    }

    /** Lines the closed elements were read from, as reported first. */
    Map<Element, String> lines() {
        return lines;
    }
}
