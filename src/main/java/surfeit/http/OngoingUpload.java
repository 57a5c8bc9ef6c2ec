package surfeit.http;

import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import surfeit.lab.ImportProgress;
import surfeit.lab.ImportReport;

/** An upload of spots and how far it has come. Thread-safe. */
final class OngoingUpload implements ImportProgress {
    /** Where an upload stands. */
    enum State {
        RECEIVING, RUNNING, RECORDED, UNCHANGED, CHECKED, REPEATED, REFUSED;

        String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    private final String sample;
    private final Instant started;
    private State state = State.RECEIVING;
    private long spotCount;
    private Optional<String> id = Optional.empty();

    OngoingUpload(String sample, Instant started) {
        this.sample = sample;
        this.started = started;
    }

    String sample() {
        return sample;
    }

    Instant started() {
        return started;
    }

    /**
     * How far it has come at one moment.
     *
     * @param spotCount spots that were dealt with
     * @param id        of the import, once it is on record
     */
    record Stand(State state, long spotCount, Optional<String> id) {
        boolean isOver() {
            return state != State.RECEIVING && state != State.RUNNING;
        }
    }

    synchronized Stand stand() {
        return new Stand(state, spotCount, id);
    }

    /** The body is there whole. */
    synchronized void received() {
        state = State.RUNNING;
    }

    @Override
    public synchronized void done(long count) {
        spotCount = count;
    }

    /** @param report what became of it; absent where an earlier answer was given again */
    synchronized void over(Optional<ImportReport> report, boolean checked) {
        state = report.isEmpty() ? State.REPEATED : checked ? State.CHECKED
            : report.get().id().isPresent() ? State.RECORDED : State.UNCHANGED;
        id = checked ? Optional.empty() : report.flatMap(ImportReport::id);
    }

    /** Whatever went wrong: nothing of it was recorded. */
    synchronized void refusedUnlessOver() {
        state = stand().isOver() ? state : State.REFUSED;
    }
}
