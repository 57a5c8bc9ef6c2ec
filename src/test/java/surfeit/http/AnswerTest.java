package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import surfeit.storage.OnBothEngines;
import surfeit.storage.RecordEngine;

/** The answer, stored and stateless, in every form of question and answer. */
@OnBothEngines
class AnswerTest {
    private static final String NOMINAL = "nominal=Ag:60.1,Cu:39.9&unit=at%25";
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
    void copper_rich_patches_are_told_from_a_matrix_that_is_not_shown_to_differ() {
        JsonNode answer = service.post("/v1/interpretations", InventedPowder.interpretation()).json();
        JsonNode patch = answer.path("groups").get(0);
        assertThat(patch.path("group").asText()).isEqualTo("dark patch");
        assertThat(element(patch, "Cu").path("verdict").asText()).isEqualTo("enriched");
        assertThat(element(patch, "Ag").path("verdict").asText()).isEqualTo("depleted");
        assertThat(element(patch, "Cu").path("p_value").asDouble())
            .isCloseTo(element(patch, "Ag").path("p_value").asDouble(), within(1e-12));
        JsonNode matrix = answer.path("groups").get(1);
        assertThat(element(matrix, "Cu").path("verdict").asText()).isIn("inconclusive", "consistent");
        assertThat(answer.path("summary").size()).isEqualTo(2);
        assertThat(answer.path("sample").isNull()).isTrue();
    }

    @Test
    void an_inconclusive_row_has_a_reason_a_bound_and_a_next_step_and_no_confidence() {
        JsonNode matrix = service.post("/v1/interpretations", InventedPowder.interpretation()).json().path("groups")
            .get(1);
        JsonNode copper = element(matrix, "Cu");
        assertThat(copper.path("verdict").asText()).isEqualTo("inconclusive");
        assertThat(copper.path("reason").asText()).isNotBlank();
        assertThat(copper.path("not_more_than_factor").asDouble()).isGreaterThan(1);
        assertThat(copper.path("next_step").asText()).isNotBlank();
        assertThat(copper.has("confidence")).isFalse();
    }

    @Test
    void the_same_spots_in_five_forms_give_the_same_bytes_from_the_groups_on() {
        String expected = fromGroups(stored("five-json", "application/json", InventedPowder.json(), "").text());
        assertThat(fromGroups(stored("five-csv", "text/csv", InventedPowder.WIDE, "").text())).isEqualTo(expected);
        assertThat(fromGroups(stored("five-semicolon", "text/csv", InventedPowder.semicolon(), "").text()))
            .isEqualTo(expected);
        assertThat(fromGroups(stored("five-long", "text/csv", InventedPowder.longTable(), "").text()))
            .isEqualTo(expected);
        assertThat(fromGroups(stored("five-ndjson", "application/x-ndjson", InventedPowder.ndjson(), "").text()))
            .isEqualTo(expected);
        assertThat(fromGroups(service.post("/v1/interpretations", InventedPowder.interpretation()).text()))
            .isEqualTo(expected);
        for (String table : new String[] {InventedPowder.WIDE, InventedPowder.semicolon(),
            InventedPowder.longTable()}) {
            assertThat(fromGroups(service.post("/v1/interpretations?" + NOMINAL, "text/csv", table).text()))
                .isEqualTo(expected);
        }
    }

    @Test
    void the_stored_answer_equals_the_stateless_one_but_for_name_revision_and_time() {
        String stored = stored("equal", "application/json", InventedPowder.json(), "").text();
        String stateless = service.post("/v1/interpretations", InventedPowder.interpretation()).text();
        assertThat(stored.substring(stored.indexOf("\"method\"")))
            .isEqualTo(stateless.substring(stateless.indexOf("\"method\"")));
    }

    @Test
    void keys_may_come_in_any_order() {
        String late = "{\"spots\": " + InventedPowder.spots() + ", \"unit\": \"at%\", \"sample\": "
            + InventedPowder.SAMPLE + "}";
        assertThat(fromGroups(service.post("/v1/interpretations", late).text()))
            .isEqualTo(fromGroups(service.post("/v1/interpretations", InventedPowder.interpretation()).text()));
        service.put("/v1/samples/late", InventedPowder.SAMPLE);
        String upload = "{\"spots\": " + InventedPowder.spots() + ", \"unit\": \"at%\"}";
        assertThat(service.post("/v1/samples/late/spots", upload).json().path("accepted_count").asInt()).isEqualTo(9);
    }

