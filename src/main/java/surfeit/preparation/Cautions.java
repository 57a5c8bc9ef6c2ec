package surfeit.preparation;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import surfeit.element.Element;
import surfeit.element.ReferenceTable;

/**
 * Short safety notes for what a sample is made of and was treated with.
 *
 * <p>They remind, and defer to the site's rules and the safety data sheets, as the last of them says; no exposure
 * limit is given. Where nothing calls for a note there is none. Common practice, see {@code cautions.csv}. Stateless.
 */
public final class Cautions {
    /** Said once beneath any notes. */
    public static final String DEFERS = "These are reminders, not a safety instruction: your site's rules and the "
        + "safety data sheets decide.";

    private Cautions() {
    }

    /**
     * The notes for a preparation and the elements of the alloy, in the order of the table; empty where none applies.
     */
    public static List<String> of(Handling handling, Collection<Element> alloy) {
        Set<String> hazards = new LinkedHashSet<>();
        handling.substances().forEach(substance -> hazards.addAll(substance.hazards()));
        List<String> notes = new ArrayList<>();
        Holder.ROWS.forEach((hazard, row) -> {
            if (row.elements().isEmpty()) {
                if (hazards.contains(hazard)) {
                    notes.add(row.caution());
                }
                return;
            }
            List<Element> concerned = alloy.stream().filter(row.elements()::contains).sorted().toList();
            if (!concerned.isEmpty()) {
                notes.add(concerned.stream().map(Element::symbol).collect(Collectors.joining(", ")) + ": "
                    + row.caution());
            }
        });
        if (!notes.isEmpty()) {
            notes.add(DEFERS);
        }
        return List.copyOf(notes);
    }

    /** A row of the table: the elements it is for (none: the substances that carry its hazard), and the words. */
    private record Row(Set<Element> elements, String caution) {
    }

    private static final class Holder {
        private static final Map<String, Row> ROWS = new LinkedHashMap<>();

        static {
            for (Map<String, String> row : ReferenceTable.vocabulary("cautions.csv").rows()) {
                ROWS.put(row.get("hazard"), new Row(Vocabulary.list(row, "elements").stream().map(Element::of)
                    .collect(Collectors.toSet()), row.get("caution")));
            }
        }
    }
}
