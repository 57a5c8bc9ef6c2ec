package surfeit.storage;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import surfeit.lab.StoredSample;
import surfeit.lab.SumsMark;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.blocks.SampleSums;
import surfeit.segregation.blocks.SumsBlock;

/** Sums kept of the spots of samples, in the database. Bound to one transaction; not thread-safe. */
final class SqlSums {
    private static final Logger LOG = LoggerFactory.getLogger(SqlSums.class);
    private static final String WHERE = " FROM kept_sums WHERE sample = :sample AND grouped_by = :by";

    private final Handle handle;
    private final SqlSamples samples;

    SqlSums(Handle handle, SqlSamples samples) {
        this.handle = handle;
        this.samples = samples;
    }

    /**
     * Sums that hold for the sample as of its revision, up to their last spot.
     *
     * @param sums of the open block
     * @param full of all full blocks together; empty where there is none
     */
    record Kept(long lastSpot, byte[] sums, byte[] notes, Optional<SumsBlock> full, SqlSumsBlocks blocks) {
    }

    /** How far the sums go, without reading them: whether they are intact is not asked. */
    Map<GroupBy, SumsMark> marks(StoredSample sample) {
        Map<GroupBy, SumsMark> marks = new EnumMap<>(GroupBy.class);
        PlainSql.listBeside(handle, """
            SELECT k.grouped_by, k.sample_revision, k.last_spot, k.spot_count, k.particle_count,
                CASE WHEN k.sums IS NULL THEN 0 ELSE 1 END AS present
            FROM kept_sums k JOIN sample s ON s.id = k.sample WHERE s.name = ?""",
            row -> marks.put(by(row), mark(row, row.getInt("present") == 1)), sample.name());
        return marks;
    }

    boolean isIntact(StoredSample sample, GroupBy by) {
        SqlSumsBlocks blocks = blocks(sample, by);
        return row(sample, by).map(row -> isIntact(row, sample, by, blocks.together())).orElse(true)
            && blocks.borders().stream().allMatch(border -> blocks.find(border.number()).orElseThrow().isIntact());
    }

    private SqlSumsBlocks blocks(StoredSample sample, GroupBy by) {
        return new SqlSumsBlocks(handle, samples.number(sample.name()), sample.name(), by.word());
    }

    /**
     * The sums that an answer as of the sample's revision can go on from. What is damaged is left out, with a warning
     * in the log: the answer then comes from the spots themselves.
     */
    Optional<Kept> find(StoredSample sample, GroupBy by) {
        Optional<Row> row = row(sample, by).filter(found -> found.mark.revision() <= sample.revision());
        if (row.isEmpty() || row.get().sums.isEmpty()) {
            return Optional.empty();
        }
        SqlSumsBlocks blocks = blocks(sample, by);
        Optional<SqlSumsBlocks.Found> full = blocks.together();
        if (!isIntact(row.get(), sample, by, full)) {
            LOG.warn("The sums kept of a sample are damaged and are left out: its answers come from the spots, more"
                + " slowly. Run \"surfeit recount\" to see which, and \"surfeit recount --renew\" to make them anew.");
            return Optional.empty();
        }
        return Optional.of(new Kept(row.get().mark.lastSpot(), row.get().sums.get(), row.get().notes,
            full.map(SqlSumsBlocks.Found::block), blocks));
    }

    /** The notes beside the sums. */
    Map<GroupBy, byte[]> notes(StoredSample sample) {
        Map<GroupBy, byte[]> notes = new EnumMap<>(GroupBy.class);
        PlainSql.listBeside(handle, """
            SELECT k.grouped_by, k.notes FROM kept_sums k JOIN sample s ON s.id = k.sample
            WHERE s.name = ? AND k.sums IS NOT NULL""", row -> notes.put(by(row), row.getBytes("notes")), sample.name());
        return notes;
    }

