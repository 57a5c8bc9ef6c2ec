package surfeit.intake;

/**
 * Takes the spots of an upload one by one as they are read, in the upload's order.
 *
 * <p>A fault of the whole table may come after spots were taken: keep nothing before {@link IntakeReport#tableRefused}
 * says no.
 */
@FunctionalInterface
public interface SpotSink {

    void accept(ReadSpot spot);

    /** The header of the table, before its first spot; not called for a JSON document or a header with faults. */
    default void begin(TableHead head) {
    }

    /** Rows that became no spot, as soon as that is known. */
    default void reject(RejectedSpot rejected) {
    }
}
