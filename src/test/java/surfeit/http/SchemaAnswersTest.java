package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What the service really takes and answers fits the shared schemas, and what is damaged does not. Data invented. */
class SchemaAnswersTest {
    private static final JsonNode EXAMPLES = OpenApi.DOCUMENT.root().path("components").path("examples");
    private static final Map<String, List<JsonNode>> REAL = new TreeMap<>();
    private static RunningService service;

    @BeforeAll
    static void takeAndAnswer() {
        service = RunningService.start();
        sentAndRecorded();
        answers();
        asked("plan-request.json", "plan.json", "/v1/plans", "planRequest", "beamRequest");
        asked("signal-depth-request.json", "signal-depths.json", "/v1/signal-depths", "signalDepthRequest", "surfaceRequest");
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    private static void sentAndRecorded() {
        InventedPowder.etchedLots(service);
        service.put("/v1/samples/lines", InventedPowder.SAMPLE);
        keep("spot.json", InventedPowder.ndjson().lines().map(OpenApi::parse).toList());
        Reply recorded = service.post("/v1/samples/lines/spots", "application/x-ndjson", InventedPowder.ndjson());
        keep("import-report.json", taken(recorded),
            taken(service.post("/v1/samples/lines/spots?validate_only=true", "text/csv", InventedPowder.semicolon())));
        service.put("/v1/samples/list", InventedPowder.SAMPLE);
        keep("spots.json", OpenApi.parse(InventedPowder.json()));
        taken(service.post("/v1/samples/list/spots", InventedPowder.json()));
        keep("sample.json", OpenApi.parse(InventedPowder.SAMPLE), taken(service.get("/v1/samples/as-made")));
        keep("recorded-spot.json", items("/v1/samples/lines/spots"));
        String correction = "{\"reason\": \"typed 21.2 for 12.2\", "
            + "\"changes\": {\"elements\": {\"Ag\": 12.2}, \"particle\": null}}";
        keep("correction.json", OpenApi.parse(correction));
        keep("recorded-spot.json", taken(service.post(
            "/v1/spots/" + REAL.get("recorded-spot.json").get(0).path("id").asText() + "/corrections", correction)));
        keep("problem.json", service.get("/v1/samples/none").json(),
            service.post("/v1/samples/list/spots", "{\"unit\": \"at%\", \"spots\": [{\"label\": \"x\"}]}").json());
    }

    private static void answers() {
        keep("interpretation-request.json", OpenApi.parse(InventedPowder.interpretation()));
        keep("interpretation.json", taken(service.post("/v1/interpretations", InventedPowder.interpretation())),
            taken(service.get("/v1/samples/as-made/segregation")));
        taken(service.send("POST", "/v1/samples/as-made/interpretations", new byte[0]));
        keep("stored-interpretation.json", taken(service.get("/v1/interpretations/int_0001")));
        keep("stored-interpretation.json", items("/v1/samples/as-made/interpretations"));
        keep("result-row.json", items("/v1/results"));
        keep("comparison.json", taken(service.get("/v1/comparisons?a=as-made&b=etched")));
        keep("alloy.json", items("/v1/alloys?page_size=1000"));
        keep("event.json", items("/v1/events?after=0"));
    }

    /** Questions that the OpenAPI document gives as examples, and what they are answered. */
    private static void asked(String question, String answer, String address, String... examples) {
        for (String example : examples) {
            JsonNode body = EXAMPLES.path(example).path("value");
            keep(question, body);
            keep(answer, taken(service.post(address, body.toString())));
        }
    }

    private static JsonNode taken(Reply reply) {
        assertThat(reply.status()).as(reply.text()).isIn(200, 201);
        return reply.json();
    }

    private static List<JsonNode> items(String address) {
        List<JsonNode> items = taken(service.get(address)).path("items").valueStream().toList();
        assertThat(items).as(address).isNotEmpty();
        return items;
    }

    private static void keep(String schema, JsonNode... values) {
        keep(schema, List.of(values));
    }

    private static void keep(String schema, List<JsonNode> values) {
        REAL.merge(schema, values, (before, more) -> Stream.of(before, more).flatMap(List::stream).toList());
    }

    static List<String> names() {
        return SchemaFile.names();
    }

    @Test
    void each_thing_was_sent_or_answered_at_least_once() {
        assertThat(REAL.keySet()).containsExactlyElementsOf(SchemaFile.names());
    }

    @ParameterizedTest
    @MethodSource("names")
    void what_the_service_takes_and_answers_fits(String name) {
        SchemaFile schema = SchemaFile.read(name);
        REAL.get(name).forEach(value -> assertThat(schema.faults(value)).as(value.toString()).isEmpty());
    }

    @ParameterizedTest
    @MethodSource("names")
    void without_a_key_it_needs_or_with_one_of_another_kind_it_does_not_fit(String name) {
        SchemaFile schema = SchemaFile.read(name);
        JsonNode right = REAL.get(name).get(0);
        for (String key : schema.required()) {
            ObjectNode less = right.deepCopy();
            less.remove(key);
            assertThat(schema.faults(less)).as(name + " without " + key).isNotEmpty();
        }
        right.fieldNames().forEachRemaining(key -> {
            ObjectNode other = right.deepCopy();
            other.putArray(key).addArray().add(true);
            assertThat(schema.faults(other)).as(name + " with a list of lists as " + key).isNotEmpty();
        });
    }

    @ParameterizedTest
    @MethodSource("names")
    void a_key_nobody_knows_is_refused_in_what_is_sent_and_passed_over_in_what_is_answered(String name) {
        SchemaFile schema = SchemaFile.read(name);
        ObjectNode more = REAL.get(name).get(0).deepCopy();
        more.put("mood", "good");
        assertThat(schema.faults(more).isEmpty()).isNotEqualTo(schema.refusesUnknownKeys());
    }

    @Test
    void a_fault_deep_inside_is_found() {
        SchemaFile spot = SchemaFile.read("spot.json");
        String right = "{\"label\": \"1\", \"unit\": \"at%\", "
            + "\"elements\": {\"Ag\": {\"value\": 60, \"u\": 1}, \"Cu\": \"<0.3\"}}";
        assertThat(spot.faults(OpenApi.parse(right))).isEmpty();
        for (String wrong : new String[] {right.replace("at%", "%"), right.replace("60", "600"), right.replace("Ag", "ag"),
            right.replace("\"u\"", "\"sigma\""), right.replace("\"1\"", "1"), right.replace("\"value\": 60, ", "")}) {
            assertThat(spot.faults(OpenApi.parse(wrong))).as(wrong).isNotEmpty();
        }
    }
}