    @Test
    void at_and_wt_percent_of_the_same_spots_agree_to_the_twelfth_digit() {
        JsonNode atomic = service.post("/v1/interpretations", InventedPowder.interpretation()).json();
        StringBuilder table = new StringBuilder("label,particle,feature,session,Ag wt%,Cu wt%\n");
        InventedPowder.WIDE.lines().skip(1).forEach(line -> {
            String[] cells = line.split(",");
            double silver = Double.parseDouble(cells[4]) * 107.8682;
            double copper = Double.parseDouble(cells[5]) * 63.546;
            table.append(String.join(",", cells[0], cells[1], cells[2], cells[3])).append(',')
                .append(100 * silver / (silver + copper)).append(',').append(100 * copper / (silver + copper))
                .append('\n');
        });
        String sample = InventedPowder.SAMPLE;
        JsonNode mass = service.post("/v1/interpretations?nominal=" + URLEncoder.encode("Ag:60.1,Cu:39.9 at%",
            StandardCharsets.UTF_8),
            "text/csv", table.toString()).json();
        assertThat(sample).contains("60.1");
        for (int group = 0; group < 2; group++) {
            JsonNode a = element(atomic.path("groups").get(group), "Cu");
            JsonNode m = element(mass.path("groups").get(group), "Cu");
            for (String key : List.of("mean_atomic_percent", "mean_mass_percent", "mean_atomic_percent_u",
                    "enrichment_factor", "difference_atomic_percent", "odds_ratio", "p_value")) {
                assertThat(m.path(key).asDouble()).as(key).isCloseTo(a.path(key).asDouble(),
                    within(1e-12 * Math.max(1, Math.abs(a.path(key).asDouble()))));
            }
        }
    }

    @Test
    void suffix_and_accept_pick_the_form_and_the_suffix_wins() {
        stored("forms", "application/json", InventedPowder.json(), "");
        String base = "/v1/samples/forms/segregation";
        assertThat(service.get(base).mediaType()).isEqualTo("application/json");
        assertThat(service.get(base, "Accept", "text/csv").mediaType()).isEqualTo("text/csv");
        assertThat(service.get(base, "Accept", "text/markdown;q=0.9, text/csv;q=0.5").mediaType())
            .isEqualTo("text/markdown");
        assertThat(service.get(base + ".csv", "Accept", "application/json").mediaType()).isEqualTo("text/csv");
        assertThat(service.get(base + ".md").text()).startsWith("# Sample forms");
        assertThat(service.get(base, "Accept", "image/png").code()).isEqualTo("not-acceptable");
        assertThat(service.get(base + ".xlsx").code()).isEqualTo("not-acceptable");
        assertThat(service.post("/v1/interpretations.csv", InventedPowder.interpretation()).text())
            .startsWith("sample,revision,by,group");
    }

