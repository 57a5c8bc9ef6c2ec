package surfeit.intake;

import java.util.Optional;

/** A text that cannot become what it should: it knows why, {@link #at} adds where. Carries no stack trace. */
public final class Refusal extends RuntimeException {
    private final FaultCode code;
    private final transient Optional<SpotField> field;
    private final transient Optional<String> setting;

    public Refusal(FaultCode code, String detail) {
        this(code, detail, Optional.empty(), Optional.empty());
    }

    private Refusal(FaultCode code, String detail, Optional<SpotField> field, Optional<String> setting) {
        super(detail, null, false, false);
        this.code = code;
        this.field = field;
        this.setting = setting;
    }

    /** A refusal in the one form they have: what was expected, and what was found in its place. */
    public static Refusal expected(FaultCode code, String expected, Object found) {
        return new Refusal(code, "Expected " + expected + ", found " + found + ".");
    }

    /** The same refusal, of a field of the spot. */
    Refusal of(SpotField refused) {
        return new Refusal(code, getMessage(), Optional.of(refused), setting);
    }

    /** The same refusal, naming the setting that could change the outcome. */
    Refusal setting(String name) {
        return new Refusal(code, getMessage(), field, Optional.of(name));
    }

    public FaultCode code() {
        return code;
    }

    /** The field of the spot that is refused, where it is one. */
    public Optional<SpotField> field() {
        return field;
    }

    /** The setting that could change the outcome, where one could. */
    public Optional<String> setting() {
        return setting;
    }

    /** The fault this is at a place. */
    public Fault at(Place place) {
        return new Fault(code, getMessage(), place, setting);
    }
}
