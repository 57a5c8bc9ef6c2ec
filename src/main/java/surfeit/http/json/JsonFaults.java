package surfeit.http.json;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import surfeit.intake.Refusal;
import surfeit.lab.Fault;
import surfeit.lab.IntakeFaults;
import surfeit.lab.Place;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/** The faults of one body, each at its place: the first hundred in full, and how many there were. Not thread-safe. */
public final class JsonFaults {
    private static final int VALUE_LENGTH_MAX = 200;

    private final OptionalLong line;
    private final List<Fault> shown = new ArrayList<>();
    private long count;

    /** Faults of a body that is one document. */
    public JsonFaults() {
        this(OptionalLong.empty());
    }

    /** Faults of one line of a body that has one document a line. */
    JsonFaults(OptionalLong line) {
        this.line = line;
    }

    void add(String pointer, Problem code, String value, String detail) {
        add(pointer, code, value, detail, Optional.empty());
    }

    /** Notes that the value at the pointer is refused. */
    void add(String pointer, String value, Refusal refusal) {
        add(pointer, IntakeFaults.problem(refusal.code()), value, refusal.getMessage(), refusal.setting());
    }

    private void add(String pointer, Problem code, String value, String detail, Optional<String> setting) {
        count++;
        if (shown.size() < ProblemException.FAULTS_IN_FULL) {
            Optional<String> found = value.isEmpty() ? Optional.empty() : Optional.of(shown(value));
            shown.add(new Fault(code, detail, place(pointer), found, Optional.empty(), setting));
        }
    }

    /** Adds faults of another account, of which only the first may be given. */
    void addAll(List<Fault> more, long moreCount) {
        count += moreCount;
        shown.addAll(more.subList(0, Math.min(more.size(), ProblemException.FAULTS_IN_FULL - shown.size())));
    }

    /** Notes that the body, or this line of it, is no JSON. */
    void add(MalformedJsonException malformed) {
        add("", Problem.MALFORMED_JSON, "", malformed.getMessage(), malformed.setting());
    }

    Place place(String pointer) {
        return line.isPresent() ? Place.pointerInLine(line.getAsLong(), pointer) : Place.pointer(pointer);
    }

    /** A value cut to what fits a message. */
    static String shown(String value) {
        return value.length() <= VALUE_LENGTH_MAX ? value : value.substring(0, VALUE_LENGTH_MAX) + "…";
    }

    long count() {
        return count;
    }

    /** The faults, at most the first hundred. */
    List<Fault> shown() {
        return shown;
    }

    /** @throws ProblemException with every fault, if there is one */
    public void refuse() {
        if (count > 0) {
            throw ProblemException.of(shown, count);
        }
    }
}
