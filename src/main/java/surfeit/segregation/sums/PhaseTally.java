package surfeit.segregation.sums;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import surfeit.composition.NominalFractions;
import surfeit.composition.Phase;
import surfeit.element.Element;
import surfeit.segregation.answer.SpotSpread;
import surfeit.segregation.uncertainty.ReferenceCorrection;
import surfeit.xray.RecentResults;

/**
 * Adds up where the spots of one group lie along the tie lines of its alloy, as measured and, where reference spots
 * offer a correction, as corrected. Not thread-safe.
 *
 * <p>Memory grows with tie lines, not with spots. Values below their limit count as zero.
 */
public final class PhaseTally {
    /** Some hundred alloys with what is left of them where elements are excluded or not measured. */
    private static final RecentResults<DiagramInputs, Diagram> DIAGRAMS = new RecentResults<>(512);

    private final Diagram diagram;
    private final Optional<ReferenceCorrection> correction;
    private final List<SpotPositions> raw;
    private final List<SpotPositions> corrected;

    private PhaseTally(Diagram diagram, Optional<ReferenceCorrection> correction) {
        this.diagram = diagram;
        this.correction = correction;
        this.raw = positions(diagram.lines());
        this.corrected = correction.isPresent() ? positions(diagram.lines()) : List.of();
    }

    /** The phases that are made of some elements, and the tie lines between them. */
    private record Diagram(List<PhaseField> fields, List<TieLine> lines) {
        static final Diagram EMPTY = new Diagram(List.of(), List.of());
    }

    /** The array is read only. */
    private record DiagramInputs(List<Phase> phases, List<Element> elements, double[] nominal) {
        @Override
        public boolean equals(Object other) {
            return other instanceof DiagramInputs that && elements.equals(that.elements)
                && Arrays.equals(nominal, that.nominal) && phases.equals(that.phases);
        }

        /** Phases seldom differ where elements and nominal agree. */
        @Override
        public int hashCode() {
            return 31 * elements.hashCode() + Arrays.hashCode(nominal);
        }
    }

    private static List<SpotPositions> positions(List<TieLine> lines) {
        List<SpotPositions> positions = new ArrayList<>(lines.size());
        lines.forEach(line -> positions.add(new SpotPositions(line)));
        return positions;
    }

    /** The phases of an alloy, worked out once per set of elements. Not thread-safe. */
    static final class Source {
        private final List<Phase> phases;
        private final NominalFractions nominal;
        private final Map<List<Element>, Diagram> diagrams = new HashMap<>();

        Source(List<Phase> phases, NominalFractions nominal) {
            this.phases = List.copyOf(phases);
            this.nominal = nominal;
        }

        PhaseTally over(List<Element> elements, Optional<ReferenceCorrection> correction) {
            boolean comparable = !phases.isEmpty() && elements.size() > 1;
            return new PhaseTally(comparable ? diagrams.computeIfAbsent(elements, this::diagram) : Diagram.EMPTY,
                correction);
        }

        /** The nominal over these elements; empty where it holds none of them. */
        private Optional<double[]> wholeOver(List<Element> elements) {
            if (elements.equals(nominal.elements())) {
                return Optional.of(nominal.middles());
            }
            double[] middles = nominal.middles();
            double named = 0;
            for (int i = 0; i < middles.length; i++) {
                named += elements.contains(nominal.elements().get(i)) ? middles[i] : 0;
            }
            Set<Element> dropped = new TreeSet<>(nominal.elements());
            dropped.removeAll(elements);
            return named > 0 ? Optional.of(nominal.without(dropped).middles()) : Optional.empty();
        }

        private Diagram diagram(List<Element> elements) {
            Optional<double[]> over = wholeOver(elements);
            if (over.isEmpty()) {
                return Diagram.EMPTY;
            }
            double[] whole = over.get();
            return DIAGRAMS.get(new DiagramInputs(phases, elements, whole),
                () -> new Diagram(PhaseField.over(phases, elements), TieLine.between(phases, elements, whole)));
        }
    }

    /** Adds the spot that {@code parts} holds. */
    void add(SpotParts parts) {
        if (diagram.lines().isEmpty()) {
            return;
        }
        double[] closed = parts.closed();
        add(closed, raw);
        if (correction.isPresent()) {
            add(correction.get().corrected(closed), corrected);
        }
    }

    private static void add(double[] closed, List<SpotPositions> positions) {
        for (int i = 0; i < positions.size(); i++) {
            positions.get(i).add(closed);
        }
    }

    void writeTo(SumsOut out) {
        out.count("tie lines", raw.size());
        raw.forEach(positions -> positions.writeTo(out));
        corrected.forEach(positions -> positions.writeTo(out));
    }

    void readFrom(SumsIn in) {
        in.require("tie lines", raw.size());
        raw.forEach(positions -> positions.readFrom(in));
        corrected.forEach(positions -> positions.readFrom(in));
    }

    /** The spots of several tallies over the same elements, as measured. */
    static PhaseTally merged(List<PhaseTally> tallies) {
        PhaseTally first = tallies.get(0);
        if (tallies.size() == 1) {
            return first;
        }
        PhaseTally all = new PhaseTally(first.diagram, Optional.empty());
        tallies.forEach(tally -> merge(tally.raw, all.raw));
        return all;
    }

    /** Takes in later spots, corrected in the same way. */
    void merge(PhaseTally later) {
        merge(later.raw, raw);
        merge(later.corrected, corrected);
    }

    private static void merge(List<SpotPositions> from, List<SpotPositions> into) {
        for (int i = 0; i < into.size(); i++) {
            into.get(i).merge(from.get(i));
        }
    }

    public List<PhaseField> fields() {
        return diagram.fields();
    }

    public List<TieLine> lines() {
        return diagram.lines();
    }

    /** How the spots lie along one of the lines, as measured or as corrected by the reference spots. */
    public SpotSpread spread(int line, boolean referenceUsed) {
        return (referenceUsed ? corrected : raw).get(line).spread();
    }
}
