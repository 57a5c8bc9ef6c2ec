package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import surfeit.storage.OnBothEngines;
import surfeit.storage.RecordEngine;

/** A zero character in a text: no engine may take what another cannot keep. */
@OnBothEngines
class ZeroCharacterTest {
    @Parameter
    RecordEngine engine;
    private static RunningService service;

    @BeforeParameterizedClassInvocation
    static void start(RecordEngine engine) {
        service = RunningService.start(engine);
        service.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
    }

    @AfterParameterizedClassInvocation
    static void stop() {
        service.close();
    }

    @Test
    void it_is_refused_in_a_description_and_in_a_reason() {
        service.post("/v1/samples/A7/spots", "{\"unit\": \"at%\", \"spots\": [{\"label\": \"1\", \"elements\": "
            + "{\"Ag\": 21.2, \"Cu\": 78.8}}]}");
        Reply description = service.put("/v1/samples/B7", "{\"alloy\": \"ag-cu-eutectic\", \"description\": \"x\\u0000\"}");
        Reply reason = service.post("/v1/spots/spt_0001/corrections",
            "{\"reason\": \"x\\u0000\", \"changes\": {\"particle\": \"P3\"}}");

        assertThat(description.code()).isEqualTo("value-out-of-range");
        assertThat(reason.code()).isEqualTo("value-out-of-range");
        assertThat(reason.json().path("errors").path(0).path("pointer").asText()).isEqualTo("/reason");
    }

    @Test
    void half_a_character_is_refused_as_well() {
        Reply description = service.put("/v1/samples/C7", "{\"alloy\": \"ag-cu-eutectic\", \"description\": \"x\\ud800\"}");
        assertThat(description.code()).isEqualTo("value-out-of-range");
        assertThat(description.json().path("detail").asText()).contains("surrogate");
        assertThat(service.put("/v1/samples/C7", "{\"alloy\": \"ag-cu-eutectic\", \"description\": \"\\ud83d\\ude00\"}").json()
            .path("description").asText()).isEqualTo("\ud83d\ude00");
    }

    @Test
    void it_is_refused_in_a_parameter() {
        assertThat(service.get("/v1/samples?q=x%00y").code()).isEqualTo("value-out-of-range");
    }

    @Test
    void a_line_that_holds_one_is_reported_and_the_others_are_recorded() {
        Reply report = service.post("/v1/samples/A7/spots?on_error=skip", "application/x-ndjson",
            "{\"label\": \"z1\", \"feature\": \"a\\u0000\", \"unit\": \"at%\", \"elements\": {\"Ag\": 20, \"Cu\": 80}}\n"
            + "{\"label\": \"z2\", \"unit\": \"at%\", \"elements\": {\"Ag\": \"2\\u0000\", \"Cu\": 80}}\n"
            + "{\"label\": \"z3\", \"unit\": \"at%\", \"elements\": {\"Ag\": 20, \"Cu\": 80}}\n");

        assertThat(report.status()).isEqualTo(201);
        assertThat(report.json().path("accepted_count").asInt()).isEqualTo(1);
        assertThat(report.json().path("rejected_count").asInt()).isEqualTo(2);
        assertThat(service.get(report.header("Location").orElseThrow()).json().path("fault_count").asInt()).isEqualTo(2);
    }
}
