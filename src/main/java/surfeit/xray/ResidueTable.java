package surfeit.xray;

import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import surfeit.element.Element;
import surfeit.element.ReferenceTable;

/** The packaged residues: oils, oxides, polishing media, sulphides, carbon. Immutable, thread-safe. */
public final class ResidueTable {
    private final Map<String, Residue> byId = new LinkedHashMap<>();
    private final String sha256;

    private ResidueTable(ReferenceTable table) {
        sha256 = table.sha256();
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

    /** The residues that hold an element, so that could add to its reading. */
    public List<Residue> holding(Element element) {
        return byId.values().stream().filter(residue -> residue.atoms().containsKey(element)).toList();
    }

    /** SHA-256 of the packaged table. */
    public String sha256() {
        return sha256;
    }

    private static final class Holder {
        private static final ResidueTable STANDARD = new ResidueTable(ReferenceTable.packaged("residues.csv"));
    }
}
