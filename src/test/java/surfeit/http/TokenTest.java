package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Base64;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.lab.TokenScope;
import surfeit.storage.OnBothEngines;
import surfeit.storage.RecordEngine;

/** Tokens over HTTP: made, shown, listed, revoked, and named in the record. */
@OnBothEngines
class TokenTest {
    private static final String SAMPLE = "{\"alloy\": \"ag-cu-eutectic\"}";
    @Parameter
    RecordEngine engine;
    private RunningService service;

    @BeforeEach
    void start() {
        service = RunningService.start(engine);
    }

    @AfterEach
    void stop() {
        service.close();
    }

    private Reply make(String body, String... headers) {
        return service.post("/v1/tokens", "application/json", body, headers);
    }

    private static String basic(String user, String password) {
        return "Basic " + Base64.getEncoder().encodeToString((user + ":" + password).getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void the_first_token_closes_the_service_to_everyone_without_one() {
        assertThat(service.get("/v1/samples").status()).isEqualTo(200);
        Reply made = make("{\"name\": \"anna\", \"scopes\": [\"read\", \"admin\"]}");
        assertThat(made.status()).isEqualTo(201);
        assertThat(made.header("Cache-Control")).hasValue("no-store");
        assertThat(service.get("/v1/samples").code()).isEqualTo("token-missing");
        assertThat(service.get("/v1").status()).isEqualTo(200);
        String token = made.json().path("token").asText();
        assertThat(service.get("/v1/samples", RunningService.bearer(token)).status()).isEqualTo(200);
    }

    @Test
    void a_token_in_other_letters_is_none_even_after_the_right_one_on_the_same_connection() throws IOException {
        String token = service.token("anna", TokenScope.READ);
        try (RawRequest connection = new RawRequest(service)) {
            assertThat(connection.head("GET", "/v1/samples", "text/plain", 0, "Authorization: Bearer " + token).answer().status())
                .isEqualTo(200);
            assertThat(connection.head("GET", "/v1/samples", "text/plain", 0,
                "Authorization: Bearer " + token.toLowerCase(Locale.ROOT)).answer().status()).isEqualTo(401);
        }
    }

    @Test
    void a_token_is_shown_once_and_never_again() {
        JsonNode made = make("{\"name\": \"anna\", \"scopes\": [\"admin\"]}").json();
        String token = made.path("token").asText();
        assertThat(token).matches("lab_[A-Za-z0-9_-]{43}");
        assertThat(made.path("expires_time").asText()).isEqualTo(RunningService.NOW.plus(Duration.ofDays(365))
            .toString());
        assertThat(made.path("created_by").asText()).isEqualTo("anyone");
        String[] admin = RunningService.bearer(token);
        for (String address : new String[] {"/v1/tokens", "/v1/tokens/" + made.path("id").asText(), "/v1/audit"}) {
            Reply reply = service.get(address, admin);
            assertThat(reply.status()).isEqualTo(200);
            assertThat(reply.text()).doesNotContain(token.substring(4));
            assertThat(service.get(address, "If-None-Match", reply.etag(), "Authorization", "Bearer " + token)
                .status()).isEqualTo(304);
        }
    }

    @Test
    void a_revoked_token_is_refused_from_the_next_request_on() {
        String admin = service.token("admin", TokenScope.ADMIN);
        String reader = service.token("reader", TokenScope.READ);
        assertThat(service.get("/v1/samples", RunningService.bearer(reader)).status()).isEqualTo(200);
        Reply revoked = service.send("DELETE", "/v1/tokens/tok_0002", new byte[0], RunningService.bearer(admin));
        assertThat(revoked.status()).isEqualTo(200);
        assertThat(revoked.json().path("revoked_by").asText()).isEqualTo("admin");
        assertThat(service.get("/v1/samples", RunningService.bearer(reader)).code()).isEqualTo("token-rejected");
        assertThat(service.send("DELETE", "/v1/tokens/tok_0002", new byte[0], RunningService.bearer(admin)).json())
            .isEqualTo(revoked.json());
        assertThat(service.send("DELETE", "/v1/tokens/tok_0009", new byte[0], RunningService.bearer(admin)).code())
            .isEqualTo("not-found");
    }

    @Test
    void the_token_s_name_stands_in_revisions_and_audit() {
        String token = service.token("bench 2", TokenScope.READ, TokenScope.WRITE, TokenScope.ADMIN);
        String[] bearer = RunningService.bearer(token);
        service.put("/v1/samples/A7", SAMPLE, bearer);
        JsonNode revision = service.get("/v1/samples/A7/revisions", bearer).json().path("items").path(0);
        assertThat(revision.path("changed_by").asText()).isEqualTo("bench 2");
        JsonNode audit = service.get("/v1/audit", bearer).json();
        assertThat(audit.path("items").findValuesAsText("who")).containsExactly("test", "bench 2");
        assertThat(audit.path("head").path("row_count").asInt()).isEqualTo(2);
        assertThat(audit.path("head").path("sha256")).isEqualTo(audit.path("items").path(1).path("sha256"));
    }

    @Test
    void the_audit_comes_in_pages() {
        String[] bearer = RunningService.bearer(service.token("admin", TokenScope.ADMIN));
        service.token("second", TokenScope.READ);
        service.token("third", TokenScope.READ);
        JsonNode first = service.get("/v1/audit?page_size=2", bearer).json();
        JsonNode second = service.get("/v1/audit?page_size=2&cursor=" + first.path("next").asText(), bearer).json();
        assertThat(first.path("items").findValuesAsText("row")).containsExactly("1", "2");
        assertThat(second.path("items").findValuesAsText("row")).containsExactly("3");
        assertThat(second.path("next").isNull()).isTrue();
    }

    @Test
    void the_token_may_come_as_bearer_in_any_case_or_as_the_password_of_any_user() {
        String token = service.token("reader", TokenScope.READ);
        byte[] latin = ("m\u00FCller:" + token).getBytes(StandardCharsets.ISO_8859_1);
        for (String field : new String[] {"Bearer " + token, "bearer   " + token, basic("", token), basic("excel", token),
            basic("a", token).replace("=", ""), basic("excel", token).replace("Basic", "bASIC  "),
            basic("\u94F6".repeat(1000), token), "Basic " + Base64.getEncoder().encodeToString(latin)}) {
            assertThat(service.get("/v1/samples", "Authorization", field).status()).as(field).isEqualTo(200);
        }
    }

    @Test
    void nothing_else_is_taken_for_a_token() {
        String token = service.token("reader", TokenScope.READ);
        for (String field : new String[] {token, "Token " + token, "Digest username=\"x\""}) {
            assertThat(service.get("/v1/samples", "Authorization", field).code()).as(field).isEqualTo("token-missing");
        }
        for (String field : new String[] {"Bearer", "Bearer ", "Basic " + token, "Basic %%%", basic(token, ""),
            basic("anna:", token), basic("anna", token + " "), basic("anna", token) + ", Basic x",
            "Basic " + Base64.getEncoder().encodeToString(("a:" + token).getBytes(StandardCharsets.UTF_16))}) {
            Reply reply = service.get("/v1/samples", "Authorization", field);
            assertThat(reply.code()).as(field).isEqualTo("token-rejected");
            assertThat(reply.text()).doesNotContain(token);
        }
        Reply two = service.get("/v1/samples", "Authorization", "Bearer " + token, "Authorization", "Bearer " + token);
        assertThat(two.code()).isEqualTo("malformed-request");
    }

    @Test
    void a_token_in_the_address_is_no_token() {
        String token = service.token("reader", TokenScope.READ);
        for (String name : new String[] {"token", "access_token", "api_key", "ticket"}) {
            assertThat(service.get("/v1/samples?" + name + "=" + token).code()).isEqualTo("token-missing");
            Reply reply = service.get("/v1/samples?" + name + "=" + token, RunningService.bearer(token));
            assertThat(reply.code()).isEqualTo("unknown-parameter");
            assertThat(reply.text()).doesNotContain(token);
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "{\"scopes\": [\"read\"]} | malformed-json    | /name",
        "{\"name\": \"x\"} | malformed-json    | /scopes",
        "{\"name\": \"x\", \"scopes\": [\"reed\"]} | value-out-of-range | /scopes/0",
        "{\"name\": \"x\", \"scopes\": \"read\"} | malformed-json    | /scopes",
        "{\"name\": 7, \"scopes\": [\"read\"]} | malformed-json    | /name",
        "{\"name\": \"x\", \"scopes\": [\"read\"], \"expires_time\": \"2027-01-31T00:00:00\"}  | time-without-zone | /expires_time",
        "{\"name\": \"x\", \"scopes\": [\"read\"], \"expires_time\": \"soon\"} | value-out-of-range | /expires_time",
        "{\"name\": \"x\", \"scopes\": [\"read\"], \"admin\": true} | unknown-parameter | /admin"})
    void a_body_that_does_not_say_what_token_is_refused_at_its_place(String body, String code, String pointer) {
        Reply reply = make(body);
        assertThat(reply.code()).isEqualTo(code);
        assertThat(reply.json().path("errors").path(0).path("pointer").asText()).isEqualTo(pointer);
    }

    @Test
    void a_token_that_cannot_be_is_refused() {
        assertThat(make("{\"name\": \"x\", \"scopes\": []}").code()).isEqualTo("value-out-of-range");
        assertThat(make("{\"name\": \"\", \"scopes\": [\"read\"]}").code()).isEqualTo("name-invalid");
        assertThat(make("{\"name\": \"x\", \"scopes\": [\"read\"], \"expires_time\": \"2020-01-01T00:00:00Z\"}").code())
            .isEqualTo("value-out-of-range");
        assertThat(service.get("/v1/samples").status()).isEqualTo(200);
    }

    @Test
    void said_aloud_nobody_needs_a_token() {
        try (RunningService other = RunningService.start(ServerSettings.DEFAULT.withAccess(new AccessRules(true,
            TrustedProxies.NONE)))) {
            other.token("reader", TokenScope.READ);
            assertThat(other.put("/v1/samples/A7", SAMPLE).status()).isEqualTo(201);
            assertThat(other.get("/v1/samples/A7/revisions").json().path("items").path(0).path("changed_by").asText())
                .isEqualTo("anyone");
        }
    }

    @Test
    void a_sample_read_with_a_token_is_not_kept_for_those_without() {
        Optional<String> vary = service.get("/v1/samples", RunningService.bearer(service.token("reader",
            TokenScope.READ))).header("Vary");
        assertThat(vary).hasValue("Accept, Authorization");
    }
}
