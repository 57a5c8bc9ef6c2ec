package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.OutputStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** How far an upload has come that was given a name; invented tables. */
class UploadProgressTest {
    private static final String SPOTS = "/v1/samples/A7/spots";
    private RunningService service;

    @BeforeEach
    void start() {
        service = RunningService.start();
        service.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
    }

    @AfterEach
    void stop() {
        service.close();
    }

    private static String table(int rows) {
        StringBuilder table = new StringBuilder("label,Ag at%,Cu at%\n");
        for (int i = 0; i < rows; i++) {
            table.append("P1-").append(i).append(",60.1,39.9\n");
        }
        return table.toString();
    }

    private JsonNode progress(String name) {
        return service.get("/v1/imports/" + name).json();
    }

    @Test
    void while_it_runs_the_count_grows_and_in_the_end_it_leads_to_the_report() throws Exception {
        int rows = 200_000;
        CompletableFuture<Reply> answer = CompletableFuture.supplyAsync(() ->
            service.post(SPOTS + "?import=monday", "text/csv", table(rows)));
        long seen = 0;
        String before = "receiving";
        int growing = 0;
        while (!answer.isDone()) {
            Reply reply = service.get("/v1/imports/monday");
            if (reply.status() == 200) {
                JsonNode now = reply.json();
                String state = now.path("state").asText();
                assertThat(state).isIn("receiving", "running", "recorded");
                seen = state.equals(before) ? seen : 0; // one that came too slowly begins again when it is there
                before = state;
                assertThat(now.path("spot_count").asLong()).isBetween(seen, (long) rows);
                growing += now.path("spot_count").asLong() > seen && !state.equals("recorded") ? 1 : 0;
                seen = now.path("spot_count").asLong();
            }
            Thread.sleep(5);
        }
        assertThat(answer.get(1, TimeUnit.SECONDS).status()).isEqualTo(201);
        assertThat(growing).as("times a further count was seen while it ran").isGreaterThan(1);
        JsonNode over = progress("monday");
        assertThat(over.path("state").asText()).isEqualTo("recorded");
        assertThat(over.path("spot_count").asLong()).isEqualTo(rows);
        JsonNode report = service.get(over.path("links").path("report").asText()).json();
        assertThat(report.path("accepted_count").asLong()).isEqualTo(rows);
    }

    @Test
    void the_end_says_what_became_of_it() {
        service.post(SPOTS + "?import=a", "text/csv", table(3), "Idempotency-Key", "k");
        assertThat(progress("a").path("state").asText()).isEqualTo("recorded");
        service.post(SPOTS + "?import=a", "text/csv", table(3), "Idempotency-Key", "k");
        assertThat(progress("a").path("state").asText()).isEqualTo("repeated");
        service.post(SPOTS + "?import=a", "text/csv", table(3));
        assertThat(progress("a").path("state").asText()).isEqualTo("unchanged");
        service.post(SPOTS + "?import=a&validate_only=true", "text/csv", table(4));
        assertThat(progress("a").path("state").asText()).isEqualTo("checked");
        assertThat(service.post(SPOTS + "?import=a", "text/csv", "label,Ag at%,Cu at%\nx,1,?\n").status())
            .isEqualTo(422);
        assertThat(progress("a").path("state").asText()).isEqualTo("refused");
    }

    @Test
    void a_name_is_taken_while_its_upload_runs_and_must_be_one() throws Exception {
        try (Socket slow = new Socket("127.0.0.1", service.server().port())) {
            OutputStream out = slow.getOutputStream();
            out.write(("POST " + SPOTS + "?import=slow HTTP/1.1\r\nHost: localhost\r\nContent-Type: text/csv\r\n"
                + "Content-Length: 100\r\n\r\nlabel").getBytes(StandardCharsets.US_ASCII));
            out.flush();
            for (int i = 0; i < 100 && service.get("/v1/imports/slow").status() == 404; i++) {
                Thread.sleep(20);
            }
            assertThat(progress("slow").path("state").asText()).isEqualTo("receiving");
            assertThat(service.post(SPOTS + "?import=slow", "text/csv", table(1)).code()).isEqualTo("name-invalid");
        }
        for (int i = 0; i < 100 && !progress("slow").path("state").asText().equals("refused"); i++) {
            Thread.sleep(20);
        }
        assertThat(progress("slow").path("state").asText()).isEqualTo("refused");
        assertThat(service.post(SPOTS + "?import=slow", "text/csv", table(1)).status()).isEqualTo(201);
        for (String wrong : new String[] {"imp_0001", "..", "a%20b", ""}) {
            assertThat(service.post(SPOTS + "?import=" + wrong, "text/csv", table(1)).code()).isEqualTo("name-invalid");
        }
        assertThat(service.get("/v1/imports/never").code()).isEqualTo("not-found");
    }

    @Test
    void only_the_last_hundred_that_are_over_are_known() {
        for (int i = 0; i <= 102; i++) {
            service.post(SPOTS + "?import=n" + i, "text/csv", table(1));
        }
        assertThat(service.get("/v1/imports/n0").status()).isEqualTo(404);
        assertThat(service.get("/v1/imports/n1").status()).isEqualTo(404);
        assertThat(service.get("/v1/imports/n2").status()).isEqualTo(200);
        assertThat(service.get("/v1/imports/n102").status()).isEqualTo(200);
    }
}
