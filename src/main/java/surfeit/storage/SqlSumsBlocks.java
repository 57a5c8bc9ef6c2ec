package surfeit.storage;

import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import surfeit.segregation.blocks.SampleSums;
import surfeit.segregation.blocks.SumsBlock;

/** Sums kept of the full blocks of one sample, groups put together in one way. Bound to one transaction; not thread-safe. */
final class SqlSumsBlocks {
    /** In place of the number of a block: all full ones together. */
    private static final int TOGETHER = 0;

    private final Handle handle;
    private final long sample;
    private final String name;
    private final String by;

    /** @param sample number of the sample in the database @param name its name @param by the word for the way of grouping */
    SqlSumsBlocks(Handle handle, long sample, String name, String by) {
        this.handle = handle;
        this.sample = sample;
        this.name = name;
        this.by = by;
    }

    /** A block without its sums. */
    record Border(int number, long lastSpot) {
    }

    /** A block with its sums, and whether these are as they were written. */
    record Found(SumsBlock block, String sha256, boolean isIntact) {
    }

    /** All full blocks together; empty where there is none. */
    Optional<Found> together() {
        return find(TOGETHER);
    }

    Optional<Found> find(int number) {
        return PlainSql.find(handle, "SELECT last_spot, sha256, bytes FROM kept_block WHERE sample = ? AND grouped_by = ?"
            + " AND block = ?", row -> {
                SumsBlock block = new SumsBlock(number, row.getLong("last_spot"), row.getBytes("bytes"));
                return new Found(block, row.getString("sha256"), row.getString("sha256").equals(sha256(block)));
            }, sample, by, number);
    }

    /** The blocks that are kept one by one, in their order. */
    List<Border> borders() {
        return PlainSql.list(handle, "SELECT block, last_spot FROM kept_block WHERE sample = ? AND grouped_by = ?"
            + " AND block > 0 ORDER BY block", row -> new Border(row.getInt("block"), row.getLong("last_spot")), sample, by);
    }

    /** Keeps what is new of these sums. @return the SHA-256 of all full blocks together; empty where there is none */
    Optional<String> keep(SampleSums made) {
        if (made.areAnew()) {
            forget();
        } else if (!made.blocksAreKept()) {
            PlainSql.batch(handle, "DELETE FROM kept_block WHERE sample = ? AND grouped_by = ? AND block > 0",
                List.<Object[]>of(new Object[] {sample, by}));
        }
        made.blocks().forEach(this::put);
        made.fullBlocks().ifPresent(full -> put(new SumsBlock(TOGETHER, full.lastPlace(), full.bytes())));
        return made.fullBlockCount() == 0 ? Optional.empty() : Optional.of(PlainSql.find(handle,
            "SELECT sha256 FROM kept_block WHERE sample = ? AND grouped_by = ? AND block = ?",
            row -> row.getString("sha256"), sample, by, TOGETHER).orElseThrow());
    }

    private void put(SumsBlock block) {
        PlainSql.batch(handle, "DELETE FROM kept_block WHERE sample = ? AND grouped_by = ? AND block = ?",
            List.<Object[]>of(new Object[] {sample, by, block.number()}));
        PlainSql.batch(handle,
            "INSERT INTO kept_block (sample, grouped_by, block, last_spot, sha256, bytes) VALUES (?, ?, ?, ?, ?, ?)",
            List.<Object[]>of(new Object[] {sample, by, block.number(), block.lastPlace(), sha256(block), block.bytes()}));
    }

    void forget() {
        PlainSql.batch(handle, "DELETE FROM kept_block WHERE sample = ? AND grouped_by = ?",
            List.<Object[]>of(new Object[] {sample, by}));
    }

    private String sha256(SumsBlock block) {
        return new Sha256().add(new PackedWriter().text(name).text(by).count(block.number()).count(block.lastPlace())
            .toBytes()).add(block.bytes()).take();
    }
}
