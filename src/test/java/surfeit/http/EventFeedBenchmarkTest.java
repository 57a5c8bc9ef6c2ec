package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLongArray;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.bench.Goal;
import surfeit.bench.InTurns;
import surfeit.lab.Expectation;
import surfeit.lab.Occasion;
import surfeit.lab.Store;
import surfeit.spot.Sample;

/**
 * {@code mvn -Pbench verify -Dtest=EventFeedBenchmarkTest}: how long an event takes from its commit to each of a
 * thousand clients, beside a bare loop that writes the same bytes to as many connections, taken in turns; and what a
 * client costs in heap. Figures are printed; only what may not depend on the machine is asserted.
 */
@Tag("bench")
class EventFeedBenchmarkTest {
    private static final int CLIENTS = Integer.getInteger("surfeit.bench.clients", 1000);
    private static final int EVENTS = 40;
    private static final int ROUNDS = 6;
    private static final long PAUSE_MILLIS = 100;

    @TempDir
    Path folder;

    private interface Sending {
        void send(int event) throws Exception;
    }

    /** Arrivals of one round beside when each event was sent or committed. */
    private static final class Arrivals {
        private final AtomicLongArray sent = new AtomicLongArray(EVENTS + 1);
        private final long[] came = new long[CLIENTS * EVENTS];
        private final int[] event = new int[CLIENTS * EVENTS];
        private final AtomicInteger count = new AtomicInteger();
        private final long first;

        Arrivals(long first) {
            this.first = first;
        }

        void arrived(long id) {
            int i = count.getAndIncrement();
            came[i] = System.nanoTime();
            event[i] = (int) (id - first);
        }

        double percentile(double share) {
            long[] sorted = IntStream.range(0, count.get()).mapToLong(i -> came[i] - sent.get(event[i])).sorted()
                .toArray();
            return sorted[(int) Math.min(sorted.length - 1, share * sorted.length)] / 1e6;
        }
    }

    private static void round(Arrivals arrivals, EventCrowd crowd, Sending sending) throws Exception {
        for (int event = 1; event <= EVENTS; event++) {
            sending.send(event);
            Thread.sleep(PAUSE_MILLIS);
        }
        assertThat(crowd.awaitComplete(60)).isTrue();
        assertThat(crowd.lost()).isZero();
        assertThat(crowd.doubled()).isZero();
    }

    private static Arrivals ours(RunningService service, int number) throws Exception {
        Sample sample = service.laboratory().sample("A7").sample();
        Occasion occasion = new Occasion("bench", RunningService.NOW);
        long first = service.laboratory().eventLog().range().last();
        Arrivals arrivals = new Arrivals(first);
        AtomicInteger committed = new AtomicInteger();
        try (EventCrowd crowd = new EventCrowd(service.server().port(), CLIENTS, "", first + EVENTS, arrivals::arrived);
             Store.Listening listening = service.laboratory().eventLog().onAppended(() ->
                 arrivals.sent.set(committed.incrementAndGet(), System.nanoTime()))) {
            assertThat(crowd.awaitOpen(60)).isTrue();
            round(arrivals, crowd, event ->
                service.laboratory().describe("E" + number + "-" + event, sample, Expectation.NONE, occasion));
            assertThat(listening).isNotNull();
        }
        for (int i = 0; i < 3; i++) {
            service.laboratory().describe("gone" + number + "-" + i, sample, Expectation.NONE, occasion);
            Thread.sleep(1000);
        }
        return arrivals;
    }

    private static Arrivals bare() throws Exception {
        Arrivals arrivals = new Arrivals(0);
        try (BareSender sender = new BareSender(CLIENTS);
             EventCrowd crowd = new EventCrowd(sender.port(), CLIENTS, "", EVENTS, arrivals::arrived)) {
            sender.accept(CLIENTS);
            assertThat(crowd.awaitOpen(60)).isTrue();
            round(arrivals, crowd, event -> {
                arrivals.sent.set(event, System.nanoTime());
                sender.send((long) event);
            });
        }
        return arrivals;
    }

