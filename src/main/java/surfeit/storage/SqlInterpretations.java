package surfeit.storage;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;
import surfeit.lab.FrozenAnswer;
import surfeit.lab.InputChange;
import surfeit.lab.InputRevisions;
import surfeit.lab.MadeWith;
import surfeit.lab.Occasion;
import surfeit.lab.PublicId;
import surfeit.lab.Segregation;
import surfeit.lab.StoredInterpretation;
import surfeit.segregation.answer.GroupBy;

/** Frozen answers in the database. Bound to one transaction; not thread-safe. */
final class SqlInterpretations {
    private static final String SELECT = """
        SELECT i.*, m.name, c.n AS change_n, c.what AS change_what, c.who AS change_who,
            c.recorded AS change_recorded, c.link AS change_link,
            a.n AS alloy_n, a.who AS alloy_who, a.recorded AS alloy_recorded
        FROM interpretation i
        JOIN sample m ON m.id = i.sample
        LEFT JOIN interpretation_stale x ON x.interpretation = i.id
        LEFT JOIN sample_revision c ON c.sample = i.sample AND c.n = x.sample_revision
        LEFT JOIN alloy_revision a ON a.alloy = i.alloy AND a.n = x.alloy_revision
        """;

    private final Handle handle;
    private final SqlSamples samples;

    SqlInterpretations(Handle handle, SqlSamples samples) {
        this.handle = handle;
        this.samples = samples;
    }

    Optional<StoredInterpretation> find(long number) {
        return handle.createQuery(SELECT + "WHERE i.id = :id").bind("id", number)
            .map(InterpretationRow::read).findOne();
    }

    List<StoredInterpretation> list(String sample, long after, int limit) {
        return handle.createQuery(SELECT + "WHERE m.name = :sample AND i.id > :after ORDER BY i.id LIMIT :limit")
            .bind("sample", sample).bind("after", after).bind("limit", limit).map(InterpretationRow::read).list();
    }

    List<StoredInterpretation> freshOfSample(String sample) {
        return PlainSql.listBeside(handle, SELECT + "WHERE m.name = ? AND x.interpretation IS NULL ORDER BY i.id",
            InterpretationRow::found, sample);
    }

    List<StoredInterpretation> freshOfAlloy(String alloy) {
        return handle.createQuery(SELECT + "WHERE i.alloy = :alloy AND x.interpretation IS NULL ORDER BY i.id")
            .bind("alloy", alloy).map(InterpretationRow::read).list();
    }

    Optional<String> text(long number, String form) {
        return handle.createQuery("SELECT bytes FROM interpretation_text WHERE interpretation = :id AND form = :form")
            .bind("id", number).bind("form", form).mapTo(byte[].class).findOne()
            .map(bytes -> new String(bytes, StandardCharsets.UTF_8));
    }

    StoredInterpretation keep(Segregation answer, InputRevisions inputs, GroupBy by, FrozenAnswer frozen,
                              Occasion occasion, ContentDigest content) {
        String sample = answer.stored().orElseThrow().name();
        Optional<String> alloy = answer.sample().alloy();
        long number = handle.createQuery("SELECT coalesce(max(id), 0) + 1 FROM interpretation").mapTo(Long.class).one();
        SortedMap<String, byte[]> texts = new TreeMap<>();
        SortedMap<String, String> checksums = new TreeMap<>();
        frozen.texts().forEach((form, text) -> {
            texts.put(form, text.getBytes(StandardCharsets.UTF_8));
            checksums.put(form, new Sha256().add(texts.get(form)).take());
        });
        StoredInterpretation stored = new StoredInterpretation(PublicId.of(PublicId.INTERPRETATION, number), sample, by,
            occasion, alloy, inputs, frozen.madeWith(), checksums, Optional.empty());
        insert(number, stored, content);
        texts.forEach((form, bytes) -> insertText(number, form, bytes, content));
        return stored;
    }

    private void insert(long number, StoredInterpretation stored, ContentDigest content) {
        MadeWith made = stored.madeWith();
        byte[] tables = PackedTexts.of(made.tables());
        byte[] checksums = PackedTexts.of(stored.checksums());
        handle.createUpdate("""
                INSERT INTO interpretation (id, sample, sample_revision, alloy, alloy_revision, grouped_by, who,
                    recorded, method, method_version, program_version, tables, checksums)
                VALUES (:id, :sample, :revision, :alloy, :alloyRevision, :by, :who,
                    :recorded, :method, :methodVersion, :program, :tables, :checksums)""")
            .bind("id", number).bind("sample", samples.number(stored.sample())).bind("revision", stored.inputs().sample())
            .bind("alloy", stored.alloy().orElse(null))
            .bind("alloyRevision", boxed(stored.inputs().alloy()))
            .bind("by", stored.by().word()).bind("who", stored.stored().who())
            .bind("recorded", stored.stored().when().toString()).bind("method", made.method())
            .bind("methodVersion", made.methodVersion()).bind("program", made.programVersion())
            .bind("tables", tables).bind("checksums", checksums).execute();
        content.inputs(number, stored.inputs().sample(), stored.alloy(), stored.inputs().alloy(), stored.by().word());
        content.madeWith(made.method(), made.methodVersion(), made.programVersion(), tables, checksums);
    }

    private void insertText(long number, String form, byte[] bytes, ContentDigest content) {
        handle.createUpdate("INSERT INTO interpretation_text (interpretation, form, bytes) VALUES (:id, :form, :bytes)")
            .bind("id", number).bind("form", form).bind("bytes", bytes).execute();
        content.text(form, bytes);
    }

    void markStale(StoredInterpretation interpretation, InputChange change, ContentDigest content) {
        long number = PublicId.number(PublicId.INTERPRETATION, interpretation.id()).orElseThrow();
        OptionalLong sample = change.revisionOf(InputChange.Input.SAMPLE);
        OptionalLong alloy = change.revisionOf(InputChange.Input.ALLOY);
        handle.createUpdate("""
                INSERT INTO interpretation_stale (interpretation, sample_revision, alloy_revision)
                VALUES (:id, :sample, :alloy)""")
            .bind("id", number).bind("sample", boxed(sample)).bind("alloy", boxed(alloy)).execute();
        content.stale(number, sample, alloy);
    }

    private static Long boxed(OptionalLong number) {
        return number.isPresent() ? number.getAsLong() : null;
    }
}
