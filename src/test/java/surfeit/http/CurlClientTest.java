package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.lab.TokenScope;

/** The curl script of {@code shared/clients} against the service. */
class CurlClientTest {
    @TempDir
    Path folder;
    private RunningService service;

    @BeforeEach
    void start() throws IOException {
        ClientRun.needs("curl");
        ClientRun.needs("sh");
        service = RunningService.start();
        Files.writeString(folder.resolve("powder.csv"), InventedPowder.WIDE);
        Files.writeString(folder.resolve("etched.csv"), InventedPowder.ETCHED);
        Files.writeString(folder.resolve("sample.json"), "{\"alloy\": \"ag-cu-eutectic\"}");
    }

    @AfterEach
    void stop() {
        if (service != null) {
            service.close();
        }
    }

    private ClientRun curl(Map<String, String> environment, String... words) throws Exception {
        List<String> all = new ArrayList<>(List.of("sh", ClientRun.CLIENTS.resolve("curl.sh").toString()));
        all.addAll(List.of(words));
        Map<String, String> where = new java.util.HashMap<>(Map.of("SURFEIT_URL", service.server().address()));
        where.putAll(environment);
        return ClientRun.of(folder, where, all);
    }

    private String answer(String... words) throws Exception {
        ClientRun run = curl(Map.of(), words);
        assertThat(run.code()).as(run.out()).isZero();
        return run.out();
    }

    @Test
    void a_table_is_asked_recorded_answered_compared_and_frozen() throws Exception {
        assertThat(answer("ask", "powder.csv", "ag-cu-eutectic")).contains("dark patch").contains("Cu enriched");
        answer("describe", "lot-7", "sample.json");
        assertThat(answer("post", "lot-7", "powder.csv")).contains("\"accepted_count\":9");
        assertThat(answer("post", "lot-7", "powder.csv")).contains("\"unchanged_count\":9");
        assertThat(answer("answer", "lot-7")).startsWith("# Sample lot-7").contains("Cu enriched");
        assertThat(answer("answer", "lot-7", "csv")).contains("dark patch,");
        answer("describe", "lot-7-etched", "sample.json");
        answer("post", "lot-7-etched", "etched.csv");
        assertThat(answer("compare", "lot-7", "lot-7-etched")).contains("dark patch, gone");
        assertThat(answer("freeze", "lot-7")).contains("\"id\":\"int_0001\"");
        assertThat(answer("results", "lot-7").lines()).hasSize(1 + 2 * 9);
    }

    @Test
    void a_refusal_is_printed_and_shows_in_the_exit_code() throws Exception {
        ClientRun run = curl(Map.of(), "post", "no-such", "powder.csv");

        assertThat(run.code()).isEqualTo(22);
        assertThat(run.out()).contains("\"code\":\"not-found\"");
        assertThat(curl(Map.of()).code()).isEqualTo(2);
    }

    @Test
    void a_token_is_shown_and_never_stands_among_the_words_of_the_command() throws Exception {
        String token = service.token("curl", TokenScope.READ);

        assertThat(curl(Map.of(), "results").out()).contains("\"code\":\"token-missing\"");
        assertThat(curl(Map.of("SURFEIT_TOKEN", token), "results").out()).startsWith("sample,spot,");
        assertThat(Files.readString(ClientRun.CLIENTS.resolve("curl.sh"))).doesNotContain("-H \"Authorization");
    }
}
