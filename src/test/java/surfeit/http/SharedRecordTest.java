package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import surfeit.lab.TokenScope;
import surfeit.storage.RecordEngine;

/** Two services on one database: neither contradicts the other. */
class SharedRecordTest {
    private static final String ALLOY = "{\"alloy\": \"ag-cu-eutectic\"}";

    private RunningService first;
    private RunningService second;

    @BeforeEach
    void start() {
        first = RunningService.start(RecordEngine.POSTGRESQL);
        second = RunningService.beside(first, RecordEngine.POSTGRESQL);
    }

    @AfterEach
    void stop() {
        second.close();
        first.close();
    }

    @Test
    void the_same_request_sent_to_both_at_once_is_done_once_and_answered_alike() throws Exception {
        first.put("/v1/samples/A7", ALLOY);
        ExecutorService senders = Executors.newFixedThreadPool(8);
        try {
            for (int n = 0; n < 10; n++) {
                String body = "label,Ag at%,Cu at%\na" + n + ",21.2,78.8\nb" + n + ",22.2,77.8\n";
                String key = "key-" + n;
                List<Future<Reply>> answers = new ArrayList<>();
                for (int i = 0; i < 8; i++) {
                    RunningService service = i % 2 == 0 ? first : second;
                    answers.add(senders.submit((Callable<Reply>) () ->
                        service.post("/v1/samples/A7/spots", "text/csv", body, "Idempotency-Key", key)));
                }
                String answer = answers.get(0).get().text();
                for (Future<Reply> each : answers) {
                    assertThat(each.get().status()).isEqualTo(201);
                    assertThat(each.get().text()).isEqualTo(answer);
                }
            }
        } finally {
            senders.shutdownNow();
        }
        assertThat(second.get("/v1/samples/A7/spots").json().path("items")).hasSize(20);
    }

    @Test
    void a_token_made_or_taken_back_through_one_holds_for_the_other_from_that_moment() {
        assertThat(second.get("/v1/samples").status()).as("nobody is asked for a token yet").isEqualTo(200);
        String admin = first.token("boss", TokenScope.ADMIN, TokenScope.READ);

        assertThat(second.get("/v1/samples").code()).isEqualTo("token-missing");
        assertThat(second.get("/v1/samples", RunningService.bearer(admin)).status()).isEqualTo(200);
        String bench = second.token("bench", TokenScope.READ);
        assertThat(first.get("/v1/samples", RunningService.bearer(bench)).status()).isEqualTo(200);

        second.send("DELETE", "/v1/tokens/tok_0002", new byte[0], RunningService.bearer(admin));

        assertThat(first.get("/v1/samples", RunningService.bearer(bench)).code()).isEqualTo("token-rejected");
    }

    @Test
    void a_ticket_taken_from_one_opens_one_stream_of_the_other() {
        String token = first.token("anna", TokenScope.READ);
        String ticket = first.send("POST", "/v1/event-tickets", new byte[0], RunningService.bearer(token)).json()
            .path("ticket").asText();
        String address = "/v1/events?after=0&wait_s=0&ticket=" + ticket;

        assertThat(second.get(address, "Accept", "application/json").status()).isEqualTo(200);
        assertThat(second.get(address, "Accept", "application/json").code()).isEqualTo("token-rejected");
        assertThat(first.get(address, "Accept", "application/json").code()).isEqualTo("token-rejected");
    }

    @Test
    void what_one_recorded_the_other_answers_with_and_its_etag_changes() {
        first.put("/v1/samples/A7", ALLOY);
        String before = second.get("/v1/samples/A7").etag();
        assertThat(first.get("/v1/samples/A7").etag()).isEqualTo(before);

        first.post("/v1/samples/A7/spots", "text/csv", "label,Ag at%,Cu at%\n1,21.2,78.8\n");

        assertThat(second.get("/v1/samples/A7", "If-None-Match", before).status()).isEqualTo(200);
        assertThat(second.get("/v1/samples/A7/segregation", "If-None-Match",
            first.get("/v1/samples/A7/segregation").etag()).status()).isEqualTo(304);
    }
}
