package surfeit.fuzz;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Locale;

/**
 * What one input may cost the thread that reads it: time of the processor, so that a busy machine does not count, and
 * memory asked for, which bounds what can be held.
 */
public final class Spent {
    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    private static final double NANOS_PER_S = 1e9;
    private static final double SECONDS_MAX = 2;
    private static final long BYTES_MAX = 64L << 20;
    private static final long BYTES_A_BYTE_MAX = 20_000;

    /** Set where the search itself watches time and memory, and where loading a class is charged to an input. */
    private static final boolean WATCHED_ELSEWHERE = Boolean.getBoolean("surfeit.fuzz.guided");

    private final long nanos = THREADS.getCurrentThreadCpuTime();
    private final long bytes = THREADS.getCurrentThreadAllocatedBytes();

    /** @throws AssertionError where reading an input of this length took too much since this was made */
    public void requireBounded(int length) {
        double seconds = (THREADS.getCurrentThreadCpuTime() - nanos) / NANOS_PER_S;
        long asked = THREADS.getCurrentThreadAllocatedBytes() - bytes;
        if (!WATCHED_ELSEWHERE && (seconds > SECONDS_MAX || asked > BYTES_MAX + BYTES_A_BYTE_MAX * length)) {
            throw new AssertionError(String.format(Locale.ROOT, "%d bytes of input took %.1f s and %d bytes of memory",
                length, seconds, asked));
        }
    }
}
