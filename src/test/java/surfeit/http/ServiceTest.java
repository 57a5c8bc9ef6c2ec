package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import surfeit.lab.Problem;

/** What is here, whether it runs, its documents, and the files packed with it. */
class ServiceTest {
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
    void the_entry_names_version_links_and_limits() {
        Reply reply = service.get("/v1");
        assertThat(reply.status()).isEqualTo(200);
        assertThat(reply.json().path("name").asText()).isEqualTo("surfeit");
        assertThat(reply.json().path("version").asText()).isEqualTo(ProgramVersion.VERSION);
        reply.json().path("links").forEach(link -> {
            if (!link.asText().equals("/v1/interpretations")) {
                assertThat(service.get(link.asText()).status()).as(link.asText()).isEqualTo(200);
            }
        });
    }

    @Test
    void health_and_readiness_answer_and_are_never_kept() {
        assertThat(service.get("/healthz").json().path("status").asText()).isEqualTo("ok");
        Reply ready = service.get("/readyz");
        assertThat(ready.json().path("status").asText()).isEqualTo("ready");
        assertThat(ready.header("Cache-Control")).hasValue("no-store");
    }

    @Test
    void every_shared_file_is_served_byte_for_byte_with_an_etag() throws Exception {
        Reply list = service.get("/shared");
        assertThat(list.json().path("items").size()).isGreaterThan(80);
        for (var file : list.json().path("items")) {
            String path = file.path("path").asText();
            Reply reply = service.get(path);
            assertThat(reply.status()).as(path).isEqualTo(200);
            assertThat(reply.body()).as(path).isEqualTo(java.nio.file.Files.readAllBytes(java.nio.file.Path.of(
                path.substring(1))));
            assertThat(service.get(path, "If-None-Match", reply.etag()).status()).isEqualTo(304);
        }
    }

    @Test
    void nothing_beside_the_shared_files_can_be_reached_through_their_address() {
        for (String path : new String[] {"/shared/../surfeit.properties", "/shared/%2e%2e/surfeit.properties",
            "/shared/reference",
            "/shared/reference/", "/shared//etc/passwd", "/shared/reference%2Felements.csv/.."}) {
            assertThat(service.get(path).code()).as(path).isIn("not-found", "malformed-request");
        }
    }

    @Test
    void the_documents_page_runs_no_script_and_loads_nothing_from_elsewhere() {
        Reply page = service.get("/docs");
        assertThat(page.header("Content-Security-Policy").orElseThrow())
            .startsWith("default-src 'self'; style-src 'sha256-");
        assertThat(page.text()).doesNotContain("<script").doesNotContainPattern("(src|href)=\"(https?:)?//")
            .doesNotContain("@import", "url(");
        for (OpenApi.Operation operation : OpenApi.DOCUMENT.operations()) {
            assertThat(page.text()).contains("id=\"" + operation.node().path("operationId").asText() + "\"");
        }
    }

    @Test
    void every_problem_has_a_page_as_json_and_for_people() {
        assertThat(service.get("/v1/problems").json().path("items").size()).isEqualTo(Problem.values().length);
        for (Problem problem : Problem.values()) {
            String path = "/v1/problems/" + problem.code();
            assertThat(service.get(path).json().path("title").asText()).isEqualTo(problem.title());
            Reply page = service.get(path, "Accept", "text/html,application/xhtml+xml,*/*;q=0.8");
            assertThat(page.mediaType()).isEqualTo("text/html");
            assertThat(page.text()).contains(problem.code());
        }
        assertThat(service.get("/v1/problems/no-such").status()).isEqualTo(404);
    }

    @Test
    void a_stopping_service_says_no_to_readiness_checks_and_lets_a_running_request_end() throws Exception {
        try (RunningService other = RunningService.start();
             Socket slow = new Socket("127.0.0.1", other.server().port());
             Socket check = new Socket("127.0.0.1", other.server().port())) {
            byte[] body = InventedPowder.interpretation().getBytes(StandardCharsets.UTF_8);
            slow.getOutputStream().write(("POST /v1/interpretations HTTP/1.1\r\nHost: a\r\nContent-Type: application/json\r\n"
                + "Content-Length: " + body.length + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
            slow.getOutputStream().write(body, 0, 10);
            Thread stop = new Thread(() -> other.server().stop());
            stop.start();
            Thread.sleep(300);
            check.getOutputStream().write("GET /readyz HTTP/1.1\r\nHost: a\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
            assertThat(new String(check.getInputStream().readNBytes(12), StandardCharsets.US_ASCII)).isEqualTo("HTTP/1.1 503");
            slow.getOutputStream().write(body, 10, body.length - 10);
            assertThat(statusLine(slow)).contains(" 200 ");
            stop.join(10_000);
            assertThat(stop.isAlive()).isFalse();
        }
    }

    private static String statusLine(Socket socket) throws IOException {
        socket.setSoTimeout(5000);
        return new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII)).readLine();
    }
}
