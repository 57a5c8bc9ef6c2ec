package surfeit.storage;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import surfeit.lab.AuditEntry;
import surfeit.lab.InputChange;
import surfeit.lab.PublicId;
import surfeit.lab.RecordComparison;
import surfeit.lab.SampleRevision;
import surfeit.lab.StoredInterpretation;

/**
 * Goes through the record beside the audit. Every revision of a sample, every import, every statement of an alloy and
 * every frozen answer has one audit row, in the same order, which ends with the hash of what was recorded. Bound to
 * one transaction; not thread-safe.
 */
final class SqlRecordComparison implements RecordComparison {
    static final String RECORDED = "; recorded sha256:";
    private static final String DESCRIBED = "sample described";
    private static final Pattern END = Pattern.compile(RECORDED + "([0-9a-f]{64})$");
    private static final Pattern ORIGINAL = Pattern.compile("original sha256:([0-9a-f]{64})");

    private final Handle handle;
    private final ContentDigest digest = new ContentDigest();
    private final SqlInterpretationComparison interpretations;
    private final Map<String, Long> revisions = new HashMap<>();
    private final Map<String, Long> alloyRevisions = new HashMap<>();
    private long imports;
    private long lastSpot;
    private long spots;
    private long spotRevisions;

    SqlRecordComparison(Handle handle) {
        this.handle = handle;
        this.interpretations = new SqlInterpretationComparison(handle, digest);
    }

    @Override
    public Optional<String> differs(AuditEntry row) {
        digest.reset();
        Matcher end = END.matcher(row.detail());
        Optional<String> told = end.find() ? Optional.of(end.group(1)) : Optional.empty();
        String what = row.what();
        boolean found = what.equals(DESCRIBED) ? described(row)
            : what.equals(SampleRevision.What.SPOTS_IMPORTED.words()) ? imported(row, told.isPresent())
            : what.equals(SampleRevision.What.SPOT_CORRECTED.words())
                || what.equals(SampleRevision.What.SPOT_WITHDRAWN.words()) ? revised(row)
            : what.equals(StoredInterpretation.STORED) ? interpretations.stored(row)
            : what.equals(StoredInterpretation.TURNED_STALE) ? interpretations.turnedStale(row)
            : !what.equals(InputChange.ALLOY_STATED) || stated(row);
        if (!found) {
            return Optional.of("what row " + row.number() + " tells is not on record (" + what
                + row.sample().map(name -> ", sample " + name).orElse("") + ")");
        }
        return digest.take().equals(told) ? Optional.empty()
            : Optional.of("what is on record is not what row " + row.number() + " recorded (" + what
                + row.sample().map(name -> ", sample " + name).orElse("") + ")");
    }

    private boolean described(AuditEntry row) {
        return row.sample().isPresent() && revision(row, SampleRevision.What.DESCRIBED).map(found -> {
            digest.described(row.sample().get(), revisions.get(row.sample().get()), found.description());
            return true;
        }).orElse(false);
    }

    /** The next revision of the row's sample. */
    private record Revision(long sample, Optional<String> link, byte[] description) {
    }

    private Optional<Revision> revision(AuditEntry row, SampleRevision.What what) {
        String sample = row.sample().orElse("");
        long next = revisions.merge(sample, 1L, Long::sum);
        return handle.createQuery("""
                SELECT r.sample, r.link, r.description FROM sample s JOIN sample_revision r ON r.sample = s.id
                WHERE s.name = :name AND r.n = :n AND r.what = :what AND r.who = :who AND r.recorded = :recorded""")
            .bind("name", sample).bind("n", next).bind("what", what.words()).bind("who", row.who())
            .bind("recorded", row.when().toString())
            .map((found, context) -> new Revision(found.getLong("sample"), text(found, "link"),
                Optional.ofNullable(found.getBytes("description")).orElse(new byte[0]))).findOne();
    }

    private boolean imported(AuditEntry row, boolean spotsTold) {
        imports++;
        Optional<Long> accepted = handle.createQuery("""
                SELECT i.accepted_count, i.sha256 FROM import i JOIN sample s ON s.id = i.sample
                WHERE i.id = :id AND s.name = :name AND i.who = :who AND i.recorded = :recorded""")
            .bind("id", imports).bind("name", row.sample().orElse("")).bind("who", row.who())
            .bind("recorded", row.when().toString())
            .map((found, context) -> isOriginal(row, found.getString("sha256")) ? found.getLong("accepted_count") : -1)
            .findOne();
        String id = PublicId.of(PublicId.IMPORT, imports);
        if (accepted.isEmpty() || accepted.get() < 0 || !row.detail().startsWith(id + ":")) {
            return false;
        }
        if (!spotsTold) {
            return accepted.get() == 0;
        }
        return revision(row, SampleRevision.What.SPOTS_IMPORTED).flatMap(Revision::link).filter(id::equals).isPresent()
            && addSpots(accepted.get());
    }

