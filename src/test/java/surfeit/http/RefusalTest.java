package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import surfeit.lab.Problem;

/** Bad requests: always a refusal with a code, and the record stays as it was. */
class RefusalTest {
    private static final String SPOTS = "/v1/samples/A7/spots";
    private static final String JSON = "application/json";
    private static final String CSV = "text/csv";
    private static RunningService service;
    private static Map<String, Long> rowsBefore;
    private static String answerBefore;

    /** One bad request and the code it must get. */
    private record Bad(String method, String address, String mediaType, byte[] body, String code) {
        Bad(String method, String address, String mediaType, String body, String code) {
            this(method, address, mediaType, body.getBytes(StandardCharsets.UTF_8), code);
        }

        @Override
        public String toString() {
            return method + " " + address + " " + code + " " + new String(body, 0, Math.min(body.length, 60),
                StandardCharsets.UTF_8);
        }
    }

    @BeforeAll
    static void start() throws SQLException {
        service = RunningService.start();
        service.put("/v1/samples/A7", InventedPowder.SAMPLE);
        service.post(SPOTS, CSV, InventedPowder.WIDE);
        rowsBefore = rows();
        answerBefore = service.get("/v1/samples/A7/segregation").text();
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    private static Map<String, Long> rows() throws SQLException {
        Map<String, Long> counts = new TreeMap<>();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + service.folder()
            .resolve("surfeit.db"));
             Statement statement = connection.createStatement()) {
            List<String> tables = new ArrayList<>();
            try (ResultSet names = statement.executeQuery("SELECT name FROM sqlite_master WHERE type = 'table'")) {
                while (names.next()) {
                    tables.add(names.getString(1));
                }
            }
            for (String table : tables) {
                try (ResultSet count = statement.executeQuery("SELECT count(*) FROM \"" + table + "\"")) {
                    counts.put(table, count.getLong(1));
                }
            }
        }
        return counts;
    }

    @ParameterizedTest
    @MethodSource("bad")
    void a_bad_request_gets_a_refusal_with_its_code(Bad bad) {
        Reply reply = service.send(bad.method(), bad.address(), bad.body(), "Content-Type", bad.mediaType());
        assertThat(reply.status()).isBetween(400, 499);
        assertThat(reply.mediaType()).isEqualTo("application/problem+json");
        assertThat(reply.code()).as(reply.text()).isEqualTo(bad.code());
        assertThat(reply.status()).isEqualTo(Problem.ofCode(bad.code()).orElseThrow().status());
        assertThat(reply.text()).doesNotContain("java.", "Exception", "\tat ", "Feature", "INCLUDE_SOURCE", "(code ");
        assertThat(reply.json().path("request_id").asText()).isEqualTo(reply.header("X-Request-Id").orElseThrow());
    }

    @Test
    void after_all_of_them_the_record_is_as_it_was() throws SQLException {
        bad().forEach(bad -> service.send(bad.method(), bad.address(), bad.body(), "Content-Type", bad.mediaType()));
        assertThat(rows()).isEqualTo(rowsBefore);
        assertThat(service.get("/v1/samples/A7/segregation").text()).isEqualTo(answerBefore);
    }

    static Stream<Bad> bad() {
        List<Bad> all = new ArrayList<>();
        addTables(all);
        addJson(all);
        addSamples(all);
        addAddresses(all);
        assertThat(all.size()).isGreaterThanOrEqualTo(50);
        return all.stream();
    }

    private static void addTables(List<Bad> all) {
        all.add(new Bad("POST", SPOTS, CSV, "", "unreadable-table"));
        all.add(new Bad("POST", SPOTS, CSV, "label,Ag at%,Cu at%\n", "unreadable-table"));
        all.add(new Bad("POST", SPOTS, CSV, "nothing here\n1\n2\n", "unreadable-table"));
        all.add(new Bad("POST", SPOTS, CSV, "label,Ag at%,Ag at%\na,1,2\n", "unreadable-table"));
        all.add(new Bad("POST", SPOTS, CSV, "label,Ag at%,Cu at%\na,1,2,3\n", "unreadable-table"));
        all.add(new Bad("POST", SPOTS, CSV, "label,Ag at%,Cu at%\na,\"1,2\n", "unreadable-table"));
        all.add(new Bad("POST", SPOTS, CSV, "label;Ag at%;Cu at%\na;21,2;78.8\n", "mixed-decimal-marks"));
        all.add(new Bad("POST", SPOTS, CSV, "label;Ag at%;Cu at%\na;1.021,2;78,8\n", "mixed-decimal-marks"));
        all.add(new Bad("POST", SPOTS, CSV, "label,Ag,Cu\na,21.2,78.8\n", "unit-missing"));
        all.add(new Bad("POST", SPOTS, CSV, "label,Ag at%,Cu wt%\na,21.2,78.8\n", "unit-missing"));
        all.add(new Bad("POST", SPOTS, CSV, "label,Xx at%,Cu at%\na,21.2,78.8\n", "unknown-element"));
        all.add(new Bad("POST", SPOTS, CSV, "label,Ag at%,Cu at%\na,21.2,788\n", "value-out-of-range"));
        all.add(new Bad("POST", SPOTS, CSV, "label,Ag at%,Cu at%\na,21.2,maybe\n", "value-out-of-range"));
        all.add(new Bad("POST", SPOTS, CSV, "label,Ag at%,Cu at%\n,21.2,78.8\n", "name-invalid"));
        all.add(new Bad("POST", SPOTS,
            CSV, "label,acquired_time,Ag at%,Cu at%\na,2026-11-20 14:03,21.2,78.8\n", "time-without-zone"));
        all.add(new Bad("POST", SPOTS, CSV, "label,Ag at%,Cu at%\na,21.2,78.8\na,21.3,78.7\n", "duplicate-spot"));
        all.add(new Bad("POST", SPOTS,
            CSV, "label,particle,session,Ag at%,Cu at%\nP1-d1,P1,s1,1.2,98.8\n", "spot-already-recorded"));
        all.add(new Bad("POST", SPOTS, CSV, new byte[] {(byte) 0xFF, (byte) 0xFE, 0, 1, 2, 3}, "unreadable-table"));
        all.add(new Bad("POST", SPOTS, "application/x-ndjson", "\n\n", "malformed-json"));
        all.add(new Bad("POST",
            SPOTS, "application/x-ndjson", "{\"label\": \"a\", \"elements\": {\"Ag\": 60, \"Cu\": "
            + "40}}\n", "unit-missing"));
    }

    private static void addJson(List<Bad> all) {
        String one = "{\"unit\": \"at%\", \"spots\": [{\"label\": \"a\", \"elements\": {\"Ag\": 60, \"Cu\": 40}}]}";
        all.add(new Bad("POST", SPOTS, JSON, "", "malformed-json"));
        all.add(new Bad("POST", SPOTS, JSON, "{", "malformed-json"));
        all.add(new Bad("POST", SPOTS, JSON, "[]", "malformed-json"));
        all.add(new Bad("POST", SPOTS, JSON, "null", "malformed-json"));
        all.add(new Bad("POST", SPOTS, JSON, one + "{}", "malformed-json"));
        all.add(new Bad("POST", SPOTS, JSON, one.replace("60", "NaN"), "malformed-json"));
        all.add(new Bad("POST", SPOTS, JSON, one.replace("60", "060"), "malformed-json"));
        all.add(new Bad("POST", SPOTS, JSON, one.replace("60", "true"), "malformed-json"));
        all.add(new Bad("POST", SPOTS, JSON, one.replace("60", "1e400"), "value-out-of-range"));
        all.add(new Bad("POST", SPOTS, JSON, one.replace("\"Cu\"", "\"Ag\""), "malformed-json"));
        all.add(new Bad("POST", SPOTS, JSON, one.replace("\"Cu\"", "\"Xx\""), "unknown-element"));
        all.add(new Bad("POST", SPOTS, JSON, one.replace("\"unit\": \"at%\", ", ""), "unit-missing"));
        all.add(new Bad("POST", SPOTS, JSON, one.replace("at%", "%"), "unit-missing"));
        all.add(new Bad("POST", SPOTS, JSON, one.replace("\"label\": \"a\", ", ""), "name-invalid"));
        all.add(new Bad("POST", SPOTS, JSON, one.replace("\"label\"", "\"lable\": 1, \"label\""), "unknown-parameter"));
        all.add(new Bad("POST", SPOTS, JSON, one.replace("{\"Ag\": 60, \"Cu\": 40}", "{}"), "too-few-elements"));
        all.add(new Bad("POST", SPOTS, JSON, "{\"unit\": \"at%\"}", "malformed-json"));
        all.add(new Bad("POST", SPOTS, JSON, "[".repeat(25) + "]".repeat(25), "malformed-json"));
        all.add(new Bad("POST", SPOTS, JSON, one.getBytes(StandardCharsets.UTF_16), "malformed-json"));
        all.add(new Bad("POST", SPOTS, JSON, new byte[] {'"', (byte) 0xC3, 0x28, '"'}, "malformed-json"));
        all.add(new Bad("POST", SPOTS, "application/json; charset=utf-16", one, "unsupported-media-type"));
        all.add(new Bad("POST", SPOTS, "application/xml", "<spots/>", "unsupported-media-type"));
        all.add(new Bad("POST", "/v1/interpretations", JSON, "{\"spots\": []}", "nominal-incomplete"));
        all.add(new Bad("POST", "/v1/interpretations", "application/x-ndjson", one, "unsupported-media-type"));
    }

    private static void addSamples(List<Bad> all) {
        all.add(new Bad("PUT", "/v1/samples/B1", JSON, "{}", "nominal-incomplete"));
        all.add(new Bad("PUT", "/v1/samples/B1", JSON, "{\"alloy\": \"no-such\"}", "alloy-unknown"));
        all.add(new Bad("PUT", "/v1/samples/B1", JSON, "{\"alloy\": \"sac305\", \"alpha\": 0}", "value-out-of-range"));
        all.add(new Bad("PUT", "/v1/samples/B1",
            JSON, "{\"alloy\": \"sac305\", \"coating\": {\"thickness_nm\": 10}}", "unknown-element"));
        all.add(new Bad("PUT", "/v1/samples/B1",
            JSON, "{\"nominal\": {\"unit\": \"at%\", \"elements\": {\"Ag\": 60, \"Cu\": 30}}}", "nominal-incomplete"));
        all.add(new Bad("PUT", "/v1/samples/B1",
            JSON, "{\"nominal\": {\"unit\": \"at%\", \"elements\": {\"Ag\": 100}}}", "too-few-elements"));
        all.add(new Bad("PUT", "/v1/samples/B%201", JSON, "{\"alloy\": \"sac305\"}", "name-invalid"));
        all.add(new Bad("PUT", "/v1/samples/" + "x".repeat(65), JSON, "{\"alloy\": \"sac305\"}", "name-invalid"));
        all.add(new Bad("PUT", "/v1/samples/A7", JSON, "{\"alloy\": \"sac305\"}", "revision-required"));
        all.add(new Bad("PUT", "/v1/samples/B1", "text/plain", "{\"alloy\": \"sac305\"}", "unsupported-media-type"));
    }

    private static void addAddresses(List<Bad> all) {
        all.add(new Bad("GET", "/v1/samples?alooy=x", JSON, "", "unknown-parameter"));
        all.add(new Bad("GET", "/v1/samples?page_size=0", JSON, "", "value-out-of-range"));
        all.add(new Bad("GET", "/v1/samples?page_size=5001", JSON, "", "value-out-of-range"));
        all.add(new Bad("GET", "/v1/samples?page_size=ten", JSON, "", "value-out-of-range"));
        all.add(new Bad("GET", "/v1/samples?alloy=a&alloy=b", JSON, "", "unknown-parameter"));
        all.add(new Bad("GET", "/v1/samples/nobody", JSON, "", "not-found"));
        all.add(new Bad("GET", "/v1/spots/spt_0", JSON, "", "not-found"));
        all.add(new Bad("GET", "/v1/imports/imp_ZZZZ", JSON, "", "not-found"));
        all.add(new Bad("GET", "/v1/nowhere", JSON, "", "not-found"));
        all.add(new Bad("DELETE", "/v1/samples/A7", JSON, "", "method-not-allowed"));
        all.add(new Bad("POST", "/v1/samples", JSON, "{}", "method-not-allowed"));
        all.add(new Bad("POST", SPOTS + "?on_error=ignore", CSV, InventedPowder.WIDE, "value-out-of-range"));
        all.add(new Bad("POST", SPOTS + "?validate_only=maybe", CSV, InventedPowder.WIDE, "value-out-of-range"));
        all.add(new Bad("POST", SPOTS + "?time_zone=Mars", CSV, InventedPowder.WIDE, "value-out-of-range"));
        all.add(new Bad("POST", SPOTS + "?charset=klingon", CSV, InventedPowder.WIDE, "value-out-of-range"));
    }
}
