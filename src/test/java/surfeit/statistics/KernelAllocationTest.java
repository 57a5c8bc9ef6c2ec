package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import org.junit.jupiter.api.Test;

class KernelAllocationTest {

    private static final int CALLS = 20_000;
    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

    private double used;

    /** The least of several rounds: what the compiler or a first call adds is not the kernel's. */
    @Test
    void p_and_half_width_allocate_nothing() {
        long least = Long.MAX_VALUE;
        for (int round = 0; round < 20 && least > 0; round++) {
            long before = THREADS.getCurrentThreadAllocatedBytes();
            used += callEverything();
            least = Math.min(least, THREADS.getCurrentThreadAllocatedBytes() - before);
        }
        assertThat(used).isFinite();
        assertThat(least).as("bytes allocated in %s calls", CALLS).isZero();
    }

    private static double callEverything() {
        double sum = 0;
        for (int i = 0; i < CALLS; i++) {
            double distance = (i % 997) * 0.004;
            double df = i % 7 == 0 ? Double.POSITIVE_INFINITY : 1 + i % 30;
            sum += CombinedError.twoSidedP(distance, 0.3, df, 0.125);
            sum += CombinedError.halfWidth(0.3, df, 0.125, 0.95);
            sum += CombinedError.oneSidedP(0.2 - distance, 0.3, df, 0.125);
        }
        return sum;
    }
}
