package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Phases a lab states for its alloy reach the reading of its spots; alloy, phases and spots are invented. */
class OwnPhasesTest {
    private static final String PHASE = "{\"name\": \"kappa\", \"composition\": {\"unit\": \"at%\", \"elements\": "
        + "{\"Ag\": 50, \"Cu\": 50}}}";
    private static final String SPOTS = "label,particle,feature,Ag at%,Cu at%\n"
        + "1,P1,plate,50.2,49.8\n2,P1,plate,49.9,50.1\n"
        + "3,P2,plate,50.1,49.9\n4,P2,plate,49.8,50.2\n5,P3,plate,50.0,50.0\n6,P3,plate,50.1,49.9\n";
    private static RunningService service;

    @BeforeAll
    static void start() {
        service = RunningService.start();
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    private static String alloy(String phases) {
        return "{\"nominal\": {\"unit\": \"at%\", \"elements\": {\"Ag\": 60, \"Cu\": 40}}, \"source\": \"invented\""
            + phases + "}";
    }

    private static JsonNode reading(Reply answer) {
        return answer.json().path("groups").get(0).path("phase_reading");
    }

    private static JsonNode ofSpots(String alloy) {
        return reading(service.post("/v1/interpretations?alloy=" + alloy + "&accuracy_class=standards-based",
            "text/csv",
            SPOTS));
    }

    @Test
    void an_own_phase_is_what_its_spots_are_read_as() {
        service.put("/v1/alloys/own-kappa", alloy(", \"phases\": [" + PHASE + "]"));
        assertThat(ofSpots("own-kappa").path("reading").asText()).isEqualTo("one phase");
        assertThat(ofSpots("own-kappa").path("phases").findValuesAsText("phase")).containsExactly("kappa");
    }

    @Test
    void an_alloy_stated_without_phases_has_the_handbook_ones_and_shows_them() {
        Reply put = service.put("/v1/alloys/own-handbook", alloy(""));
        assertThat(put.json().path("phases").findValuesAsText("name")).containsExactly("(Ag)", "(Cu)");
        assertThat(service.put("/v1/alloys/own-handbook", alloy("")).status()).isEqualTo(200);
        assertThat(ofSpots("own-handbook").path("reading").asText()).isEqualTo("mixture");
        service.put("/v1/alloys/own-none", alloy(", \"phases\": []"));
        assertThat(ofSpots("own-none").isNull()).isTrue();
    }

    @Test
    void a_phase_added_later_changes_the_answer_of_a_sample_on_record_and_its_tag() {
        Reply stated = service.put("/v1/alloys/own-later", alloy(""));
        service.put("/v1/samples/later", "{\"alloy\": \"own-later\", \"accuracy_class\": \"standards-based\"}");
        service.post("/v1/samples/later/spots", "text/csv", SPOTS);
        Reply before = service.get("/v1/samples/later/segregation");
        assertThat(reading(before).path("reading").asText()).isEqualTo("mixture");

        String phases = stated.json().path("phases").toString();
        service.put("/v1/alloys/own-later", alloy(", \"phases\": " + phases.substring(0, phases.length() - 1) + ", "
            + PHASE
            + "]"), "If-Match", stated.etag());
        Reply after = service.get("/v1/samples/later/segregation", "If-None-Match", before.etag());
        assertThat(after.status()).isEqualTo(200);
        assertThat(reading(after).path("reading").asText()).isEqualTo("one phase");
        assertThat(reading(after).path("phases").findValuesAsText("phase")).containsExactly("(Ag)", "(Cu)", "kappa");
        assertThat(after.json().path("known_phases").get(2).path("composition").path("elements").path("Cu").asDouble())
            .isCloseTo(50, within(1e-9));
    }

    @Test
    void beside_a_nominal_of_its_own_a_sample_keeps_the_phases_of_the_alloy_it_names() {
        service.put("/v1/alloys/own-beside", alloy(", \"phases\": [" + PHASE + "]"));
        Reply alloy = service.get("/v1/alloys/own-beside");
        service.put("/v1/samples/beside", "{\"alloy\": \"own-beside\", \"accuracy_class\": "
            + "\"standards-based\", \"nominal\": {\"unit\": \"at%\", \"elements\": {\"Ag\": 58, \"Cu\": 42}}}");
        service.post("/v1/samples/beside/spots", "text/csv", SPOTS);
        Reply before = service.get("/v1/samples/beside/segregation");
        assertThat(before.json().path("nominal").path("alloy").isNull()).isTrue();
        assertThat(reading(before).path("phases").findValuesAsText("phase")).containsExactly("kappa");

        service.put("/v1/alloys/own-beside", alloy(", \"phases\": [" + PHASE.replace("kappa", "lambda") + "]"),
            "If-Match",
            alloy.etag());
        Reply after = service.get("/v1/samples/beside/segregation", "If-None-Match", before.etag());
        assertThat(after.status()).isEqualTo(200);
        assertThat(reading(after).path("phases").findValuesAsText("phase")).containsExactly("lambda");
    }
}
