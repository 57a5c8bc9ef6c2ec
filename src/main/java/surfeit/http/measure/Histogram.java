package surfeit.http.measure;

import java.util.Arrays;
import java.util.concurrent.atomic.LongAdder;

/** How often something took how long. Thread-safe. */
final class Histogram {
    /**
     * Upper ends of the classes, in milliseconds; a last one is open. Judgement: from a list read to a large import.
     */
    private static final double[] ENDS_MS = {1, 2.5, 5, 10, 25, 50, 100, 250, 500, 1000, 2500, 5000, 10_000};
    private static final double NANOS = 1e9;
    private static final double MILLIS = 1e3;

    private final LongAdder[] counts = new LongAdder[ENDS_MS.length + 1];
    private final LongAdder sumNanos = new LongAdder();

    Histogram() {
        for (int i = 0; i < counts.length; i++) {
            counts[i] = new LongAdder();
        }
    }

    void add(long nanos) {
        int i = 0;
        while (i < ENDS_MS.length && nanos > ENDS_MS[i] * 1e6) {
            i++;
        }
        counts[i].increment();
        sumNanos.add(nanos);
    }

    /** Each class holds those below it too; the last one is all of them. */
    void write(MetricsText text, String name, String... labels) {
        long count = 0;
        double sum = sumNanos.sum() / NANOS;
        for (int i = 0; i < ENDS_MS.length; i++) {
            count += counts[i].sum();
            text.sample(name + "_bucket", count, with(labels, Double.toString(ENDS_MS[i] / MILLIS)));
        }
        count += counts[ENDS_MS.length].sum();
        text.sample(name + "_bucket", count, with(labels, "+Inf"));
        text.sample(name + "_sum", sum, labels);
        text.sample(name + "_count", count, labels);
    }

    private static String[] with(String[] labels, String end) {
        String[] all = Arrays.copyOf(labels, labels.length + 2);
        all[labels.length] = "le";
        all[labels.length + 1] = end;
        return all;
    }
}
