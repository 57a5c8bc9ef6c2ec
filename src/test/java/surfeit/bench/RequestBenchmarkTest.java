package surfeit.bench;

import static org.assertj.core.api.Assertions.assertThat;

import io.javalin.Javalin;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Requests over HTTP, each kind beside the least that a request of its size can cost. Invented numbers. */
@Tag("bench")
class RequestBenchmarkTest {
    private static final int CONNECTIONS = 16;
    private static final int MANY = 32;
    private static final int REQUESTS = 12_000;
    /** Requests before the first that counts: what writes or interprets is large, and compiled late. */
    private static final int WARM_UP = 40_000;
    private static final int FIXED_BYTES = 4096;
    private static final byte[] FIVE_SPOTS = LoadDriver.request("POST", "/v1/interpretations", interpretation());
    private static final byte[] ECHO = LoadDriver.request("POST", "/echo", interpretation());
    private static final byte[] FIXED = LoadDriver.request("GET", "/fixed", "");
    private static BenchService service;
    private static Javalin bare;

    @BeforeAll
    static void start() throws IOException {
        service = new BenchService();
        bare = BenchService.bareServer(new byte[FIXED_BYTES], service.post("/v1/interpretations", "application/json",
            interpretation().getBytes(StandardCharsets.UTF_8)));
        service.put("/v1/samples/some", BenchService.SAMPLE);
        service.post("/v1/samples/some/spots", "text/csv", BenchService.table("s", 30, 6));
        service.put("/v1/samples/posts", BenchService.SAMPLE);
    }

    @AfterAll
    static void stop() {
        service.close();
        bare.stop();
    }

    private static String interpretation() {
        StringBuilder body = new StringBuilder("{\"sample\": {\"nominal\": {\"unit\": \"at%\", \"elements\": {\"Ag\": 56, \"Cu\": "
            + "22, \"Zn\": 17, \"Sn\": 5}}}, \"unit\": \"at%\", \"session\": \"s1\", \"spots\": [");
        double[][] values = {{55.8, 22.3, 16.8, 5.1}, {54.9, 23.1, 17.0, 5.0}, {56.6, 21.2, 17.3, 4.9},
            {55.2, 22.8, 16.9, 5.1}, {56.1, 21.9, 17.1, 4.9}};
        for (int i = 0; i < values.length; i++) {
            body.append(String.format(Locale.ROOT, "%s{\"label\": \"P%d-1\", \"particle\": \"P%d\", \"feature\": \"matrix\", "
                + "\"elements\": {\"Ag\": %s, \"Cu\": %s, \"Zn\": %s, \"Sn\": %s}}", i == 0 ? "" : ", ", i, i, values[i][0],
                values[i][1], values[i][2], values[i][3]));
        }
        return body + "]}";
    }

    private static double rate(int port, int connections, byte[] request) throws IOException {
        return LoadDriver.run(port, connections, REQUESTS, number -> request).perSecond();
    }

    @Test
    void interpretation_beside_an_echo() throws Exception {
        LoadDriver.run(service.port(), CONNECTIONS, WARM_UP, number -> FIVE_SPOTS);
        InTurns turns = InTurns.of(() -> rate(bare.port(), CONNECTIONS, ECHO),
            () -> rate(service.port(), CONNECTIONS, FIVE_SPOTS));
        Goal.INTERPRETATION.measured(InTurns.digits(turns.ceiling()) + "/s", InTurns.digits(turns.ours()) + "/s",
            InTurns.digits(turns.ratio()), turns.ratio() >= 0.90);
        assertThat(turns.ours()).isPositive();
    }

    @Test
    void an_answer_that_did_not_change_beside_the_full_one() throws Exception {
        String path = "/v1/samples/some/segregation";
        String tag = service.get(path).headers().firstValue("ETag").orElseThrow();
        byte[] full = LoadDriver.request("GET", path, "");
        byte[] conditional = LoadDriver.request("GET", path, "", "If-None-Match: " + tag);
        InTurns turns = InTurns.of(() -> rate(service.port(), CONNECTIONS, full),
            () -> rate(service.port(), CONNECTIONS, conditional));
        Goal.NOT_MODIFIED.measured(InTurns.digits(turns.ceiling()) + "/s", InTurns.digits(turns.ours()) + "/s",
            InTurns.digits(turns.ratio()), turns.ratio() >= 1.05);
        assertThat(turns.ours()).isPositive();
    }

    @Test
    void durable_posts_of_single_spots_beside_a_fixed_answer_and_one_client() throws Exception {
        AtomicInteger label = new AtomicInteger();
        double[] p99 = new double[InTurns.ROUNDS + 1];
        int[] round = {0};
        LoadDriver.run(service.port(), MANY, WARM_UP, number -> post(label));
        InTurns.Figure many = () -> {
            LoadDriver.Load load = LoadDriver.run(service.port(), MANY, REQUESTS, number -> post(label));
            p99[round[0]++] = load.p99Ms();
            return load.perSecond();
        };
        InTurns againstFixed = InTurns.of(() -> rate(bare.port(), MANY, FIXED), many);
        double latency = InTurns.median(p99);
        round[0] = 0;
        InTurns againstOne = InTurns.of(() -> LoadDriver.run(service.port(), 1, 600, number -> post(label)).perSecond(), many);
        Goal.SINGLE_POSTS.measured(InTurns.digits(againstFixed.ceiling()) + "/s", InTurns.digits(againstFixed.ours()) + "/s",
            InTurns.digits(againstFixed.ratio()), againstFixed.ratio() >= 0.70);
        Goal.GROUP_COMMIT.measured(InTurns.digits(againstOne.ceiling()) + "/s", InTurns.digits(againstOne.ours()) + "/s",
            InTurns.digits(againstOne.ratio()), againstOne.ratio() >= 4);
        Goal.POST_LATENCY.measured("", InTurns.digits(latency) + " ms", "", latency <= 10);
        assertThat(service.laboratory().sample("posts").spotCount()).isEqualTo(label.get());
    }

    private static byte[] post(AtomicInteger label) {
        return LoadDriver.request("POST", "/v1/samples/posts/spots", "{\"unit\": \"at%\", \"spots\": [{\"label\": \"s"
            + label.incrementAndGet() + "\", \"particle\": \"P1\", \"elements\": {\"Ag\": 60.2, \"Cu\": 39.8}}]}");
    }
}
