package surfeit.http;

import java.util.List;
import java.util.stream.Collectors;

/** The same invented spots in every form an upload can have: copper-rich patches on an Ag-Cu powder, invented. */
final class InventedPowder {
    static final String SAMPLE = "{\"nominal\": {\"unit\": \"at%\", \"elements\": {\"Ag\": 60.1, \"Cu\": 39.9}}}";

    static final String WIDE = """
        label,particle,feature,session,Ag at%,Cu at%
        P1-d1,P1,dark patch,s1,21.20,78.80
        P1-d2,P1,dark patch,s1,22.0,78.0
        P2-d1,P2,dark patch,s1,23.9,76.1
        P2-d2,P2,dark patch,s1,22.8,77.2
        P3-d1,P3,dark patch,s1,20.9,79.1
        P3-d2,P3,dark patch,s1,21.7,78.3
        P1-m1,P1,matrix,s1,61.0,39.0
        P2-m1,P2,matrix,s1,60.4,39.6
        P3-m1,P3,matrix,s1,59.9,40.1
        """;

    private InventedPowder() {
    }

    /** The same lot after etching: the dark patches are gone, cavities are there, the matrix lost copper. Invented. */
    static final String ETCHED = """
        label,particle,feature,session,Ag at%,Cu at%
        E1-c1,E1,cavity,s1,91.0,9.0
        E2-c1,E2,cavity,s1,92.1,7.9
        E3-c1,E3,cavity,s1,90.4,9.6
        E1-m1,E1,matrix,s1,72.0,28.0
        E2-m1,E2,matrix,s1,71.4,28.6
        E3-m1,E3,matrix,s1,72.9,27.1
        """;

    /** Puts both lots on record as {@code as-made} and {@code etched}. */
    static void etchedLots(RunningService service) {
        service.put("/v1/samples/as-made", SAMPLE);
        service.post("/v1/samples/as-made/spots", "text/csv", WIDE);
        service.put("/v1/samples/etched", SAMPLE);
        service.post("/v1/samples/etched/spots", "text/csv", ETCHED);
    }

    /** Semicolons between cells, commas in numbers. */
    static String semicolon() {
        return WIDE.replace(",", ";").replace(".", ",");
    }

    /** One element a row. */
    static String longTable() {
        StringBuilder table = new StringBuilder("label,particle,feature,session,element,at%\n");
        WIDE.lines().skip(1).forEach(line -> {
            String[] cells = line.split(",");
            String head = String.join(",", cells[0], cells[1], cells[2], cells[3]);
            table.append(head).append(",Ag,").append(cells[4]).append('\n');
            table.append(head).append(",Cu,").append(cells[5]).append('\n');
        });
        return table.toString();
    }

    /** One spot a line. */
    static String ndjson() {
        StringBuilder lines = new StringBuilder();
        WIDE.lines().skip(1).forEach(line -> lines.append(spot(line, "\"unit\": \"at%\", ")).append('\n'));
        return lines.toString();
    }

    /** The long table as merged cells leave it: what is said of a spot stands in its first row alone. */
    static String merged() {
        List<String> lines = longTable().lines().toList();
        StringBuilder merged = new StringBuilder(lines.get(0)).append('\n');
        for (int i = 1; i < lines.size(); i++) {
            String label = lines.get(i).substring(0, lines.get(i).indexOf(',') + 1);
            merged.append(lines.get(i - 1).startsWith(label) ? lines.get(i).substring(label.length() - 1) : lines.get(i))
                .append('\n');
        }
        return merged.toString();
    }

    /** The same as {@link #WIDE}, turned: a spot a column. */
    static String turned() {
        List<String[]> rows = WIDE.lines().map(line -> line.split(",")).toList();
        StringBuilder lines = new StringBuilder();
        for (int column = 0; column < rows.get(0).length; column++) {
            int at = column;
            lines.append(rows.stream().map(row -> row[at]).collect(Collectors.joining(","))).append('\n');
        }
        return lines.toString();
    }

    /** The list of spots of a JSON body. */
    static String spots() {
        StringBuilder list = new StringBuilder();
        WIDE.lines().skip(1).forEach(line -> list.append(list.isEmpty() ? "" : ",\n").append(spot(line, "")));
        return "[" + list + "]";
    }

    static String json() {
        return "{\"unit\": \"at%\", \"spots\": " + spots() + "}";
    }

    /** A sample and its spots, to be interpreted. */
    static String interpretation() {
        return "{\"sample\": " + SAMPLE + ", \"unit\": \"at%\", \"spots\": " + spots() + "}";
    }

    private static String spot(String line, String unit) {
        String[] cells = line.split(",");
        return "{" + unit + "\"label\": \"" + cells[0] + "\", \"particle\": \"" + cells[1] + "\", \"feature\": \""
            + cells[2]
            + "\", \"session\": \"" + cells[3] + "\", \"elements\": {\"Ag\": " + cells[4] + ", \"Cu\": " + cells[5]
                + "}}";
    }
}
