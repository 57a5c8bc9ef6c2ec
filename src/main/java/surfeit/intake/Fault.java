package surfeit.intake;

import java.util.Optional;

/**
 * One thing wrong with an upload.
 *
 * @param code    what kind of fault
 * @param detail  what was expected and what came, in one or two sentences
 * @param place   where
 * @param setting the setting that could change the outcome, if one can
 */
public record Fault(FaultCode code, String detail, Place place, Optional<String> setting) {

    public Fault(FaultCode code, String detail, Place place) {
        this(code, detail, place, Optional.empty());
    }
}
