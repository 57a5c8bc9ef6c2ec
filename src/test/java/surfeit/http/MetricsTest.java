package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.http.ExpositionFormat.Sample;
import surfeit.lab.TokenScope;

/** What the service counts of itself. */
class MetricsTest {
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

    private List<Sample> metrics() {
        return ExpositionFormat.read(service.get("/metrics").text());
    }

    /** A request is counted when its last byte is sent, which its client may see a moment earlier. */
    private double awaited(String name, Map<String, String> labels,
        Predicate<Double> wanted) throws InterruptedException {
        double value = Double.NaN;
        for (int i = 0; i < 100 && !wanted.test(value); i++) {
            Thread.sleep(20);
            value = metrics().stream().filter(sample -> sample.name().equals(name)
                && sample.labels().entrySet().containsAll(labels.entrySet())).mapToDouble(Sample::value).sum();
        }
        return value;
    }

    @Test
    void the_answer_is_in_the_text_format_and_holds_what_a_dashboard_needs() {
        Reply reply = service.get("/metrics", "Accept", "application/openmetrics-text;version=1.0.0;q=0.5,"
            + "text/plain;version=0.0.4;q=0.4,*/*;q=0.1");
        assertThat(reply.header("Content-Type")).hasValue("text/plain; version=0.0.4; charset=utf-8");
        Set<String> names = ExpositionFormat.read(reply.text()).stream().map(Sample::name).collect(Collectors.toSet());
        assertThat(names).contains("surfeit_build_info", "surfeit_open_streams", "surfeit_event_lag_seconds",
            "surfeit_imports_total", "surfeit_import_spots_total", "surfeit_store_bytes", "surfeit_last_event_id",
            "jvm_memory_used_bytes", "jvm_threads", "jvm_gc_collections_total", "process_cpu_seconds_total",
            "process_start_time_seconds");
    }

    @Test
    void requests_are_counted_by_route_method_and_class_of_status_with_how_long_they_took() throws Exception {
        service.get("/v1/samples/A7");
        service.get("/v1/samples/A8");
        service.get("/v1/samples/A9");
        service.send("HEAD", "/v1/samples/A7", new byte[0]);
        Map<String, String> get = Map.of("route", "/v1/samples/{sample}", "method", "GET");
        assertThat(awaited("surfeit_http_request_duration_seconds_count", get, value -> value == 3)).isEqualTo(3);
        assertThat(awaited("surfeit_http_requests_total", Map.of("route", "/v1/samples/{sample}", "method", "GET",
            "status_class", "4xx"), value -> value == 2)).isEqualTo(2);
        assertThat(awaited("surfeit_http_requests_total", Map.of("route", "/v1/samples/{sample}", "method", "HEAD",
            "status_class", "2xx"), value -> value == 1)).isEqualTo(1);
    }

    @Test
    void what_clients_make_up_makes_no_label() throws Exception {
        for (int i = 0; i < 50; i++) {
            service.get("/v1/invented-" + i);
            service.get("/v1/samples/sample-" + i + "/segregation.xyz" + i);
            service.get("/v1/shared/" + i + "?x=" + i);
        }
        try (RawRequest request = new RawRequest(service)) {
            request.send("BREW /v1/pot HTTP/1.1\r\nHost: localhost\r\n\r\n").answer();
        }
        try (RawRequest request = new RawRequest(service)) {
            request.send("GET /v1/%zz HTTP/1.1\r\nHost: localhost\r\n\r\n").answer();
        }
        assertThat(awaited("surfeit_http_requests_total", Map.of("route", "none"), value -> value == 152))
            .isEqualTo(152);
        Set<String> routes = RunningService.routes(service.laboratory()).routes().stream().map(Route::pattern)
            .collect(Collectors.toSet());
        routes.add("none");
        List<Sample> requests = metrics().stream().filter(sample -> sample.name().startsWith("surfeit_http")).toList();
        assertThat(requests).extracting(sample -> sample.labels().get("route")).isSubsetOf(routes);
        assertThat(requests).extracting(sample -> sample.labels().get("method"))
            .isSubsetOf("GET", "HEAD", "PUT", "POST", "DELETE", "OPTIONS", "other");
        assertThat(requests).filteredOn(sample -> sample.labels().containsKey("status_class"))
            .extracting(sample -> sample.labels().get("status_class")).isSubsetOf("2xx", "3xx", "4xx", "5xx");
    }

    @Test
    void uploads_and_spots_open_streams_and_the_record_are_counted() throws Exception {
        String table = "label,Ag at%,Cu at%\nP1-1,21.2,78.8\nP1-2,22.0,78.0\n";
        service.post("/v1/samples/A7/spots", "text/csv", table);
        service.post("/v1/samples/A7/spots", "text/csv", table);
        service.post("/v1/samples/A7/spots?validate_only=true", "text/csv", table);
        service.post("/v1/samples/A7/spots", "text/csv", "label,Ag at%\nP1-3,x\n");
        assertThat(metrics()).contains(new Sample("surfeit_imports_total", Map.of("outcome", "recorded"), 1),
            new Sample("surfeit_imports_total", Map.of("outcome", "unchanged"), 1),
            new Sample("surfeit_imports_total", Map.of("outcome", "refused"), 1),
            new Sample("surfeit_import_spots_total", Map.of("outcome", "accepted"), 2),
            new Sample("surfeit_import_spots_total", Map.of("outcome", "unchanged"), 2),
            new Sample("surfeit_last_event_id", Map.of(), 2));
        assertThat(awaited("surfeit_store_bytes", Map.of(), value -> value > 4096)).isGreaterThan(4096);
        try (EventClient client = EventClient.open(service, "")) {
            client.next();
            assertThat(awaited("surfeit_open_streams", Map.of(), value -> value == 1)).isEqualTo(1);
        }
    }

    @Test
    void the_scope_metrics_is_needed_and_enough() {
        String token = service.token("collector", TokenScope.METRICS);
        assertThat(service.get("/metrics").code()).isEqualTo("token-missing");
        assertThat(service.get("/metrics", RunningService.bearer(token)).status()).isEqualTo(200);
        assertThat(service.get("/v1/samples", RunningService.bearer(token)).code()).isEqualTo("scope-missing");
    }

    @ParameterizedTest
    @ValueSource(strings = {"# TYPE a counter\na 1", "# TYPE a counter\na{b=\"c\"d=\"e\"} 1\n",
        "# TYPE a counter\na -1\n",
        "# TYPE a counter\nb 1\n", "# TYPE a counter\na 1\na 1\n", "# TYPE a gauge\n# TYPE b gauge\n# TYPE a gauge\n",
        "# TYPE a histogram\na_bucket{le=\"1\"} 2\na_bucket{le=\"+Inf\"} 1\na_sum 1\na_count 1\n",
        "# TYPE a histogram\na_bucket{le=\"1\"} 1\na_sum 1\na_count 1\n", "# TYPE 1a gauge\n1a 1\n"})
    void the_reader_of_this_test_refuses_what_breaks_the_format(String text) {
        assertThatThrownBy(() -> ExpositionFormat.read(text)).isInstanceOf(AssertionError.class);
    }
}
