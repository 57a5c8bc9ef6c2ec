package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The clients that no test can run ask only for what the service has: columns and addresses. */
class ClientColumnsTest {
    private static RunningService service;
    private static List<String> columns;

    @BeforeAll
    static void start() {
        service = RunningService.start();
        columns = List.of(service.get("/v1/results.csv").text().strip().split(","));
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    private static String client(String name) throws IOException {
        return Files.readString(ClientRun.CLIENTS.resolve(name));
    }

    @Test
    void the_spreadsheet_query_types_every_number_of_the_results_and_nothing_else() throws IOException {
        String numbers = client("results.pq").replaceAll("(?s).*Numbers = \\{(.*?)}.*", "$1");
        List<String> typed = Pattern.compile("\"([a-z_]+)\"").matcher(numbers).results().map(name -> name.group(1))
            .toList();
        assertThat(columns).containsAll(typed);
        assertThat(typed).contains("revision").containsAll(columns.stream()
            .filter(name -> name.matches("p_value.*|.*(_percent|_percent_u|_kev|_factor)")).toList());
    }

    @Test
    void the_dashboard_asks_for_columns_the_results_have() throws IOException {
        JsonNode dashboard = new ObjectMapper().readTree(client("dashboard.json"));
        List<String> selected = new ArrayList<>();
        dashboard.path("panels").forEach(panel -> panel.path("targets").forEach(target ->
            target.path("columns").forEach(column -> selected.add(column.path("selector").asText()))));
        assertThat(selected).isNotEmpty();
        assertThat(columns).containsAll(selected);
    }

    @Test
    void the_dashboard_asks_for_metrics_and_labels_the_service_has() throws Exception {
        Map<String, Set<String>> served = new HashMap<>();
        // the collector makes this one itself, for every service it asks
        served.put("up", Set.of());
        // a request is counted when its last byte is sent, which its client may see a moment earlier
        for (int i = 0; i < 100 && !served.containsKey("surfeit_http_requests_total"); i++) {
            Thread.sleep(20);
            ExpositionFormat.read(service.get("/metrics").text()).forEach(sample ->
                served.put(sample.name(), sample.labels().keySet()));
        }
        List<String> asked = new ArrayList<>();
        for (JsonNode panel : new ObjectMapper().readTree(client("dashboard.json")).path("panels")) {
            for (JsonNode target : panel.path("targets")) {
                List<String> metrics = matches("([a-z_]+)\\{", target.path("expr").asText());
                assertThat(metrics).as(target.path("expr").asText()).hasSizeLessThanOrEqualTo(1);
                asked.addAll(metrics);
                for (String metric : metrics) {
                    assertThat(served).containsKey(metric);
                    Set<String> known = new HashSet<>(served.get(metric));
                    // what the collector adds to every sample
                    known.add("job");
                    String query = target.path("expr").asText();
                    assertThat(known).as(query).containsAll(matches("([a-z_]+)=\"", query))
                        .containsAll(matches("by \\(([a-z_]+)\\)", query))
                        .containsAll(matches("\\{\\{([a-z_]+)}}", target.path("legendFormat").asText()));
                }
            }
        }
        assertThat(asked).contains("up").anyMatch(name -> name.startsWith("jvm_"));
        assertThat(asked).containsAll(served.keySet().stream().filter(name -> name.startsWith("surfeit_"))
            .filter(name -> !name.matches(".*_(sum|count)|surfeit_last_event_id")).toList());
    }

    private static List<String> matches(String pattern, String text) {
        return Pattern.compile(pattern).matcher(text).results().map(found -> found.group(1)).toList();
    }

    @Test
    void every_address_a_client_names_is_one_of_the_service() throws IOException {
        List<String> known = OpenApi.DOCUMENT.operations().stream().map(OpenApi.Operation::path).toList();
        for (String name : List.of("dashboard.json", "results.pq")) {
            Matcher address = Pattern.compile("/?(v1/[a-z/]+(\\.[a-z]+)?)").matcher(client(name));
            assertThat(address.results().map(found -> "/" + found.group(1))).as(name).isNotEmpty()
                .allSatisfy(found -> assertThat(known).contains(found));
        }
        Matcher steps = Pattern.compile("address\\(\"([a-z]+)([./])").matcher(client("SurfeitLab.m"));
        assertThat(steps.results().map(found -> "/v1/" + found.group(1))).isNotEmpty()
            .allSatisfy(found -> assertThat(known).anyMatch(path -> path.startsWith(found)));
    }
}
