package surfeit.xray;

import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import surfeit.element.ReferenceTable;

/** The packaged residues: oils, oxides, polishing media, sulphides, carbon. Immutable, thread-safe. */
public final class ResidueTable {
    private final Map<String, Residue> byId = new LinkedHashMap<>();

    private ResidueTable(ReferenceTable table) {
        for (Map<String, String> row : table.rows()) {
            byId.put(row.get("id"), Residue.ofFormula(row.get("id"), row.get("name"), row.get("kind"),
                row.get("formula"), Double.parseDouble(row.get("density_g_cm3")), row.get("source")));
        }
    }

    /** The packaged table, read once. */
    public static ResidueTable standard() {
        return Holder.STANDARD;
    }

    /** The residue of this id, for example {@code silica}. */
    public Optional<Residue> byId(String id) {
        return Optional.ofNullable(byId.get(id));
    }

    public Collection<Residue> all() {
        return Collections.unmodifiableCollection(byId.values());
    }

    private static final class Holder {
        private static final ResidueTable STANDARD = new ResidueTable(ReferenceTable.packaged("residues.csv"));
    }
}
