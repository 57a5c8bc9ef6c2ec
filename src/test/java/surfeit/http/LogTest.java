package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import surfeit.lab.TokenScope;

/** Neither tokens nor what was sent gets into the log, whatever goes wrong. */
class LogTest {
    private static final String WORD = "quetzalcoatlus";

    private final PrintStream before = System.err;
    private final ByteArrayOutputStream log = new ByteArrayOutputStream();

    @BeforeEach
    void capture() {
        System.setErr(new PrintStream(log, true, StandardCharsets.UTF_8));
    }

    @AfterEach
    void release() {
        System.setErr(before);
    }

    private String log() {
        return log.toString(StandardCharsets.UTF_8);
    }

    @Test
    void requests_of_every_kind_leave_neither_token_nor_body_in_the_log() throws IOException {
        try (RunningService service = RunningService.start()) {
            String token = service.token("bench", TokenScope.READ, TokenScope.WRITE, TokenScope.ADMIN);
            String wrong = "lab_" + WORD + "x".repeat(43 - WORD.length());
            String[] bearer = RunningService.bearer(token);
            service.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\", \"description\": \"" + WORD + "\"}", bearer);
            service.put("/v1/samples/A7", "{\"alloy\": \"" + WORD, bearer);
            service.post("/v1/samples/A7/spots", "text/csv", "label,Ag at%,Cu at%\n" + WORD + ",1,x\n", bearer);
            service.post("/v1/interpretations", "application/json", "{\"" + WORD + "\": 1}", bearer);
            String made = service.post("/v1/tokens", "application/json",
                "{\"name\": \"other\", \"scopes\": [\"read\"]}", bearer).json()
                .path("token").asText();
            for (int i = 0; i < 7; i++) {
                service.get("/v1/samples?q=" + WORD, RunningService.bearer(wrong));
            }
            service.get("/v1/samples?token=" + token);
            service.get("/v1/" + token);
            for (String line : new String[] {"GET /v1/samples?q=" + token + "a".repeat(20_000) + " HTTP/1.1",
                "GET /%zz?t=" + token + " HTTP/1.1"}) {
                try (RawRequest request = new RawRequest(service)) {
                    request.send(line + "\r\nHost: 127.0.0.1\r\nAuthorization: Bearer " + token + "\r\n\r\n").answer();
                }
            }
            try (RawRequest request = new RawRequest(service)) {
                request.head("POST", "/v1/samples/A7/spots", "text/csv", 1000, "Authorization: Bearer " + token)
                    .send("label," + WORD);
            }
            assertThat(log()).contains("6 tokens in a row from 127.0.0.1 were not valid");
            assertThat(log()).doesNotContain(WORD).doesNotContain(token.substring(4)).doesNotContain(made.substring(4));
        }
    }
}