    /** True where the upload is kept byte for byte as the row tells. */
    private boolean isOriginal(AuditEntry row, String sha256) {
        Matcher told = ORIGINAL.matcher(row.detail());
        Sha256 kept = new Sha256();
        for (int part = 0; ; part++) {
            Optional<byte[]> bytes = handle.createQuery(
                    "SELECT bytes FROM import_file WHERE import = :id AND kind = 'original' AND part = :part")
                .bind("id", imports).bind("part", part).mapTo(byte[].class).findOne();
            if (bytes.isEmpty()) {
                return told.find() && told.group(1).equals(sha256) && kept.take().equals(sha256);
            }
            kept.add(bytes.get());
        }
    }

    /** Adds the spots that come next in the order of record; they must be those of the import. */
    private boolean addSpots(long count) {
        Query query = handle.createQuery("""
                SELECT p.id, p.import, p.session, p.label, p.acquired, r.withdrawn, r.reason, r.reference, r.feature,
                    r.particle, r.payload
                FROM spot p LEFT JOIN spot_revision r ON r.sample = p.sample AND r.spot = p.id AND r.n = 1
                WHERE p.id > :last ORDER BY p.id LIMIT :count""").bind("last", lastSpot).bind("count", count);
        try (Stream<Boolean> rows = query.map((row, context) -> addSpot(row)).stream()) {
            long before = spots;
            boolean all = rows.reduce(true, (so, added) -> so && added);
            return all && spots - before == count;
        }
    }

    private boolean addSpot(ResultSet row) throws SQLException {
        lastSpot = row.getLong("id");
        spots++;
        spotRevisions++;
        Optional<byte[]> payload = Optional.ofNullable(row.getBytes("payload"));
        if (payload.isEmpty()) {
            return false;
        }
        digest.key(row.getString("session"), row.getString("label"), row.getLong("acquired"));
        addRevision(row, lastSpot, 1, payload.get());
        return row.getLong("import") == imports;
    }

    private void addRevision(ResultSet row, long spot, long revision, byte[] payload) throws SQLException {
        digest.group(row.getInt("reference") == 1, text(row, "feature"), text(row, "particle"));
        digest.spot(spot, revision, row.getInt("withdrawn") == 1, text(row, "reason"), payload);
    }

    private boolean revised(AuditEntry row) {
        SampleRevision.What what = row.what().equals(SampleRevision.What.SPOT_CORRECTED.words())
            ? SampleRevision.What.SPOT_CORRECTED : SampleRevision.What.SPOT_WITHDRAWN;
        Optional<Revision> revision = revision(row, what);
        Optional<Long> spot = revision.flatMap(Revision::link).map(id -> PublicId.number(PublicId.SPOT, id).orElse(0));
        if (spot.isEmpty()) {
            return false;
        }
        spotRevisions++;
        return handle.createQuery("""
                SELECT n, withdrawn, reason, reference, feature, particle, payload FROM spot_revision
                WHERE sample = :sample AND spot = :spot AND from_revision = :revision""")
            .bind("sample", revision.get().sample()).bind("spot", spot.get())
            .bind("revision", revisions.get(row.sample().orElse("")))
            .map((found, context) -> {
                addRevision(found, spot.get(), found.getLong("n"), found.getBytes("payload"));
                return true;
            }).findOne().orElse(false);
    }

    private boolean stated(AuditEntry row) {
        String id = row.detail().split(" ", 2)[0];
        long next = alloyRevisions.merge(id, 1L, Long::sum);
        return handle.createQuery("""
                SELECT payload FROM alloy_revision
                WHERE alloy = :alloy AND n = :n AND who = :who AND recorded = :recorded""")
            .bind("alloy", id).bind("n", next).bind("who", row.who()).bind("recorded", row.when().toString())
            .mapTo(byte[].class).findOne().map(payload -> {
                digest.described(id, next, payload);
                return true;
            }).orElse(false);
    }

    @Override
    public Optional<String> untold() {
        long sampleRevisions = revisions.values().stream().mapToLong(Long::longValue).sum();
        long statements = alloyRevisions.values().stream().mapToLong(Long::longValue).sum();
        SqlRecordTotals totals = new SqlRecordTotals(handle);
        return totals.otherThan(spots, "spots", "spot")
            .or(() -> totals.otherThan(spotRevisions, "revisions of spots", "spot_revision"))
            .or(() -> totals.otherThan(sampleRevisions, "revisions of samples", "sample_revision"))
            .or(() -> totals.otherThan(imports, "imports", "import"))
            .or(() -> totals.otherThan(statements, "statements of alloys", "alloy_revision"))
            .or(() -> interpretations.untold(totals))
            .or(totals::misplaced);
    }

    private static Optional<String> text(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getString(column));
    }
}
