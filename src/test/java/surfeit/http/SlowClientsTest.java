package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Clients that trickle, and clients that take no answer, keep nobody else from one. */
class SlowClientsTest {
    /** More than the service has threads. */
    private static final int CLIENTS = 300;

    private static RawRequest trickling(RunningService service) throws IOException {
        return new RawRequest(service).head("PUT", "/v1/samples/slow", "application/json", 1000).send("{");
    }

    @Test
    void with_more_slow_bodies_than_threads_the_service_answers_as_before() throws Exception {
        List<RawRequest> slow = new ArrayList<>();
        try (RunningService service = RunningService.start()) {
            for (int i = 0; i < CLIENTS; i++) {
                slow.add(trickling(service));
            }
            int refused = CLIENTS - RequestLimits.DEFAULT.arrivingBodiesMax();
            for (RawRequest request : answered(slow, refused)) {
                requireRefused(request.answer(), "arriving-bodies-max");
            }
            assertThat(service.get("/healthz").status()).isEqualTo(200);
            assertThat(service.get("/v1/samples").status()).isEqualTo(200);
            closeAll(slow);
        }
    }

    private static void closeAll(List<RawRequest> requests) throws IOException {
        for (RawRequest request : requests) {
            request.close();
        }
    }

    private static void requireRefused(RawRequest.Answer answer, String setting) {
        assertThat(answer.status()).isEqualTo(429);
        assertThat(answer.headers()).containsEntry("retry-after", "5");
        assertThat(OpenApi.parse(answer.body()).path("setting").asText()).isEqualTo(setting);
    }

    @Test
    void with_more_large_answers_that_nobody_takes_than_threads_the_service_answers_as_before() throws Exception {
        List<RawRequest> slow = new ArrayList<>();
        try (RunningService service = RunningService.start()) {
            service.put("/v1/samples/A7", InventedPowder.SAMPLE);
            assertThat(service.post("/v1/samples/A7/spots", "text/csv", manySpots()).status()).isEqualTo(201);
            for (int i = 0; i < CLIENTS; i++) {
                slow.add(new RawRequest(service).send("GET /v1/results.ndjson HTTP/1.1\r\nHost: localhost\r\n\r\n"));
            }
            int refused = 0;
            for (RawRequest request : answered(slow, CLIENTS)) {
                RawRequest.Answer answer = request.head();
                refused += answer.status() == 429 ? 1 : 0;
            }
            assertThat(refused).isEqualTo(CLIENTS - RequestLimits.DEFAULT.largeAnswersMax());
            assertThat(service.get("/healthz").status()).isEqualTo(200);
            assertThat(service.get("/v1/samples").status()).isEqualTo(200);
            assertThat(service.get("/v1/results.ndjson").json().path("setting").asText())
                .isEqualTo("large-answers-max");
            closeAll(slow);
            assertThat(isGivenAgain(service)).isTrue();
        }
    }

    @Test
    void an_answer_that_nobody_takes_is_broken_off_without_a_word_in_the_log() throws Exception {
        PrintStream before = System.err;
        ByteArrayOutputStream log = new ByteArrayOutputStream();
        System.setErr(new PrintStream(log, true, StandardCharsets.UTF_8));
        try (RunningService service = RunningService.start(ServerSettings.DEFAULT.withRequests(RequestLimits.DEFAULT
            .withLargeAnswers(1).withTimes(Duration.ofSeconds(2), Duration.ofSeconds(30))))) {
            service.put("/v1/samples/A7", InventedPowder.SAMPLE);
            assertThat(service.post("/v1/samples/A7/spots", "text/csv", manySpots()).status()).isEqualTo(201);
            try (RawRequest untaken = new RawRequest(service)) {
                assertThat(untaken.send("GET /v1/results.ndjson HTTP/1.1\r\nHost: localhost\r\n\r\n").head().status())
                    .isEqualTo(200);
                assertThat(service.get("/v1/results.ndjson").status()).isEqualTo(429);
                assertThat(isGivenAgain(service)).isTrue();
            }
        } finally {
            System.setErr(before);
        }
        assertThat(log.toString(StandardCharsets.UTF_8)).isEmpty();
    }

    /** Some ten megabytes of results. Invented. */
    private static String manySpots() {
        StringBuilder table = new StringBuilder("label,Ag at%,Cu at%\n");
        for (int i = 0; i < 8000; i++) {
            table.append("spot ").append(i).append(",60.1,39.9\n");
        }
        return table.toString();
    }

    private static boolean isGivenAgain(RunningService service) throws InterruptedException {
        for (int i = 0; i < 200; i++) {
            if (service.send("GET", "/v1/results.ndjson", new byte[0]).status() == 200) {
                return true;
            }
            Thread.sleep(50);
        }
        return false;
    }

    private static List<RawRequest> answered(List<RawRequest> requests, int count) throws Exception {
        List<RawRequest> found = List.of();
        for (int i = 0; i < 1200 && found.size() < count; i++) {
            Thread.sleep(50);
            List<RawRequest> now = new ArrayList<>();
            for (RawRequest request : requests) {
                if (request.isAnswered()) {
                    now.add(request);
                }
            }
            found = now;
        }
        assertThat(found).hasSize(count);
        return found;
    }

    @Test
    void a_place_is_free_again_once_its_body_is_there_or_its_sender_is_gone() throws Exception {
        byte[] body = InventedPowder.SAMPLE.getBytes(StandardCharsets.UTF_8);
        try (RunningService service = RunningService.start(ServerSettings.DEFAULT
            .withRequests(RequestLimits.DEFAULT.withArrivingBodies(1)))) {
            try (RawRequest first = asking(service, body)) {
                assertThat(first.answer().status()).isEqualTo(100);
                try (RawRequest second = trickling(service)) {
                    requireRefused(second.answer(), "arriving-bodies-max");
                }
                assertThat(first.send(body).answer().status()).isEqualTo(201);
            }
            try (RawRequest gone = asking(service, body)) {
                assertThat(gone.answer().status()).isEqualTo(100);
            }
            assertThat(isTakenAgain(service, body)).isTrue();
        }
    }

    /** A sender that waits to be told to go on, which it is once its place is taken. */
    private static RawRequest asking(RunningService service, byte[] body) throws IOException {
        return new RawRequest(service).head("PUT", "/v1/samples/A7", "application/json", body.length,
            "Expect: 100-continue");
    }

    private static boolean isTakenAgain(RunningService service, byte[] body) throws Exception {
        for (int i = 0; i < 100; i++) {
            try (RawRequest next = asking(service, body)) {
                if (next.answer().status() == 100) {
                    return next.send(body).answer().status() == 200;
                }
            }
            Thread.sleep(50);
        }
        return false;
    }
}
