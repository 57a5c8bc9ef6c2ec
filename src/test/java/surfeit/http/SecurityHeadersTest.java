package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What browsers may do with an answer is said in every answer, whatever became of the request. */
class SecurityHeadersTest {
    private static RunningService service;

    @BeforeAll
    static void start() {
        service = RunningService.start();
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    @ParameterizedTest
    @CsvSource({"GET,/v1,200", "GET,/v1/samples,200", "HEAD,/v1/samples,200", "GET,/v1/samples/none,404",
        "GET,/nowhere,404",
        "DELETE,/v1/samples,405", "OPTIONS,/v1/samples,405", "POST,/v1/plain,404", "GET,/v1/samples?x=1,400",
        "PUT,/v1/samples/A7,403",
        "GET,/docs,200", "GET,/v1/problems,200", "GET,/shared/README.md,200", "GET,/v1/results.csv,200",
        "GET,/healthz,200"})
    void every_answer_says_what_browsers_may_do_with_it(String method, String path, int status) {
        Reply reply = service.send(method, path, new byte[0], "Origin", "https://elsewhere.example");
        assertThat(reply.status()).isEqualTo(status);
        SecurityHeaders.ALL.forEach((name, value) -> {
            if (!name.equals(SecurityHeaders.POLICY)) {
                assertThat(reply.headers().allValues(name)).as(name).containsExactly(value);
            }
        });
        assertThat(reply.headers().allValues(SecurityHeaders.POLICY)).hasSize(1).first().asString()
            .contains("frame-ancestors 'none'");
        assertThat(reply.headers().map().keySet()).noneMatch(name -> name.toLowerCase(Locale.ROOT)
            .startsWith("access-control-"));
        assertThat(reply.header("Server")).isEmpty();
        assertThat(reply.header("Set-Cookie")).isEmpty();
    }

    @Test
    void pages_load_nothing_but_what_is_here() {
        for (String page : new String[] {"/docs", "/v1/problems"}) {
            assertThat(service.get(page, "Accept", "text/html").header(SecurityHeaders.POLICY).orElseThrow())
                .startsWith("default-src 'self'; ");
        }
        assertThat(service.get("/v1").header(SecurityHeaders.POLICY))
            .hasValue("default-src 'none'; frame-ancestors 'none'");
    }

    @Test
    void an_answer_that_did_not_change_says_it_too() {
        Reply first = service.get("/v1");
        Reply again = service.get("/v1", "If-None-Match", first.etag());
        assertThat(again.status()).isEqualTo(304);
        assertThat(again.header("X-Content-Type-Options")).hasValue("nosniff");
    }

    @Test
    void a_browser_s_question_whether_another_site_may_write_is_answered_no() {
        Reply preflight = service.send("OPTIONS", "/v1/samples/A7", new byte[0], "Origin", "https://elsewhere.example",
            "Access-Control-Request-Method", "PUT");
        assertThat(preflight.status()).isEqualTo(405);
        assertThat(preflight.header("Allow")).hasValue("GET, HEAD, PUT");
    }

    @Test
    void no_page_of_another_site_can_make_a_browser_change_anything_without_asking_first() {
        List<String> sentWithoutAsking = List.of("application/x-www-form-urlencoded", "multipart/form-data",
            "text/plain");
        for (Route route : RunningService.routes(service.laboratory()).routes()) {
            if (route.method().equals("GET")) {
                continue;
            }
            assertThat(route.method()).as(route.path()).isIn("POST", "PUT", "DELETE");
            assertThat(route.takes()).extracting(Form::mediaType).as(route.path())
                .doesNotContainAnyElementsOf(sentWithoutAsking);
            String path = route.path().replaceAll("\\{[^}]*\\}", "x");
            assertThat(service.send(route.method(), path, new byte[0], "Origin", "https://elsewhere.example").status())
                .as(path).isEqualTo(403);
            assertThat(service.send(route.method(), path, new byte[0], "Sec-Fetch-Site", "cross-site").status())
                .as(path).isEqualTo(403);
        }
        assertThat(service.post("/v1/tokens", "text/plain", "{\"name\": \"x\", \"scopes\": [\"admin\"]}").status())
            .isEqualTo(415);
    }

    @Test
    void a_page_of_the_service_itself_may_change_things() {
        String own = "http://127.0.0.1:" + service.server().port();
        byte[] sample = "{\"alloy\": \"ag-cu-eutectic\"}".getBytes(StandardCharsets.UTF_8);
        assertThat(service.send("PUT", "/v1/samples/of-own-page", sample, "Content-Type", "application/json", "Origin", own)
            .status()).isEqualTo(201);
        assertThat(service.send("PUT", "/v1/samples/of-own-page", sample, "Content-Type", "application/json", "Origin",
            "http://behind.a.proxy", "Sec-Fetch-Site", "same-origin").status()).isEqualTo(200);
    }

    @Test
    void an_address_or_header_fields_that_are_too_long_are_refused_by_name() throws IOException {
        Map<String, String> requests = Map.of(
            "414 address-too-long", "GET /v1/samples?q=" + "a".repeat(20_000) + " HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n",
            "431 headers-too-large", "GET /v1/samples HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Long: " + "a".repeat(20_000)
            + "\r\n\r\n");
        for (Map.Entry<String, String> entry : requests.entrySet()) {
            try (RawRequest request = new RawRequest(service)) {
                RawRequest.Answer answer = request.send(entry.getValue()).answer();
                var problem = OpenApi.parse(answer.body());
                assertThat(answer.status() + " " + problem.path("code").asText()).isEqualTo(entry.getKey());
                assertThat(problem.path("setting").asText()).isEqualTo("header-bytes-max");
                requireHeaders(answer);
            }
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"GET /v1/%zz HTTP/1.1", "G@T /v1 HTTP/1.1", "GET /v1 HTTP/9.9",
        "GET //v1/../../etc HTTP/1.1"})
    void what_is_no_http_is_refused_with_the_same_fields(String line) throws IOException {
        try (RawRequest request = new RawRequest(service)) {
            RawRequest.Answer answer = request.send(line + "\r\nHost: 127.0.0.1\r\n\r\n").answer();
            assertThat(answer.status()).isBetween(400, 505);
            requireHeaders(answer);
            assertThat(answer.headers().get("content-type")).isEqualTo("application/problem+json");
        }
    }

    private static void requireHeaders(RawRequest.Answer answer) {
        SecurityHeaders.ALL.forEach((name, value) ->
            assertThat(answer.headers()).containsEntry(name.toLowerCase(Locale.ROOT), value));
    }

    @Test
    void under_a_foreign_name_an_open_service_asks_for_a_token() throws IOException {
        for (String host : new String[] {"elsewhere.example", "elsewhere.example:8420", "192.168.7.5",
            "127.0.0.1.elsewhere.example",
            "localhost.elsewhere.example"}) {
            assertThat(under(host).status()).as(host).isEqualTo(401);
        }
        for (String host : new String[] {"127.0.0.1", "localhost:1", "LOCALHOST", "[::1]:8420", "127.9.9.9",
            "lab.localhost"}) {
            assertThat(under(host).status()).as(host).isEqualTo(200);
        }
    }

    @Test
    void through_a_proxy_an_open_service_asks_for_a_token_unless_a_trusted_one_speaks_for_its_own_machine() {
        String[][] proxies = {{"X-Forwarded-For", "192.0.2.7"}, {"X-Forwarded-For", "127.0.0.1"},
            {"Forwarded", "for=192.0.2.7"}, {"X-Forwarded-For", "unknown"}};
        service.put("/v1/samples/seen-by-nobody", "{\"alloy\": \"ag-cu-eutectic\"}");
        assertThat(service.get("/").text()).contains("seen-by-nobody");
        for (String[] field : proxies) {
            assertThat(service.get("/v1/samples", field).code()).as(field[1]).isEqualTo("token-missing");
            assertThat(service.get("/", field).text()).doesNotContain("seen-by-nobody");
        }
        AccessRules trusting = new AccessRules(false, TrustedProxies.of("127.0.0.1"));
        try (RunningService behind = RunningService.start(ServerSettings.DEFAULT.withAccess(trusting))) {
            assertThat(behind.get("/v1/samples", "X-Forwarded-For", "192.0.2.7").status()).isEqualTo(401);
            assertThat(behind.get("/v1/samples", "X-Forwarded-For", "127.0.0.1, 192.0.2.7").status()).isEqualTo(401);
            assertThat(behind.get("/v1/samples", "X-Forwarded-For", "unknown").status()).isEqualTo(401);
            assertThat(behind.get("/v1/samples", "X-Forwarded-For", "").status()).isEqualTo(401);
            assertThat(behind.get("/v1/samples", "X-Forwarded-For", "127.0.0.1").status()).isEqualTo(200);
            assertThat(behind.get("/v1/samples", "X-Forwarded-Proto", "https").status()).isEqualTo(200);
        }
    }

    private static RawRequest.Answer under(String host) throws IOException {
        try (RawRequest request = new RawRequest(service)) {
            return request.send("GET /v1/samples HTTP/1.1\r\nHost: " + host + "\r\n\r\n").answer();
        }
    }
}
