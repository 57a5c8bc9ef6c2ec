package surfeit.lab;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.element.Spelling;
import surfeit.segregation.answer.Caveat;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/** The spots of an upload that is only to be interpreted: read whole, held in memory. For one use. */
public final class SpotList implements SpotRows.Sink {
    /** As many as a reader takes in; a table of many columns would fill the page. Judgement. */
    private static final int LEFT_OUT_TOLD = 6;

    private final List<Spot> spots = new ArrayList<>();
    private final List<Fault> faults = new ArrayList<>();
    private final List<String> leftOut = new ArrayList<>();
    private long faultCount;

    private SpotList() {
    }

    /** The spots of an upload, in its order. @throws ProblemException with every fault, where it has any */
    public static SpotList read(Upload upload, SpotRows rows, Sample sample) {
        SpotList list = new SpotList();
        try {
            rows.read(upload, sample, list);
        } catch (IOException e) {
            throw new UncheckedIOException("The upload could not be read again from where it was put.", e);
        }
        if (list.faultCount > 0) {
            Fault first = list.faults.get(0);
            throw new ProblemException(first.code(), list.faultCount == 1 ? first.detail()
                : list.faultCount + " faults; the first: " + first.detail(), list.faults, list.faultCount,
                Optional.empty());
        }
        return list;
    }

    public List<Spot> spots() {
        return spots;
    }

    /** What of the upload is in no spot, as a reader of the answer must know it; empty where everything is. */
    public Optional<Caveat> leftOut() {
        if (leftOut.isEmpty()) {
            return Optional.empty();
        }
        String more = leftOut.size() <= LEFT_OUT_TOLD ? "" : "; and " + (leftOut.size() - LEFT_OUT_TOLD) + " more";
        return Optional.of(Caveat.note("left-out", "Left out of the table: "
            + String.join("; ", leftOut.subList(0, Math.min(leftOut.size(), LEFT_OUT_TOLD))) + more + "."));
    }

    @Override
    public void spot(Spot spot, SpotRows.Row row) {
        List<Fault> found = SpotRules.faults(spot, row.place());
        if (found.isEmpty()) {
            spots.add(spot);
        } else {
            rejected(row, found);
        }
    }

    @Override
    public void rejected(SpotRows.Row row, List<Fault> found) {
        faultCount += found.size();
        if (faults.size() < ProblemException.FAULTS_IN_FULL) {
            faults.addAll(found);
        }
    }

    @Override
    public void dialect(Dialect dialect) {
        // An answer echoes the method, not the file.
    }

    @Override
    public void rejectedHeader(String line) {
        // Nothing is given back.
    }

    @Override
    public void leftOut(LeftOut what) {
        String where = what.place().line().isPresent() ? "line " + what.place().line().getAsLong()
            : what.place().column().isPresent() ? "column " + what.place().column().getAsInt() : "a spot";
        String name = what.label().or(what.place()::columnName).orElse("");
        leftOut.add(where + (name.isEmpty() ? "" : " " + Spelling.quoted(name)) + " (" + what.reason() + ")");
    }
}
