package surfeit.lab;

import java.io.IOException;
import java.util.List;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/** Reads the spots of an upload one by one, in bounded memory: the table reader and the JSON readers fit behind it. */
public interface SpotRows {

    /**
     * Reads to the end, faults or not, and hands everything to the sink in the order of the upload.
     *
     * @param sample the sample they belong to: it says at how many standard uncertainties {@code u} is given
     * @throws ProblemException where the upload cannot be read as a whole (no header, no unit, not JSON)
     */
    void read(Upload upload, Sample sample, Sink sink) throws IOException;

    /** Takes what a reader finds. */
    interface Sink {
        /** How the upload was read, to be echoed; at most once. */
        void dialect(Dialect dialect);

        /** The head of {@code rejected.csv} with its column more, without a line end; before the first row. */
        void rejectedHeader(String line);

        /** A spot that could be read. */
        void spot(Spot spot, Row row);

        /** A row that could not: at least one fault. */
        void rejected(Row row, List<Fault> faults);

        /** Something that is no measurement, left out on purpose. */
        void leftOut(LeftOut what);
    }

    /** The row (or rows, or JSON object) that one spot came from. Immutable; it may be asked after the next was read. */
    interface Row {
        Place place();

        /** The row as it stood, with its faults in one column more, as lines of {@code rejected.csv} with line ends. */
        String rejectedLines(List<Fault> faults);
    }
}
