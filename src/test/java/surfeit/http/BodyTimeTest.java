package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.zip.CRC32;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A body that stalls, or that trickles for too long, is given up with 408, whatever it is made of. */
class BodyTimeTest {
    private static final Duration STALL = Duration.ofMillis(400);
    private static final Duration TOTAL = Duration.ofMillis(1500);
    private static final long DRIP_MS = 60;
    private static RunningService service;

    @BeforeAll
    static void start() {
        service = RunningService.start(ServerSettings.DEFAULT.withRequests(RequestLimits.DEFAULT.withTimes(STALL,
            TOTAL)));
        service.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    private static void requireGivenUp(RawRequest request, String setting, Duration least) throws IOException {
        RawRequest.Answer answer = request.answer();
        assertThat(answer.status()).isEqualTo(408);
        assertThat(OpenApi.parse(answer.body()).path("code").asText()).isEqualTo("request-timeout");
        assertThat(OpenApi.parse(answer.body()).path("setting").asText()).isEqualTo(setting);
        assertThat(answer.headers().get("connection")).isEqualTo("close");
        assertThat(request.elapsed()).isGreaterThanOrEqualTo(least).isLessThan(Duration.ofSeconds(10));
        assertThat(request.isClosed()).isTrue();
    }

    @Test
    void a_body_that_stalls_is_given_up() throws IOException {
        try (RawRequest request = new RawRequest(service)) {
            request.head("POST", "/v1/samples/A7/spots", "text/csv", 1000).send("label,Ag at%,Cu");
            requireGivenUp(request, "body-stall-s", STALL);
        }
    }

    @Test
    void a_body_that_never_starts_is_given_up() throws IOException {
        try (RawRequest request = new RawRequest(service)) {
            request.head("PUT", "/v1/samples/A8", "application/json", 20);
            requireGivenUp(request, "body-stall-s", STALL);
        }
    }

    @Test
    void a_body_that_trickles_without_a_pause_ends_at_the_total_time() throws Exception {
        try (RawRequest request = new RawRequest(service)) {
            request.head("POST", "/v1/samples/A7/spots", "text/csv", 1000).drip(new byte[1000], DRIP_MS);
            requireGivenUp(request, "body-total-s", TOTAL);
        }
    }

    @Test
    void chunks_that_trickle_end_at_the_total_time() throws Exception {
        try (RawRequest request = new RawRequest(service)) {
            request.send("POST /v1/samples/A7/spots HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: text/csv\r\n"
                + "Transfer-Encoding: chunked\r\n\r\n");
            request.drip("1\r\na\r\n".repeat(200).getBytes(StandardCharsets.US_ASCII), DRIP_MS);
            requireGivenUp(request, "body-total-s", TOTAL);
        }
    }

    @Test
    void compressed_pieces_that_inflate_to_nothing_end_at_the_total_time() throws Exception {
        byte[] nothing = emptyBlocks(10_000);
        try (RawRequest request = new RawRequest(service)) {
            request.head("POST", "/v1/samples/A7/spots", "text/csv", nothing.length, "Content-Encoding: gzip")
                .drip(nothing, DRIP_MS);
            requireGivenUp(request, "body-total-s", TOTAL);
        }
    }

    @Test
    void a_slow_body_within_both_times_is_taken() throws Exception {
        byte[] body = "{\"alloy\": \"ag-cu-eutectic\"}".getBytes(StandardCharsets.US_ASCII);
        try (RawRequest request = new RawRequest(service)) {
            request.head("PUT", "/v1/samples/slow", "application/json", body.length).drip(body, 20);
            assertThat(request.answer().status()).isEqualTo(201);
        }
    }

    @Test
    void an_answer_that_takes_longer_than_a_pause_may_last_arrives() throws Exception {
        RouteTable table = new RouteTable(List.of(Route.get("/v1/slow", Scope.OPEN).to(exchange -> {
            Thread.sleep(5 * STALL.toMillis() / 2);
            exchange.answer().json(200, json -> json.writeString("done"));
        })));
        ServerSettings settings = ServerSettings.DEFAULT.withPort(0).withRequests(
            RequestLimits.DEFAULT.withTimes(STALL, TOTAL));
        try (Server server = Server.start(settings, table, service.laboratory(), Clock.systemUTC(),
            RunningService.state(service.laboratory()));
             Socket socket = new Socket("127.0.0.1", server.port())) {
            socket.getOutputStream().write("GET /v1/slow HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"
                .getBytes(StandardCharsets.US_ASCII));
            assertThat(new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8))
                .startsWith("HTTP/1.1 200").endsWith("\"done\"");
        }
    }

    /**
     * A gzip stream of stored blocks without content (RFC 1951, section 3.2.4): five bytes that inflate to nothing,
     * many times.
     */
    static byte[] emptyBlocks(int count) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes(new byte[] {0x1f, (byte) 0x8b, 8, 0, 0, 0, 0, 0, 0, 3});
        for (int i = 0; i < count; i++) {
            out.writeBytes(new byte[] {0, 0, 0, (byte) 0xff, (byte) 0xff});
        }
        out.writeBytes(new byte[] {1, 0, 0, (byte) 0xff, (byte) 0xff});
        long checksum = new CRC32().getValue();
        for (int i = 0; i < 4; i++) {
            out.write((int) (checksum >> 8 * i));
        }
        out.writeBytes(new byte[4]);
        return out.toByteArray();
    }
}
