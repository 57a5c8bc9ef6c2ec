package surfeit.lab;

import java.util.List;
import java.util.function.Consumer;
import surfeit.spot.Spot;

/** Takes what a reader of uploads finds as something to be told to another sink later. */
abstract class FoundRows implements SpotRows.Sink {

    /** Keeps the next thing found. */
    abstract void keep(Consumer<SpotRows.Sink> found);

    @Override
    public void dialect(Dialect dialect) {
        keep(sink -> sink.dialect(dialect));
    }

    @Override
    public void rejectedHeader(String line) {
        keep(sink -> sink.rejectedHeader(line));
    }

    @Override
    public void spot(Spot spot, SpotRows.Row row) {
        keep(sink -> sink.spot(spot, row));
    }

    @Override
    public void rejected(SpotRows.Row row, List<Fault> faults) {
        keep(sink -> sink.rejected(row, faults));
    }

    @Override
    public void leftOut(LeftOut what) {
        keep(sink -> sink.leftOut(what));
    }
}
