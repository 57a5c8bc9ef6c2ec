package surfeit.http;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.http.HttpHeaders;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The check that all other tests lean on: it lets a right answer through and bites at wrong ones. */
class AnswerCheckTest {
    private static final String RIGHT = "{\"status\": \"ok\"}";

    @Test
    void a_right_answer_passes() {
        assertThatCode(() -> check("GET", "/healthz", 200, "application/json", RIGHT)).doesNotThrowAnyException();
    }

    @Test
    void a_value_outside_its_words_is_caught() {
        assertThatThrownBy(() -> check("GET", "/healthz", 200, "application/json", "{\"status\": \"fine\"}"))
            .isInstanceOf(AssertionError.class).hasMessageContaining("status");
    }

    @Test
    void a_missing_key_is_caught() {
        assertThatThrownBy(() -> check("GET", "/healthz", 200, "application/json", "{}"))
            .isInstanceOf(AssertionError.class);
    }

    @Test
    void an_undocumented_key_is_caught() {
        assertThatThrownBy(() -> check("GET", "/healthz",
            200, "application/json", "{\"status\": \"ok\", \"mood\": \"good\"}"))
            .isInstanceOf(AssertionError.class).hasMessageContaining("mood");
    }

    @Test
    void a_value_of_another_kind_is_caught_deep_inside() {
        String page = "{\"items\": [{\"path\": \"/shared/a\", \"sha256\": 5}], \"next\": null}";
        assertThatThrownBy(() -> check("GET", "/shared", 200, "application/json", page))
            .isInstanceOf(AssertionError.class).hasMessageContaining("sha256");
    }

    @Test
    void an_undeclared_media_type_status_route_or_header_is_caught() {
        assertThatThrownBy(() -> check("GET", "/healthz", 200, "text/plain", "ok")).hasMessageContaining("media type");
        assertThatThrownBy(() -> check("GET", "/healthz", 418, "application/json", RIGHT))
            .hasMessageContaining("status");
        assertThatThrownBy(() -> check("GET", "/nowhere", 200, "application/json", RIGHT))
            .hasMessageContaining("route");
        HttpHeaders headers = HttpHeaders.of(Map.of("Content-Type", List.of("application/json"), "Location",
            List.of("/x")), (a, b) -> true);
        assertThatThrownBy(() -> AnswerCheck.check("GET", "/healthz", new Reply(200, headers,
            RIGHT.getBytes(StandardCharsets.UTF_8))))
            .hasMessageContaining("Location");
    }

    @Test
    void a_missing_header_is_caught() {
        HttpHeaders headers = HttpHeaders.of(Map.of("Content-Type", List.of("application/json")), (a, b) -> true);
        assertThatThrownBy(() -> AnswerCheck.check("GET", "/healthz", new Reply(200, headers, RIGHT.getBytes(StandardCharsets.UTF_8))))
            .hasMessageContaining("Cache-Control");
    }

    private static void check(String method, String address, int status, String mediaType, String body) {
        HttpHeaders headers = HttpHeaders.of(Map.of("Content-Type", List.of(mediaType), "Cache-Control", List.of("no-store")),
            (name, value) -> true);
        AnswerCheck.check(method, address, new Reply(status, headers, body.getBytes(StandardCharsets.UTF_8)));
    }
}
