package surfeit.segregation.sums;

import java.util.List;
import java.util.Optional;
import surfeit.segregation.uncertainty.ReferenceCorrection;

/**
 * The spots of one group added up with values below their limit once as zero and, from the first such value on, once
 * more as the limit. Not thread-safe.
 */
final class FilledTally {
    private static final double[] NONE_STATED = new double[0];

    private final RunTally atZero;
    private final double[] atLimitClosed;
    private final double[] uncertainties;
    private final Optional<ReferenceCorrection> correction;
    private Optional<RunTally> atLimit = Optional.empty();

    /** @param correction what corrects each closed spot before it is added, if anything does */
    FilledTally(int elements, boolean median, Optional<ReferenceCorrection> correction) {
        this.atZero = new RunTally(elements, median);
        this.atLimitClosed = new double[elements];
        this.uncertainties = new double[elements];
        this.correction = correction;
    }

    /** Adds the spot that {@code parts} holds. */
    void add(String particle, SpotParts parts) {
        if (parts.anyBelow && atLimit.isEmpty()) {
            atLimit = Optional.of(atZero.copy());
        }
        addTo(atZero, particle, parts, parts.closed(), parts.sum());
        if (atLimit.isPresent()) {
            parts.close(true, atLimitClosed);
            addTo(atLimit.get(), particle, parts, atLimitClosed, parts.sumAtLimit());
        }
    }

    private void addTo(RunTally run, String particle, SpotParts parts, double[] closed, double sum) {
        double[] corrected = correction.isPresent() ? correction.get().corrected(closed) : closed;
        if (!parts.hasUncertainty) {
            run.add(particle, corrected, NONE_STATED);
            return;
        }
        for (int i = 0; i < uncertainties.length; i++) {
            double scale = correction.isPresent() ? correction.get().scale(closed, i) : 1;
            uncertainties[i] = parts.uncertainties[i] / sum * scale;
        }
        run.add(particle, corrected, uncertainties);
    }

    /** Takes in later spots; a part without values below limits enters both runs alike. */
    void merge(FilledTally later) {
        if (atLimit.isEmpty() && later.atLimit.isPresent()) {
            atLimit = Optional.of(atZero.copy());
        }
        atLimit.ifPresent(run -> run.merge(later.atLimit.orElseGet(later.atZero::copy)));
        atZero.merge(later.atZero);
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
