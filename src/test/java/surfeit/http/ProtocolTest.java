package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Requests no well-behaved client would send, over a bare socket. */
class ProtocolTest {
    private static RunningService service;

    @BeforeAll
    static void start() {
        service = RunningService.start();
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    @Test
    void an_address_that_is_too_long_is_414() throws IOException {
        requireProblem(send("GET /v1/samples?q=" + "x".repeat(20_000) + " HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n"),
            414, "address-too-long");
    }

    @Test
    void header_fields_that_are_too_large_are_431() throws IOException {
        requireProblem(send("GET /v1/samples HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Large: " + "x".repeat(20_000)
            + "\r\n\r\n"),
            431, "headers-too-large");
    }

    @Test
    void what_is_no_http_is_400() throws IOException {
        requireProblem(send("GET /v1 HTTP/1.1\r\nHost: 127.0.0.1\r\nno colon here\r\n\r\n"), 400, "malformed-request");
        requireProblem(send("GET /v1/%zz HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n"), 400, "malformed-request");
        requireProblem(send("POST /v1/interpretations HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: x\r\n\r\n"),
            400, "malformed-request");
    }

    @Test
    void a_query_that_is_not_encoded_is_refused_with_the_way_to_write_it() throws IOException {
        for (String query : List.of("unit=wt%", "unit=at%&by=feature", "by=feature&unit=wt%2", "by=feature&%zz", "session=%FF",
            "session=%C3%28")) {
            String answer = send("GET /v1/samples/A7/segregation?" + query + " HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n");
            requireProblem(answer, 400, "malformed-request");
            assertThat(answer).as(query).contains(query.contains("session") ? "Expected text in UTF-8" : "itself is %25");
        }
        requireProblem(send("GET /v1/samples/A%37?q=%C3%A9 HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n"), 400, "unknown-parameter");
    }

    @Test
    void a_refusal_that_comes_before_the_body_says_that_the_connection_ends_and_is_not_overtaken_by_its_end() throws Exception {
        try (Socket socket = new Socket("127.0.0.1", service.server().port())) {
            socket.setSoTimeout(10_000);
            socket.getOutputStream().write(refused(5));
            Thread.sleep(100);
            socket.getOutputStream().write("a,b\n1".getBytes(StandardCharsets.US_ASCII));
            String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

            requireProblem(answer, 404, "not-found");
            assertThat(answer).containsIgnoringCase("Connection: close");
        }
    }

    @Test
    void a_refusal_of_a_body_that_has_come_keeps_the_connection() throws Exception {
        try (Socket socket = new Socket("127.0.0.1", service.server().port())) {
            socket.setSoTimeout(10_000);
            String twice = new String(refused(5), StandardCharsets.US_ASCII) + "a,b\n1";
            socket.getOutputStream().write((twice + "GET /healthz HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n")
                .getBytes(StandardCharsets.US_ASCII));
            String answers = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

            assertThat(answers).startsWith("HTTP/1.1 404").contains("HTTP/1.1 200");
        }
    }

    @Test
    void who_waits_to_be_told_to_send_a_body_is_told_the_refusal_and_nothing_else() throws Exception {
        try (Socket socket = new Socket("127.0.0.1", service.server().port())) {
            socket.setSoTimeout(10_000);
            String head = new String(refused(5), StandardCharsets.US_ASCII)
                .replace("\r\n\r\n", "\r\nExpect: 100-continue\r\n\r\n");
            socket.getOutputStream().write(head.getBytes(StandardCharsets.US_ASCII));
            String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

            requireProblem(answer, 404, "not-found");
            assertThat(answer).containsIgnoringCase("Connection: close");
        }
    }

    @Test
    void a_list_that_comes_in_several_header_fields_is_one() throws IOException {
        String page = "GET /v1/problems/internal HTTP/1.1\r\nHost: 127.0.0.1\r\nAccept: image/png\r\nAccept: text/html\r\n";
        String answer = send(page + "\r\n");
        assertThat(answer).startsWith("HTTP/1.1 200").contains("Content-Type: text/html");
        String tag = answer.lines().filter(line -> line.startsWith("ETag: ")).findFirst().orElseThrow().substring(6);
        assertThat(head(page + "If-None-Match: \"x\"\r\nIf-None-Match: " + tag + "\r\n\r\n")).startsWith("HTTP/1.1 304");
    }

    /** A cache puts what a 304 says in place of what it holds (RFC 9111, section 3.2). */
    @Test
    void an_answer_without_a_body_says_nothing_of_its_media_type_nor_length() throws IOException {
        String answer = head("GET /v1 HTTP/1.1\r\nHost: 127.0.0.1\r\nIf-None-Match: *\r\n\r\n");
        assertThat(answer).startsWith("HTTP/1.1 304").doesNotContainIgnoringCase("\nContent-Type:")
            .doesNotContainIgnoringCase("Content-Length");
    }

    @Test
    void what_is_no_http_ends_the_connection_and_says_so() throws IOException {
        for (String address : List.of("/v1/samples/A7%00", "/v1//samples", "/v1/samples/%FF", "/v1/samples?q=" + "x".repeat(20_000))) {
            assertThat(head("GET " + address + " HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n")).as(address)
                .containsIgnoringCase("Connection: close");
        }
    }

    /** The head of an answer, in its own letters. */
    private static String head(String request) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", service.server().port())) {
            socket.setSoTimeout(10_000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            StringBuilder head = new StringBuilder();
            while (head.indexOf("\r\n\r\n") < 0) {
                head.append((char) socket.getInputStream().read());
            }
            return head.toString();
        }
    }

