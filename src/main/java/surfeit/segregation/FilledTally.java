package surfeit.segregation;

import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * The spots of one group added up with values below their limit once as zero and, from the first such value on, once
 * more as the limit. Not thread-safe.
 */
final class FilledTally {
    private static final double[] NONE_STATED = new double[0];

    private final RunTally atZero;
    private final double[] closed;
    private final double[] uncertainties;
    private final UnaryOperator<double[]> correction;
    private Optional<RunTally> atLimit = Optional.empty();

    /** @param correction what each closed spot is turned into before it is added: itself, or its corrected fractions */
    FilledTally(int elements, boolean median, UnaryOperator<double[]> correction) {
        this.atZero = new RunTally(elements, median);
        this.closed = new double[elements];
        this.uncertainties = new double[elements];
        this.correction = correction;
    }

    /** Adds the spot that {@code parts} holds. */
    void add(String particle, SpotParts parts) {
        if (parts.anyBelow && atLimit.isEmpty()) {
            atLimit = Optional.of(atZero.copy());
        }
        addTo(atZero, particle, parts, parts.closed());
        if (atLimit.isPresent()) {
            parts.close(true, closed);
            addTo(atLimit.get(), particle, parts, closed);
        }
    }

    private void addTo(RunTally run, String particle, SpotParts parts, double[] closed) {
        double[] corrected = correction.apply(closed);
        if (!parts.hasUncertainty) {
            run.add(particle, corrected, NONE_STATED);
            return;
        }
        double sum = parts.sum();
        for (int i = 0; i < uncertainties.length; i++) {
            uncertainties[i] = parts.uncertainties[i] / sum;
            uncertainties[i] *= closed[i] == 0 ? 1 : corrected[i] / closed[i];
        }
        run.add(particle, corrected, uncertainties);
    }

    void writeTo(SumsOut out) {
        atZero.writeTo(out);
        out.yesOrNo("values below their limit", atLimit.isPresent());
        atLimit.ifPresent(run -> run.writeTo(out));
    }

    void readFrom(SumsIn in) {
        atZero.readFrom(in);
        if (in.yesOrNo()) {
            RunTally run = atZero.empty();
            run.readFrom(in);
            atLimit = Optional.of(run);
        }
    }

    /** The runs: one, or two where values lay below their limit. */
    List<RunTally> runs() {
        return atLimit.map(limit -> List.of(atZero, limit)).orElse(List.of(atZero));
    }
}
