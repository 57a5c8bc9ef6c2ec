package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

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
}