    static GroupBy by(ResultSet row) throws SQLException {
        return StoredWords.find("grouping", row.getString("grouped_by"), GroupBy.values(), GroupBy::word);
    }

    private record Row(SumsMark mark, String sha256, Optional<byte[]> sums, byte[] notes) {
    }

    private Optional<Row> row(StoredSample sample, GroupBy by) {
        return handle.createQuery("SELECT *" + WHERE)
            .bind("sample", samples.number(sample.name())).bind("by", by.word())
            .map((row, context) -> {
                Optional<byte[]> sums = Optional.ofNullable(row.getBytes("sums"));
                return new Row(mark(row, sums.isPresent()), row.getString("sha256"), sums, row.getBytes("notes"));
            }).findOne();
    }

    static SumsMark mark(ResultSet row, boolean hasSums) throws SQLException {
        return new SumsMark(row.getLong("sample_revision"), row.getLong("last_spot"), row.getLong("spot_count"),
            row.getInt("particle_count"), hasSums);
    }

    private static boolean isIntact(Row row, StoredSample sample, GroupBy by, Optional<SqlSumsBlocks.Found> full) {
        return full.map(SqlSumsBlocks.Found::isIntact).orElse(true) && row.sha256.equals(
            sha256(sample, by, row.mark, row.sums, full.map(SqlSumsBlocks.Found::sha256), row.notes));
    }

    /** @param full the SHA-256 of all full blocks together */
    private static String sha256(StoredSample sample, GroupBy by, SumsMark mark, Optional<byte[]> sums,
                                 Optional<String> full, byte[] notes) {
        PackedWriter head = new PackedWriter().text(sample.name()).text(by.word()).count(mark.revision())
            .count(mark.lastSpot()).count(mark.spotCount()).count(mark.particleCount()).count(notes.length);
        full.ifPresent(head::text);
        Sha256 hash = new Sha256();
        hash.add(head.octet(sums.isPresent() ? 1 : 0).toBytes()).add(notes);
        sums.ifPresent(hash::add);
        return hash.take();
    }

    /** Keeps the sums of all spots on record, in place of those kept before; without sums notes that there are none. */
    void keep(StoredSample present, GroupBy by, Optional<SampleSums> made) {
        long sample = samples.number(present.name());
        long lastSpot = handle.createQuery("SELECT coalesce(max(spot), 0) FROM spot_revision WHERE sample = :sample")
            .bind("sample", sample).mapTo(Long.class).one();
        SumsMark mark = new SumsMark(present.revision(), lastSpot, present.spotCount(),
            made.map(SampleSums::particleCount).orElse(0), made.isPresent());
        Optional<byte[]> sums = made.map(SampleSums::toBytes);
        byte[] notes = made.map(SampleSums::notes).orElse(new byte[0]);
        SqlSumsBlocks blocks = blocks(present, by);
        if (made.isEmpty()) {
            blocks.forget();
        }
        Optional<String> full = made.flatMap(blocks::keep);
        handle.createUpdate("DELETE" + WHERE).bind("sample", sample).bind("by", by.word()).execute();
        handle.createUpdate("""
                INSERT INTO kept_sums (sample, grouped_by, sample_revision, last_spot, spot_count, particle_count,
                    sha256, notes, sums)
                VALUES (:sample, :by, :revision, :lastSpot, :spotCount, :particleCount, :sha256, :notes, :sums)""")
            .bind("sample", sample).bind("by", by.word()).bind("revision", mark.revision())
            .bind("lastSpot", lastSpot).bind("spotCount", mark.spotCount())
            .bind("particleCount", mark.particleCount()).bind("sha256", sha256(present, by, mark, sums, full, notes))
            .bind("notes", notes).bind("sums", sums.orElse(null)).execute();
    }

    void forget(StoredSample sample, GroupBy by) {
        blocks(sample, by).forget();
        handle.createUpdate("DELETE" + WHERE).bind("sample", samples.number(sample.name())).bind("by", by.word()).execute();
    }
}
