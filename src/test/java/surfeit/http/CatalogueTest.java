package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import surfeit.element.Element;
import surfeit.element.ElementTable;
import surfeit.storage.OnBothEngines;
import surfeit.storage.RecordEngine;

/** Alloys and elements. */
@OnBothEngines
class CatalogueTest {
    private static final String OWN = "{\"name\": \"our braze\", \"nominal\": {\"unit\": \"wt%\", \"elements\": "
        + "{\"Ag\": {\"value\": 72,"
        + " \"tolerance\": 1}, \"Cu\": \"balance\"}}, \"phases\": [{\"name\": \"(Ag)\", \"composition\": {\"unit\": "
            + "\"at%\", \"elements\":"
        + " {\"Ag\": 86, \"Cu\": 14}}, \"density_g_per_cm3\": 10.3}], \"melting\": {\"temperature_c\": \"779-785\", "
            + "\"kind\": \"melting range\"},"
        + " \"source\": \"certificate 4711 (invented)\"}";
    @Parameter
    RecordEngine engine;
    private static RunningService service;

    @BeforeParameterizedClassInvocation
    static void start(RecordEngine engine) {
        service = RunningService.start(engine);
    }

    @AfterParameterizedClassInvocation
    static void stop() {
        service.close();
    }

    @Test
    void a_lab_states_its_own_alloy_and_samples_can_name_it() {
        Reply created = service.put("/v1/alloys/our-braze", OWN);
        assertThat(created.status()).isEqualTo(201);
        assertThat(created.json().path("origin").asText()).isEqualTo("lab");
        assertThat(service.put("/v1/alloys/our-braze", OWN).status()).isEqualTo(200);
        assertThat(service.put("/v1/alloys/our-braze", OWN.replace("72", "71")).code()).isEqualTo("revision-required");
        assertThat(service.put("/v1/alloys/our-braze", OWN.replace("72", "71"), "If-Match", created.etag()).json()
            .path("revision").asInt())
            .isEqualTo(2);
        assertThat(service.put("/v1/samples/of-own-alloy", "{\"alloy\": \"our-braze\"}").status()).isEqualTo(201);
        assertThat(service.put("/v1/samples/of-no-alloy", "{\"alloy\": \"our-brase\"}").json().path("detail").asText())
            .contains("our-braze");
    }

    @Test
    void an_alloy_of_the_program_can_be_restated_and_the_own_statement_goes_first() {
        Reply program = service.get("/v1/alloys/sac305");
        assertThat(program.json().path("revision").asInt()).isZero();
        String own = "{\"nominal\": {\"unit\": \"wt%\", \"elements\": {\"Sn\": \"balance\", \"Ag\": 3.1, \"Cu\": "
            + "0.5}}, \"source\": \"certificate\"}";
        assertThat(service.put("/v1/alloys/sac305", own).code()).isEqualTo("revision-required");
        assertThat(service.put("/v1/alloys/sac305", own, "If-Match", program.etag()).status()).isEqualTo(200);
        assertThat(service.get("/v1/alloys/sac305", "If-None-Match", program.etag()).json().path("origin").asText())
            .isEqualTo("lab");
    }

    @Test
    void every_alloy_can_be_sent_back_as_it_was_read_and_changes_nothing() {
        service.put("/v1/alloys/weighed",
            "{\"nominal\": {\"unit\": \"wt%\", \"elements\": {\"Ag\": 66.78691350123906, \"Cu\": \"balance\"}},"
            + " \"phases\": [{\"name\": \"(Ag)\", \"composition\": {\"unit\": \"wt%\", \"elements\": {\"Ag\": 91.2, \"Cu\": 8.8}}}],"
            + " \"source\": \"certificate (invented)\"}");
        for (JsonNode alloy : service.get("/v1/alloys?page_size=1000").json().path("items")) {
            Reply again = service.put("/v1/alloys/" + alloy.path("alloy").asText(), alloy.toString());
            assertThat(again.status()).as(alloy.toString()).isEqualTo(200);
            assertThat(again.json().path("revision")).isEqualTo(alloy.path("revision"));
        }
    }

    @Test
    void an_alloy_needs_a_composition_that_can_be_and_a_source() {
        assertThat(service.put("/v1/alloys/x", "{\"source\": \"s\"}").code()).isEqualTo("nominal-incomplete");
        assertThat(service.put("/v1/alloys/x", "{\"nominal\": {\"unit\": \"at%\", \"elements\": {\"Ag\": 60, \"Cu\": "
            + "40}}}").status()).isEqualTo(400);
        assertThat(service.put("/v1/alloys/x", "{\"nominal\": {\"unit\": \"at%\", \"elements\": {\"Ag\": 60, \"Cu\": "
            + "30}}, \"source\": \"s\"}").code())
            .isEqualTo("nominal-incomplete");
        assertThat(service.put("/v1/alloys/..", OWN).status()).isIn(400, 404, 405, 422);
        assertThat(service.put("/v1/alloys/a%20b", OWN).code()).isEqualTo("name-invalid");
    }

    @Test
    void the_list_is_sorted_and_paged() {
        JsonNode page = service.get("/v1/alloys?page_size=10").json();
        assertThat(page.path("items").findValuesAsText("alloy")).isSorted().hasSize(10);
        JsonNode next = service.get("/v1/alloys?page_size=10&cursor=" + page.path("next").asText()).json();
        assertThat(next.path("items").get(0).path("alloy").asText()).isGreaterThan(page.path("items").get(9)
            .path("alloy").asText());
    }

    @Test
    void every_element_tells_the_figures_the_service_calculates_with() {
        for (Element element : ElementTable.standard().all()) {
            JsonNode read = service.get("/v1/elements/" + element.symbol()).json();
            assertThat(read.path("atomic_weight_g_per_mol").asDouble()).isEqualTo(element.atomicWeight());
        }
        JsonNode copper = service.get("/v1/elements/Cu?beam_energy_kev=15").json();
        assertThat(copper.path("chosen_line").asText()).isEqualTo("Ka");
        assertThat(copper.path("lines").findValuesAsText("line")).contains("Ka", "La");
        assertThat(service.get("/v1/elements/Cu?beam_energy_kev=10").json().path("lines").findValuesAsText("excitation"))
            .contains("usable", "barely excited");
        assertThat(service.get("/v1/elements/Cu?beam_energy_kev=300").code()).isEqualTo("value-out-of-range");
        assertThat(service.get("/v1/elements/Cu?beam_energy_kev=15kV").code()).isEqualTo("value-out-of-range");
        Reply wrong = service.get("/v1/elements/CU");
        assertThat(wrong.status()).isEqualTo(404);
        assertThat(wrong.json().path("detail").asText()).contains("nearest known: Cu");
    }
}