    /** The head of an upload to a sample that is not there. */
    private static byte[] refused(int length) {
        return ("POST /v1/samples/none/spots HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: text/csv\r\nContent-Length: "
            + length + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII);
    }

    @Test
    void a_method_that_an_address_lacks_is_405_and_allow_names_the_others() {
        Reply reply = service.send("DELETE", "/v1/samples/A7", new byte[0]);
        assertThat(reply.header("Allow")).hasValue("GET, HEAD, PUT");
        assertThat(service.send("OPTIONS", "/v1/interpretations", new byte[0]).header("Allow")).hasValue("POST");
    }

    @Test
    void the_request_id_of_the_client_is_kept_where_it_is_fit_for_a_log() {
        assertThat(service.get("/v1/nowhere", "X-Request-Id", "lims-2026-0042").json().path("request_id").asText())
            .isEqualTo("lims-2026-0042");
        assertThat(service.get("/v1/nowhere", "X-Request-Id", "a b;c").json().path("request_id").asText())
            .isNotEqualTo("a b;c");
    }

    @Test
    void the_service_listens_on_the_given_address_only() {
        assertThat(service.server().address()).startsWith("http://127.0.0.1:");
        assertThat(service.get("/healthz").header("Server")).isEmpty();
    }

    private static String send(String request) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", service.server().port())) {
            socket.setSoTimeout(10_000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            StringBuilder answer = new StringBuilder();
            byte[] piece = new byte[8192];
            int count = socket.getInputStream().read(piece);
            while (count > 0) {
                answer.append(new String(piece, 0, count, StandardCharsets.UTF_8));
                if (answer.indexOf("}") > 0) {
                    break;
                }
                count = socket.getInputStream().read(piece);
            }
            return answer.toString();
        }
    }

    private static void requireProblem(String answer, int status, String code) {
        assertThat(answer).startsWith("HTTP/1.1 " + status + " ")
            .containsIgnoringCase("Content-Type: application/problem+json");
        JsonNode problem = OpenApi.parse(answer.substring(answer.indexOf("\r\n\r\n") + 4));
        assertThat(problem.path("code").asText()).isEqualTo(code);
        assertThat(OpenApi.DOCUMENT.faults("/components/schemas/Problem", problem)).isEmpty();
    }
}
