package surfeit.report.html;

import java.util.List;
import java.util.Optional;
import surfeit.composition.Phase;
import surfeit.report.figure.SpotPoints;
import surfeit.xray.SignalDepths;

/**
 * What a report draws beside the answer itself.
 *
 * @param spots  the spots of the sample, if they are to be drawn
 * @param phases phases the alloy may be made of; none known is an empty list
 * @param depths where the signal of the alloy comes from, if the beam energy is known
 */
public record Illustrations(Optional<SpotPoints> spots, List<Phase> phases, Optional<SignalDepths> depths) {
    /** The answer's own figures only. */
    public static final Illustrations NONE = new Illustrations(Optional.empty(), List.of(), Optional.empty());

    public Illustrations {
        phases = List.copyOf(phases);
    }
}
