package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import surfeit.lab.Expectation;
import surfeit.lab.KeptAnswer;
import surfeit.lab.Occasion;
import surfeit.lab.RepeatKey;
import surfeit.spot.Sample;

/** Many listen at once, some of them slowly; each sees every event once and in order. */
class ManyListenersTest {
    private static final int CLIENTS = 1000;
    private static final Occasion OCCASION = new Occasion("test", RunningService.NOW);
    private RunningService service;
    private Sample described;

    @BeforeEach
    void start() {
        service = RunningService.start();
        service.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
        described = service.laboratory().sample("A7").sample();
    }

    @AfterEach
    void stop() {
        service.close();
    }

    private void describe(String name) {
        service.laboratory().describe(name, described, Expectation.NONE, OCCASION);
    }

    /** Many events in one transaction. */
    private void describeAll(String prefix, int count) {
        service.laboratory().once(new RepeatKey("test", prefix, prefix), OCCASION, lab -> {
            for (int i = 0; i < count; i++) {
                lab.describe(prefix + i, described, Expectation.NONE, OCCASION);
            }
            return new KeptAnswer(200, java.util.Map.of(), new byte[0]);
        });
    }

    @Test
    void a_thousand_clients_get_every_event_of_four_writers_once_and_in_order() throws Exception {
        int each = 25;
        try (EventCrowd crowd = new EventCrowd(service.server().port(), CLIENTS, "", 1 + 4L * each, id -> { })) {
            assertThat(crowd.awaitOpen(30)).isTrue();
            ExecutorService writers = Executors.newFixedThreadPool(4);
            List<Future<?>> written = new ArrayList<>();
            for (int writer = 0; writer < 4; writer++) {
                String prefix = "W" + writer + "-";
                written.add(writers.submit(() -> {
                    for (int i = 0; i < each; i++) {
                        describe(prefix + i);
                    }
                }));
            }
            for (Future<?> one : written) {
                one.get();
            }
            writers.shutdown();

            assertThat(crowd.awaitComplete(60)).isTrue();
            assertThat(crowd.lost()).isZero();
            assertThat(crowd.doubled()).isZero();
        }
    }

    @Test
    void clients_that_come_while_events_come_miss_none_between_what_is_kept_and_what_is_new() throws Exception {
        describeAll("B-", 3000);
        Thread writer = new Thread(() -> {
            for (int i = 0; i < 200; i++) {
                describe("C-" + i);
            }
        });
        writer.start();
        try (EventCrowd crowd = new EventCrowd(service.server().port(), 100, "?after=1", 3201, id -> { })) {
            assertThat(crowd.awaitComplete(60)).isTrue();
            assertThat(crowd.lost()).isZero();
            assertThat(crowd.doubled()).isZero();
        }
        writer.join();
    }

    @Test
    void a_client_that_reads_nothing_for_a_while_keeps_nobody_waiting_and_misses_nothing() throws Exception {
        int events = 30_000;
        try (Socket slow = new Socket()) {
            slow.setReceiveBufferSize(4096);
            slow.connect(new InetSocketAddress("127.0.0.1", service.server().port()));
            slow.getOutputStream().write(("GET /v1/events?after=1 HTTP/1.1\r\nHost: localhost\r\n"
                + "Accept: application/x-ndjson\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
            try (EventCrowd crowd = new EventCrowd(service.server().port(), 10, "?after=1", events + 1, id -> { })) {
                describeAll("a-long-name-of-a-sample-so-that-no-buffer-takes-it-all-", events);
                assertThat(crowd.awaitComplete(60)).isTrue();
                assertThat(crowd.lost() + crowd.doubled()).isZero();
            }
            assertThat(idsUntil(slow.getInputStream(), events + 1)).isEqualTo(events);
        }
    }

    /** How many numbers come up to the last one, each one more than that before. */
    private static int idsUntil(InputStream in, int last) throws Exception {
        StringBuilder read = new StringBuilder();
        int next = 2;
        byte[] bytes = new byte[64 << 10];
        while (next <= last) {
            int count = in.read(bytes);
            if (count < 0) {
                return next - 2;
            }
            read.append(new String(bytes, 0, count, StandardCharsets.US_ASCII));
            int from = 0;
            for (int at = read.indexOf("{\"id\":", 0); at >= 0; at = read.indexOf("{\"id\":", from)) {
                int end = read.indexOf(",", at);
                if (end < 0) {
                    break;
                }
                assertThat(Integer.parseInt(read.substring(at + 6, end))).isEqualTo(next++);
                from = end;
            }
            read.delete(0, from);
        }
        return next - 2;
    }

    private static ServerSettings one() {
        return ServerSettings.DEFAULT.withRequests(RequestLimits.DEFAULT.withOpenStreams(1));
    }

    @Test
    void the_place_of_a_client_that_is_gone_is_found_free_when_another_asks_for_it() throws Exception {
        try (RunningService small = RunningService.start(one())) {
            try (EventCrowd gone = new EventCrowd(small.server().port(), 1, "", Long.MAX_VALUE, id -> { })) {
                assertThat(gone.awaitOpen(30)).isTrue();
            }
            assertThat(small.get("/v1/events").status()).isEqualTo(429);
            Thread.sleep(5000);
            assertThat(small.get("/v1/events").status()).isEqualTo(200);
        }
    }

    @Test
    void one_stream_more_than_allowed_is_refused_with_the_setting_that_says_so() {
        try (RunningService small = RunningService.start(one());
             EventClient client = EventClient.open(small, "")) {
            client.next();
            Reply refused = small.get("/v1/events?wait_s=5");
            assertThat(refused.status()).isEqualTo(429);
            assertThat(refused.json().path("setting").asText()).isEqualTo("open-streams-max");
            assertThat(refused.header("Retry-After")).hasValue("5");
        }
    }
}
