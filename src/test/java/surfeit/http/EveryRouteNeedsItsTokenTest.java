package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import surfeit.lab.TokenScope;

/**
 * Every address of the route table, asked without a token, with a token for everything else, and with the right one.
 */
class EveryRouteNeedsItsTokenTest {
    /** A token for one scope alone, and one for all but that scope. */
    private static final Map<TokenScope, String> ONLY = new EnumMap<>(TokenScope.class);
    private static final Map<TokenScope, String> ALL_BUT = new EnumMap<>(TokenScope.class);
    private static RunningService service;

    @BeforeAll
    static void start() {
        service = RunningService.start(
            ServerSettings.DEFAULT.withRequests(RequestLimits.DEFAULT.withRequestsPerSecond(100_000)));
        service.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
        for (TokenScope scope : TokenScope.values()) {
            ONLY.put(scope, service.token("only " + scope.word(), scope));
            ALL_BUT.put(scope, service.token("all but " + scope.word(),
                Arrays.stream(TokenScope.values()).filter(other -> other != scope).toArray(TokenScope[]::new)));
        }
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    static Stream<String> addresses() {
        return table().routes().stream().flatMap(route -> route.paths().stream()
            .map(path -> route.method() + " " + path));
    }

    private static RouteTable table() {
        try (RunningService other = RunningService.start()) {
            return RunningService.routes(other.laboratory());
        }
    }

    private static Scope scope(String method, String path) {
        return RunningService.routes(service.laboratory()).routes().stream()
            .filter(route -> route.method().equals(method) && route.paths().contains(path)).findFirst().orElseThrow()
            .scope();
    }

    private static Reply ask(String method, String path, String... headers) {
        String address = path.replace("{sample}", "A7").replace("{n}", "1").replace("{symbol}", "Cu")
            .replace("{alloy}", "ag-cu-eutectic")
            .replace("{code}", "internal").replace("{file}", "board.css").replace("<path>", "README.md")
            .replaceAll("\\{[^}]+}", "xyz_0001");
        return service.send(method, address, new byte[0], headers);
    }

    @ParameterizedTest
    @MethodSource("addresses")
    void the_address_answers_only_to_a_token_with_its_scope(String address) {
        String method = address.substring(0, address.indexOf(' '));
        String path = address.substring(address.indexOf(' ') + 1);
        Scope declared = scope(method, path);
        Reply without = ask(method, path);
        if (declared.needed().isEmpty()) {
            assertThat(without.status()).isLessThan(400);
            return;
        }
        TokenScope needed = declared.needed().get();
        assertThat(without.status()).isEqualTo(401);
        assertThat(without.code()).isEqualTo("token-missing");
        assertThat(without.headers().allValues("WWW-Authenticate"))
            .containsExactly("Bearer realm=\"surfeit\"", "Basic realm=\"surfeit\", charset=\"UTF-8\"");

        Reply others = ask(method, path, RunningService.bearer(ALL_BUT.get(needed)));
        assertThat(others.status()).isEqualTo(403);
        assertThat(others.code()).isEqualTo("scope-missing");
        assertThat(others.headers().allValues("WWW-Authenticate"))
            .containsExactly("Bearer realm=\"surfeit\", error=\"insufficient_scope\", scope=\"" + needed.word() + "\"");

        if (method.equals("GET")) {
            assertThat(ask("HEAD", path).status()).isEqualTo(401);
            assertThat(ask("HEAD", path, RunningService.bearer(ALL_BUT.get(needed))).status()).isEqualTo(403);
        }
        Reply right = ask(method, path, RunningService.bearer(ONLY.get(needed)));
        assertThat(right.status()).isNotIn(401, 403, 429, 500);
    }

    @Test
    void asking_for_the_head_alone_needs_the_same_token() {
        assertThat(ask("HEAD", "/v1/samples").status()).isEqualTo(401);
        assertThat(ask("HEAD", "/v1/samples", RunningService.bearer(ALL_BUT.get(TokenScope.READ))).status())
            .isEqualTo(403);
        assertThat(ask("HEAD", "/v1/samples", RunningService.bearer(ONLY.get(TokenScope.READ))).status())
            .isEqualTo(200);
    }

    @Test
    void a_route_without_a_scope_cannot_be_made() {
        assertThatThrownBy(() -> Route.get("/v1/secret", null).to(exchange -> { }))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("needs a scope");
    }

    @Test
    void only_what_tells_nothing_of_the_lab_s_work_is_open() {
        assertThat(table().routes().stream().filter(route -> route.scope() == Scope.OPEN).map(Route::path))
            .containsExactlyInAnyOrder(
            "/v1", "/docs", "/openapi.json", "/openapi.yaml", "/shared", "/shared/<path>", "/healthz", "/readyz",
            "/v1/problems",
            "/v1/problems/{code}", "/", "/board/{file}");
    }

    @Test
    void the_document_says_of_every_operation_how_to_show_a_token_and_how_it_is_refused() {
        for (OpenApi.Operation operation : OpenApi.DOCUMENT.operations()) {
            String scope = operation.node().path("x-scope").asText();
            String expected = scope.equals("open") ? "[]" : "[{\"bearer\":[]},{\"basic\":[]}]";
            assertThat(operation.node().path("security")).as(operation.method() + " " + operation.path())
                .hasToString(expected);
            if (!scope.equals("open")) {
                assertThat(operation.node().path("responses").has("401") && operation.node().path("responses")
                    .has("403")
                    && operation.node().path("responses").has("429")).as(operation.path() + " tells how it is refused")
                    .isTrue();
            }
        }
    }
}
