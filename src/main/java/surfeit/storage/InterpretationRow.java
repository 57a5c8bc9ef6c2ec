package surfeit.storage;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;
import org.jdbi.v3.core.statement.StatementContext;
import surfeit.lab.InputChange;
import surfeit.lab.InputRevisions;
import surfeit.lab.MadeWith;
import surfeit.lab.Occasion;
import surfeit.lab.PublicId;
import surfeit.lab.StoredInterpretation;
import surfeit.segregation.answer.GroupBy;

/** Reads one row of the frozen answers with the change that put it out of date. */
final class InterpretationRow {
    private InterpretationRow() {
    }

    static StoredInterpretation read(ResultSet row, StatementContext context) throws SQLException {
        return found(row);
    }

    static StoredInterpretation found(ResultSet row) throws SQLException {
        return new StoredInterpretation(PublicId.of(PublicId.INTERPRETATION, row.getLong("id")), row.getString("name"),
            StoredWords.find("grouping", row.getString("grouped_by"), GroupBy.values(), GroupBy::word),
            occasion(row, "who", "recorded"), Optional.ofNullable(row.getString("alloy")),
            new InputRevisions(row.getLong("sample_revision"), number(row, "alloy_revision")),
            new MadeWith(row.getString("method"), row.getInt("method_version"), row.getString("program_version"),
                PackedTexts.read(row.getBytes("tables"))),
            PackedTexts.read(row.getBytes("checksums")), change(row));
    }

    private static Optional<InputChange> change(ResultSet row) throws SQLException {
        OptionalLong revision = number(row, "change_n");
        if (revision.isPresent()) {
            return Optional.of(new InputChange(InputChange.Input.SAMPLE, revision.getAsLong(),
                row.getString("change_what"), occasion(row, "change_who", "change_recorded"),
                Optional.ofNullable(row.getString("change_link"))));
        }
        OptionalLong ofAlloy = number(row, "alloy_n");
        return ofAlloy.isEmpty() ? Optional.empty() : Optional.of(InputChange.ofAlloy(row.getString("alloy"),
            ofAlloy.getAsLong(), occasion(row, "alloy_who", "alloy_recorded")));
    }

    private static Occasion occasion(ResultSet row, String who, String when) throws SQLException {
        return new Occasion(row.getString(who), Instant.parse(row.getString(when)));
    }

    static OptionalLong number(ResultSet row, String column) throws SQLException {
        long found = row.getLong(column);
        return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(found);
    }
}
