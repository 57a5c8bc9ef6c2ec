package surfeit.lab;

import java.util.List;
import java.util.Optional;

/**
 * One thing that is wrong with an upload or a body.
 *
 * @param code    its kind
 * @param detail  what was expected and what came, in which unit
 * @param place   where it stands
 * @param value   the text that was found, if there was one
 * @param spot    id of the recorded spot it collides with, if it does
 * @param setting the setting that can change the outcome, if one can; not kept with an import
 */
public record Fault(Problem code, String detail, Place place, Optional<String> value, Optional<String> spot,
                    Optional<String> setting) {

    public Fault(Problem code, String detail, Place place, Optional<String> value, Optional<String> spot) {
        this(code, detail, place, value, spot, Optional.empty());
    }

    /** The first setting that one of these faults names, if one does. */
    static Optional<String> setting(List<Fault> faults) {
        return faults.stream().flatMap(fault -> fault.setting().stream()).findFirst();
    }

    public static Fault at(Place place, Problem code, String detail) {
        return new Fault(code, detail, place, Optional.empty(), Optional.empty());
    }

    public static Fault at(Place place, Problem code, String detail, String value) {
        return new Fault(code, detail, place, Optional.of(value), Optional.empty());
    }
}
