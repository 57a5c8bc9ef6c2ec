package surfeit.storage;

import java.sql.Array;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jdbi.v3.core.Handle;
import surfeit.lab.AuditChain;
import surfeit.lab.AuditHead;
import surfeit.lab.Foreseen;
import surfeit.lab.StoredSample;
import surfeit.lab.SumsMark;
import surfeit.segregation.answer.GroupBy;

/**
 * Looks up what the jobs of one commit will ask, all of it with a question for each kind: over a connection to a server,
 * the questions cost more than their answers. Bound to one transaction; not thread-safe.
 */
final class PostgresForesight {
    private static final String SAMPLES = SqlSamples.SELECT + "WHERE s.name = ANY (?) AND r.n = s.revision";
    private static final String SUMS = """
        SELECT s.name, k.grouped_by, k.sample_revision, k.last_spot, k.spot_count, k.particle_count, k.notes,
            CASE WHEN k.sums IS NULL THEN 0 ELSE 1 END AS present
        FROM kept_sums k JOIN sample s ON s.id = k.sample WHERE s.name = ANY (?)""";
    private static final String WITH_FRESH = """
        SELECT DISTINCT m.name FROM interpretation i
        JOIN sample m ON m.id = i.sample
        LEFT JOIN interpretation_stale x ON x.interpretation = i.id
        WHERE m.name = ANY (?) AND x.interpretation IS NULL""";
    private static final String ENDS = """
        SELECT (SELECT coalesce(max(id), 0) FROM import), (SELECT coalesce(max(id), 0) FROM spot),
            (SELECT greatest(max(last_event), (SELECT max(id) FROM event)) FROM turn),
            (SELECT coalesce(max(id), 0) FROM audit), (SELECT hash FROM audit ORDER BY id DESC LIMIT 1)""";

    private final Handle handle;
    private final WriteMemory memory;

    PostgresForesight(Handle handle, WriteMemory memory) {
        this.handle = handle;
        this.memory = memory;
    }

    void lookUp(List<Foreseen> all) {
        Set<String> unknown = new LinkedHashSet<>();
        all.forEach(each -> each.sample().filter(name -> !memory.of(name).isKnown()).ifPresent(unknown::add));
        if (!memory.knowsEnds() || !unknown.isEmpty()) {
            KeptStatements.held(handle).send();
        }
        if (!memory.knowsEnds()) {
            lookUpEnds();
        }
        if (!unknown.isEmpty()) {
            lookUpSamples(PostgresLookup.array(handle, "text", unknown.stream()));
        }
        lookUpSpots(all);
    }

    private void lookUpEnds() {
        PostgresLookup.ask(handle, ENDS, row -> {
            memory.ends(row.getLong(1), row.getLong(2), row.getLong(3), row.getLong(4) == 0
                ? new AuditHead(0, AuditChain.START) : new AuditHead(row.getLong(4), row.getString(5)));
            return memory;
        });
    }

    private void lookUpSamples(Array names) {
        Map<String, WriteMemory.OfSample> found = new HashMap<>();
        PostgresLookup.ask(handle, SAMPLES, row -> {
            StoredSample sample = SqlSamples.found(row);
            memory.of(sample.name()).found(sample, row.getLong("id"));
            return found.put(sample.name(), memory.of(sample.name()));
        }, names);
        Map<String, Map<GroupBy, SumsMark>> marks = new HashMap<>();
        Map<String, Map<GroupBy, byte[]>> notes = new HashMap<>();
        PostgresLookup.ask(handle, SUMS, row -> {
            String name = row.getString("name");
            boolean hasSums = row.getInt("present") == 1;
            marks.computeIfAbsent(name, some -> new EnumMap<>(GroupBy.class))
                .put(SqlSums.by(row), SqlSums.mark(row, hasSums));
            if (hasSums) {
                notes.computeIfAbsent(name, some -> new EnumMap<>(GroupBy.class))
                    .put(SqlSums.by(row), row.getBytes("notes"));
            }
            return name;
        }, names);
        found.forEach((name, sample) ->
            sample.sums(marks.getOrDefault(name, Map.of()), notes.getOrDefault(name, Map.of())));
        found.keySet().removeAll(PostgresLookup.ask(handle, WITH_FRESH, row -> row.getString(1), names));
        found.values().forEach(WriteMemory.OfSample::nothingFresh);
    }

    private void lookUpSpots(List<Foreseen> all) {
        List<SpotLots.Place> places = new ArrayList<>();
        for (Foreseen each : all) {
            each.sample().map(memory::of).filter(WriteMemory.OfSample::isKnown).ifPresent(sample ->
                each.spots().forEach(key -> places.add(new SpotLots.Place(sample.number(() -> 0L), key))));
        }
        if (places.isEmpty()) {
            return;
        }
        List<Optional<SpotLots.Found>> found = PostgresLookup.find(handle, places);
        for (int i = 0; i < places.size(); i++) {
            memory.lookedUp(places.get(i), found.get(i));
        }
    }
}
