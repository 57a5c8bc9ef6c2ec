package surfeit.lab;

import java.util.List;
import java.util.stream.Collectors;

/** The spots of a JSON upload that were given back: where each stands and what is wrong with it, as a table. */
final class RejectedDocument {
    /** The head of that table, without a line end. */
    static final String HEAD = "line,pointer,problem";

    private RejectedDocument() {
    }

    static String lines(Place place, List<Fault> faults) {
        String problem = faults.stream().map(fault -> fault.code().code() + ": " + fault.detail())
            .collect(Collectors.joining(" "));
        String line = place.line().isPresent() ? Long.toString(place.line().getAsLong()) : "";
        return line + "," + quoted(place.pointer().orElse("")) + "," + quoted(problem) + "\n";
    }

    private static String quoted(String cell) {
        return '"' + cell.replace("\"", "\"\"") + '"';
    }
}