    @Test
    void by_particle_and_by_sample_group_otherwise() {
        stored("grouping", "application/json", InventedPowder.json(), "");
        JsonNode byParticle = service.get("/v1/samples/grouping/segregation?by=particle").json();
        assertThat(byParticle.path("groups").findValuesAsText("group")).containsExactly("P1", "P2", "P3");
        assertThat(service.get("/v1/samples/grouping/segregation?by=sample").json().path("groups").size()).isEqualTo(1);
        Reply wrong = service.get("/v1/samples/grouping/segregation?by=particel");
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.json().path("detail").asText()).contains("nearest known: particle");
    }

    @Test
    void an_unchanged_answer_is_304_and_a_change_of_sample_spots_or_alloy_is_not() {
        service.put("/v1/samples/fresh", "{\"alloy\": \"ag-cu-eutectic\"}");
        service.post("/v1/samples/fresh/spots", "text/csv", InventedPowder.WIDE);
        String base = "/v1/samples/fresh/segregation";
        String etag = service.get(base).etag();
        assertThat(service.get(base, "If-None-Match", etag).status()).isEqualTo(304);
        assertThat(service.get(base, "If-None-Match", "\"other\", W/" + etag).status()).isEqualTo(304);
        assertThat(service.get(base + ".csv", "If-None-Match", etag).status()).isEqualTo(200);
        assertThat(service.get(base).header("Cache-Control")).hasValue("private, no-cache");
        assertThat(service.get(base).header("Vary")).hasValue("Accept, Authorization");
        service.put("/v1/alloys/ag-cu-eutectic", "{\"nominal\": {\"unit\": \"at%\", \"elements\": {\"Ag\": 60, "
            + "\"Cu\": 40}}, "
            + "\"source\": \"certificate (invented)\"}", "If-Match", "*");
        Reply changed = service.get(base, "If-None-Match", etag);
        assertThat(changed.status()).isEqualTo(200);
        assertThat(changed.json().path("nominal").path("alloy_revision").asInt()).isEqualTo(1);
        assertThat(changed.json().path("nominal").path("elements").get(0).path("atomic_percent").asDouble())
            .isEqualTo(60);
    }

    /** A screening of single spots is against the alloy too: silver of 60 at% is three times the one stated later. */
    @Test
    void spots_picked_by_their_verdict_are_not_unchanged_where_the_alloy_is_not() {
        String alloy = "{\"nominal\": {\"unit\": \"at%%\", \"elements\": {\"Ag\": %s, \"Cu\": \"balance\"}}, \"source\": \"certificate (invented)\"}";
        service.put("/v1/alloys/screened", String.format(alloy, "60"));
        service.put("/v1/samples/screened", "{\"alloy\": \"screened\"}");
        service.post("/v1/samples/screened/spots", "text/csv",
            "label,particle,Ag at%,Ag at% u,Cu at%,Cu at% u\n1,P1,60.1,0.2,39.9,0.2\n2,P2,59.9,0.2,40.1,0.2\n3,P3,60.2,0.2,39.8,0.2\n");
        String enriched = "/v1/samples/screened/spots?verdict=enriched";
        Reply none = service.get(enriched);
        assertThat(none.json().path("items")).isEmpty();
        assertThat(service.get(enriched, "If-None-Match", none.etag()).status()).isEqualTo(304);
        service.put("/v1/alloys/screened", String.format(alloy, "20"), "If-Match", "*");
        assertThat(service.get(enriched, "If-None-Match", none.etag()).json().path("items")).hasSize(3);
    }

    @Test
    void a_bare_table_takes_any_key_of_a_sample_that_is_one_word() {
        JsonNode settings = service.post("/v1/interpretations?" + NOMINAL
            + "&accuracy_class=standards-based&margin_odds_ratio=1.5&alpha=0.01&u_level=2&spot_centre=median"
            + "&excluded_elements=C,O&beam_energy_kev=15&spots_independent=true&form=polished&mount=silicon"
            + "&reference_correlation=0.98&take_off_angle_deg=35&detector_fwhm_ev=130&particle_diameter_um=30",
            "text/csv", InventedPowder.WIDE).json().path("method")
                .path("settings");
        assertThat(settings.path("accuracy_class").asText()).isEqualTo("standards-based");
        assertThat(settings.path("margin_odds_ratio").asDouble()).isEqualTo(1.5);
        assertThat(settings.path("spot_centre").asText()).isEqualTo("median");
    }

    @Test
    void a_bare_table_is_answered_with_what_of_it_is_in_no_spot() {
        String table = "label,Region,Ag at%,Cu at%\n1,rim,60,40\n2,core,61,39\nMean,,60.5,39.5\n";

        assertThat(service.post("/v1/interpretations?" + NOMINAL, "text/csv", table).json().path("caveats")
            .findValuesAsText("detail"))
            .contains("Left out of the table: column 2 \"Region\" (neither a field nor an element); line 4 \"Mean\" (summary row).");
        assertThat(service.post("/v1/interpretations?" + NOMINAL, "text/csv", InventedPowder.WIDE).json().path("caveats")
            .findValuesAsText("code")).isNotEmpty().doesNotContain("left-out");
    }

    @Test
    void a_bare_table_without_alloy_or_nominal_says_what_is_missing() {
        assertThat(service.post("/v1/interpretations", "text/csv", InventedPowder.WIDE).code())
            .isEqualTo("nominal-incomplete");
        assertThat(service.post("/v1/interpretations?alloy=ag-cu-eutektik", "text/csv", InventedPowder.WIDE).json()
            .path("detail").asText())
            .contains("ag-cu-eutectic");
        assertThat(service.post("/v1/interpretations?nominal=Ag:60.1,Cu:39.9", "text/csv", InventedPowder.WIDE).code())
            .isEqualTo("unit-missing");
        assertThat(service.post("/v1/interpretations?alloy=ag-cu-eutectic", InventedPowder.interpretation()).code())
            .isEqualTo("unknown-parameter");
    }

    private static Reply stored(String name, String mediaType, String spots, String query) {
        assertThat(service.put("/v1/samples/" + name, InventedPowder.SAMPLE).status()).isEqualTo(201);
        assertThat(service.post("/v1/samples/" + name + "/spots" + query, mediaType, spots).status()).isEqualTo(201);
        return service.get("/v1/samples/" + name + "/segregation");
    }

    private static JsonNode element(JsonNode group, String symbol) {
        for (JsonNode element : group.path("elements")) {
            if (element.path("element").asText().equals(symbol)) {
                return element;
            }
        }
        throw new AssertionError("No " + symbol + " in " + group);
    }

    private static String fromGroups(String body) {
        return body.substring(body.indexOf("\"groups\""));
    }
}