    @Test
    void from_commit_to_a_thousand_clients() throws Exception {
        double[] ratios = new double[ROUNDS];
        double[] p99 = new double[ROUNDS];
        try (RunningService service = RunningService.start(
            ServerSettings.DEFAULT.withRequests(RequestLimits.DEFAULT.withOpenStreams(4 * CLIENTS)))) {
            service.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
            ours(service, 99);
            bare();
            for (int i = 0; i < ROUNDS; i++) {
                Arrivals ours = ours(service, i);
                Arrivals bare = bare();
                p99[i] = ours.percentile(0.99);
                ratios[i] = p99[i] / bare.percentile(0.99);
                System.out.printf("bench: events: %d clients, %d events: p50 %.1f ms, p99 %.1f ms; bare loop p50 %.1f"
                    + " ms, p99 %.1f ms; ratio of p99 %.2f; lost 0, doubled 0%n", CLIENTS, EVENTS,
                    ours.percentile(0.5), p99[i], bare.percentile(0.5), bare.percentile(0.99), ratios[i]);
            }
        }
        Arrays.sort(ratios);
        Arrays.sort(p99);
        System.out.printf("bench: events: commit to client p99, median of %d rounds: %.1f ms, %.2f of a bare loop%n",
            ROUNDS,
            p99[ROUNDS / 2], ratios[ROUNDS / 2]);
        Goal.EVENTS.measured("", InTurns.digits(p99[ROUNDS / 2]) + " ms", InTurns.digits(ratios[ROUNDS / 2]),
            ratios[ROUNDS / 2] <= 1.5);
    }

    @Test
    void heap_of_one_client() throws Exception {
        Process process = new ProcessBuilder(ProcessHandle.current().info().command().orElseThrow(), "-Xmx64m",
            "-XX:+UseSerialGC", "-cp", System.getProperty("java.class.path"), "surfeit.cli.Main", "serve", "--port",
            "0",
            "--open-streams-max", Integer.toString(4 * CLIENTS),
            "--data", folder.toString()).redirectError(ProcessBuilder.Redirect.INHERIT).start();
        try {
            String line = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))
                .readLine();
            int port = URI.create(line.substring(line.indexOf("http"))).getPort();
            try (EventCrowd warm = new EventCrowd(port, 100, "", Long.MAX_VALUE, id -> { })) {
                assertThat(warm.awaitOpen(60)).isTrue();
            }
            Thread.sleep(20_000);
            long before = live(process.pid());
            try (EventCrowd crowd = new EventCrowd(port, CLIENTS, "", Long.MAX_VALUE, id -> { })) {
                assertThat(crowd.awaitOpen(60)).isTrue();
                Thread.sleep(17_000);
                long with = live(process.pid());
                double kilobytes = (with - before) / 1024.0 / CLIENTS;
                System.out.printf("bench: events: %.1f KB of heap a client (%d clients, after their first sign of"
                    + " life; %.1f MB without, -Xmx64m)%n", kilobytes, CLIENTS, before / 1048576.0);
                Goal.EVENT_MEMORY.measured("", InTurns.digits(kilobytes) + " KB", "", kilobytes <= 12);
            }
        } finally {
            process.destroy();
            process.waitFor();
        }
    }

    /** Bytes of all objects that are still reachable, by the virtual machine's own count. */
    private static long live(long pid) throws IOException, InterruptedException {
        Path jcmd = Path.of(System.getProperty("java.home"), "bin", "jcmd");
        assertThat(Files.exists(jcmd)).isTrue();
        Process count = new ProcessBuilder(jcmd.toString(), Long.toString(pid), "GC.class_histogram").start();
        List<String> lines;
        try (BufferedReader in = new BufferedReader(new InputStreamReader(count.getInputStream(),
            StandardCharsets.UTF_8))) {
            lines = in.lines().toList();
        }
        count.waitFor();
        String total = lines.stream().filter(line -> line.startsWith("Total")).findFirst().orElseThrow();
        return Long.parseLong(total.trim().split("\\s+")[2]);
    }
}
