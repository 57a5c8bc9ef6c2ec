package surfeit.cli;

import java.io.PrintWriter;
import surfeit.lab.ImportProgress;

/** Tells on standard error how far a large import has come: one line every {@value #EVERY} spots. */
final class ProgressLines implements ImportProgress {
    static final long EVERY = 10_000;

    private final PrintWriter err;
    private long told;

    ProgressLines(PrintWriter err) {
        this.err = err;
    }

    @Override
    public void done(long spotCount) {
        if (spotCount / EVERY > told) {
            told = spotCount / EVERY;
            err.println(told * EVERY + " spots read ...");
            err.flush();
        }
    }
}
