package surfeit.storage;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;
import surfeit.lab.Dialect;
import surfeit.lab.Fault;
import surfeit.lab.ImportReport;
import surfeit.lab.KeptFile;
import surfeit.lab.LeftOut;
import surfeit.lab.Occasion;
import surfeit.lab.Place;
import surfeit.lab.Problem;
import surfeit.lab.PublicId;

/** Reports and files of imports in the database. Bound to one transaction; not thread-safe. */
final class SqlImports {
    private static final String COMPLETE = """
        UPDATE import SET sample_revision = ?, accepted_count = ?, unchanged_count = ?, rejected_count = ?,
            fault_count = ?, media_type = ?, file_name = ?, byte_count = ?, sha256 = ?, charset = ?, delimiter = ?,
            decimal_mark = ?, time_zone = ?, unit = ?, layout = ?, decided_by = ?
        WHERE id = ?""";

    private final Handle handle;

    SqlImports(Handle handle) {
        this.handle = handle;
    }

    long lastNumber() {
        return PlainSql.number(handle, "SELECT coalesce(max(id), 0) FROM import");
    }

    void begin(long number, long sample, long sampleRevision, Occasion occasion) {
        PlainSql.write(handle, "INSERT INTO import (id, sample, sample_revision, who, recorded) VALUES (?, ?, ?, ?, ?)",
            number, sample, sampleRevision, occasion.who(), occasion.when().toString());
    }

    void complete(long number, ImportReport report) {
        Optional<Dialect> dialect = report.dialect();
        PlainSql.write(handle, COMPLETE, report.sampleRevision(), report.acceptedCount(), report.unchangedCount(),
            report.rejectedCount(), report.faultCount(), report.file().mediaType(), report.file().fileName(),
            report.file().byteCount().orElse(0), report.file().sha256().orElse(""), dialect.map(Dialect::charset),
            dialect.flatMap(Dialect::delimiter), dialect.flatMap(Dialect::decimal), dialect.flatMap(Dialect::timeZone),
            dialect.flatMap(Dialect::unit), dialect.flatMap(Dialect::layout), dialect.map(Dialect::decidedBy), number);
        addLeftOut(number, report.leftOut());
        addFaults(number, report.faults());
    }

    private void addLeftOut(long number, List<LeftOut> all) {
        if (all.isEmpty()) {
            return;
        }
        try (PreparedBatch batch = handle.prepareBatch("""
                INSERT INTO import_left_out
                    (import, n, pointer, line, column_number, column_name, reason, label)
                VALUES (:import, :n, :pointer, :line, :column, :columnName, :reason, :label)""")) {
            for (int i = 0; i < all.size(); i++) {
                bindPlace(batch.bind("import", number).bind("n", i), all.get(i).place())
                    .bind("reason", all.get(i).reason()).bind("label", shown(all.get(i).label())).add();
            }
            batch.execute();
        }
    }

    private void addFaults(long number, List<Fault> all) {
        if (all.isEmpty()) {
            return;
        }
        try (PreparedBatch batch = handle.prepareBatch("""
                INSERT INTO import_fault
                    (import, n, code, detail, pointer, line, column_number, column_name, value, spot)
                VALUES (:import, :n, :code, :detail, :pointer, :line, :column, :columnName, :value, :spot)""")) {
            for (int i = 0; i < all.size(); i++) {
                Fault fault = all.get(i);
                bindPlace(batch.bind("import", number).bind("n", i), fault.place())
                    .bind("code", fault.code().code()).bind("detail", shown(Optional.of(fault.detail())))
                    .bind("value", shown(fault.value())).bind("spot", shown(fault.spot())).add();
            }
            batch.execute();
        }
    }

    private static PreparedBatch bindPlace(PreparedBatch batch, Place place) {
        return batch.bind("pointer", place.pointer().orElse(null))
            .bind("line", place.line().isPresent() ? place.line().getAsLong() : null)
            .bind("column", place.column().isPresent() ? place.column().getAsInt() : null)
            .bind("columnName", shown(place.columnName()));
    }

    /** What is told of a file, not what was measured; not every engine keeps a zero character in a text. */
    private static String shown(Optional<String> text) {
        return text.map(words -> words.replace('\0', '\ufffd')).orElse(null);
    }

    void addFilePart(long number, KeptFile.Kind kind, int part, byte[] bytes) {
        PlainSql.write(handle, "INSERT INTO import_file (import, kind, part, bytes) VALUES (?, ?, ?, ?)", number,
            word(kind), part, bytes);
    }

    Optional<byte[]> filePart(long number, KeptFile.Kind kind, int part) {
        return handle.createQuery("""
                SELECT bytes FROM import_file WHERE import = :import AND kind = :kind AND part = :part""")
            .bind("import", number).bind("kind", word(kind)).bind("part", part).mapTo(byte[].class).findOne();
    }

    Optional<ImportReport> report(long number) {
        List<LeftOut> leftOut = handle.createQuery("SELECT * FROM import_left_out WHERE import = :id ORDER BY n")
            .bind("id", number).map((row, context) ->
                new LeftOut(place(row), row.getString("reason"), text(row, "label"))).list();
        List<Fault> faults = handle.createQuery("SELECT * FROM import_fault WHERE import = :id ORDER BY n")
            .bind("id", number).map((row, context) -> new Fault(Problem.ofCode(row.getString("code")).orElseThrow(),
                row.getString("detail"), place(row), text(row, "value"), text(row, "spot"))).list();
        return handle.createQuery("SELECT i.*, s.name FROM import i JOIN sample s ON s.id = i.sample WHERE i.id = :id")
            .bind("id", number).map((row, context) -> new ImportReport(
                Optional.of(PublicId.of(PublicId.IMPORT, number)), row.getString("name"),
                new Occasion(row.getString("who"), Instant.parse(row.getString("recorded"))),
                row.getLong("sample_revision"), row.getLong("accepted_count"), row.getLong("unchanged_count"),
                row.getLong("rejected_count"), row.getLong("fault_count"), leftOut, dialect(row), faults, file(row)))
            .findOne();
    }

    private static ImportReport.SentFile file(ResultSet row) throws SQLException {
        return new ImportReport.SentFile(row.getString("media_type"), text(row, "file_name"),
            OptionalLong.of(row.getLong("byte_count")), text(row, "sha256"));
    }

    private static Optional<Dialect> dialect(ResultSet row) throws SQLException {
        Optional<String> decidedBy = text(row, "decided_by");
        return decidedBy.isEmpty() ? Optional.empty() : Optional.of(new Dialect(row.getString("charset"),
            text(row, "delimiter"), text(row, "decimal_mark"), text(row, "time_zone"), text(row, "unit"),
            text(row, "layout"), decidedBy.get()));
    }

    private static Place place(ResultSet row) throws SQLException {
        long line = row.getLong("line");
        OptionalLong optionalLine = row.wasNull() ? OptionalLong.empty() : OptionalLong.of(line);
        int column = row.getInt("column_number");
        OptionalInt optionalColumn = row.wasNull() ? OptionalInt.empty() : OptionalInt.of(column);
        return new Place(text(row, "pointer"), optionalLine, optionalColumn, text(row, "column_name"));
    }

    private static Optional<String> text(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getString(column));
    }

    private static String word(KeptFile.Kind kind) {
        return kind.name().toLowerCase(Locale.ROOT);
    }
}
