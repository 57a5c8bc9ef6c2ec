package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import surfeit.storage.OnBothEngines;
import surfeit.storage.RecordEngine;

/** Spots on record: listed, corrected, withdrawn; and flat rows of results. */
@OnBothEngines
class SpotTest {
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

    private static JsonNode first(String sample) {
        service.put("/v1/samples/" + sample, InventedPowder.SAMPLE);
        service.post("/v1/samples/" + sample + "/spots", "text/csv", InventedPowder.WIDE);
        return service.get("/v1/samples/" + sample + "/spots").json().path("items").get(0);
    }

    @Test
    void a_corrected_spot_keeps_its_first_value_and_changes_the_answer() {
        String id = first("corrected").path("id").asText();
        String etag = service.get("/v1/samples/corrected/segregation").etag();
        Reply corrected = service.post("/v1/spots/" + id + "/corrections",
            "{\"reason\": \"typed 21.2 for 12.2\", \"changes\": {\"elements\": {\"Ag\": 12.2}, \"feature\": null, "
            + "\"tilt_deg\": 5}}");
        assertThat(corrected.status()).isEqualTo(200);
        assertThat(corrected.json().path("revision").asInt()).isEqualTo(2);
        assertThat(corrected.json().path("elements").path("Ag").path("value").asDouble()).isEqualTo(12.2);
        assertThat(corrected.json().path("elements").path("Cu").path("as_reported").asText()).isEqualTo("78.80");
        assertThat(corrected.json().has("feature")).isFalse();
        assertThat(corrected.json().path("tilt_deg").asDouble()).isEqualTo(5);
        JsonNode revisions = service.get("/v1/spots/" + id + "/revisions").json().path("items");
        assertThat(revisions.get(0).path("elements").path("Ag").path("as_reported").asText()).isEqualTo("21.20");
        assertThat(revisions.get(1).path("reason").asText()).isEqualTo("typed 21.2 for 12.2");
        assertThat(service.get("/v1/samples/corrected/segregation", "If-None-Match", etag).status()).isEqualTo(200);
    }

    @Test
    void a_correction_needs_a_reason_and_leaves_label_session_and_time_alone() {
        String address = "/v1/spots/" + first("guarded-spot").path("id").asText() + "/corrections";
        assertThat(service.post(address, "{\"reason\": \" \", \"changes\": {\"tilt_deg\": 5}}").code())
            .isEqualTo("reason-required");
        assertThat(service.post(address, "{\"changes\": {\"tilt_deg\": 5}}").code()).isEqualTo("reason-required");
        assertThat(service.post(address, "{\"reason\": \"x\", \"changes\": {\"label\": \"new\"}}").code())
            .isEqualTo("name-invalid");
        assertThat(service.post(address, "{\"reason\": \"x\", \"changes\": {\"tilt\": 5}}").json().path("errors").get(0)
            .path("pointer").asText())
            .isEqualTo("/changes/tilt");
        assertThat(service.post(address, "{\"reason\": \"x\"}").code()).isEqualTo("malformed-json");
        assertThat(service.post(
            address, "application/json", "{\"reason\": \"x\", \"changes\": {\"tilt_deg\": 5}}", "If-Match", "\"9.x\"")
            .status())
            .isEqualTo(412);
        assertThat(service.post("/v1/spots/spt_ZZZZ/corrections", "{\"reason\": \"x\", \"changes\": {}}").status())
            .isEqualTo(404);
    }

    @Test
    void a_specimen_spot_can_become_a_reference_and_back() {
        String address = "/v1/spots/" + first("roles").path("id").asText() + "/corrections";
        Reply reference = service.post(
            address, "{\"reason\": \"it was the standard\", \"changes\": {\"role\": \"reference\", "
            + "\"true_composition\":"
            + " {\"unit\": \"at%\", \"elements\": {\"Ag\": 60.1, \"Cu\": 39.9}}}}");
        assertThat(reference.json().path("role").asText()).isEqualTo("reference");
        assertThat(reference.json().path("true_composition").path("elements").path("Ag").asDouble()).isEqualTo(60.1);
        Reply same = service.post(
            address, "{\"reason\": \"and of the same alloy\", \"changes\": {\"same_material\": true}}");
        assertThat(same.json().path("same_material").asBoolean()).isTrue();
        assertThat(same.json().path("true_composition").path("elements").path("Cu").asDouble()).isEqualTo(39.9);
        Reply back = service.post(address, "{\"reason\": \"it was not\", \"changes\": {\"role\": \"specimen\"}}");
        assertThat(back.json().path("role").asText()).isEqualTo("specimen");
        assertThat(back.json().has("true_composition")).isFalse();
    }

    /** The numbers are invented. */
    @Test
    void what_differs_from_the_record_is_told_in_percent_and_in_words() {
        service.put("/v1/samples/told", "{\"alloy\": \"ag-cu-eutectic\"}");
        String piece = "{\"unit\": \"at%%\", \"spots\": [{\"label\": \"R1\", \"role\": \"reference\", \"true_composition\": {\"unit\": \"wt%%\","
            + " \"elements\": {\"Ag\": {\"value\": %s, \"tolerance\": 0.3}, \"Cu\": \"balance\"}}, \"elements\": {\"Ag\": {\"value\": 60, \"u\": %s},"
            + " \"Cu\": 40}}]}";
        service.post("/v1/samples/told/spots", String.format(piece, "71.9", "0.4"));
        Reply other = service.post("/v1/samples/told/spots", String.format(piece, "72.5", "0.7"));
        assertThat(other.code()).isEqualTo("spot-already-recorded");
        assertThat(other.json().path("errors").path(0).path("detail").asText()).contains("Ag uncertainty 0.4 % -> 0.7 %",
            "true composition Ag:71.9+-0.3,Cu:bal wt% -> Ag:72.5+-0.3,Cu:bal wt%");
    }

    @Test
    void a_withdrawn_spot_leaves_every_calculation_and_stays_readable() {
        String id = first("withdrawn").path("id").asText();
        int before = service.get("/v1/samples/withdrawn/segregation").json().path("spot_count").asInt();
        assertThat(service.post("/v1/spots/" + id + "/withdrawal", "{\"reason\": \"the beam stood on the mount\"}")
            .status()).isEqualTo(200);
        assertThat(service.get("/v1/samples/withdrawn/segregation").json().path("spot_count").asInt())
            .isEqualTo(before - 1);
        assertThat(service.get("/v1/spots/" + id).json().path("withdrawn").asBoolean()).isTrue();
        assertThat(service.get("/v1/samples/withdrawn/spots").json().path("items").size()).isEqualTo(8);
        assertThat(service.get("/v1/samples/withdrawn/spots?withdrawn=true").json().path("items").size()).isEqualTo(9);
        Reply again = service.post("/v1/spots/" + id + "/withdrawal", "{\"reason\": \"again\"}");
        assertThat(again.json().path("revision").asInt()).isEqualTo(2);
    }

    @Test
    void spots_are_filtered_paged_and_streamed() {
        first("filtered");
        String spots = "/v1/samples/filtered/spots";
        assertThat(service.get(spots + "?feature=matrix&particle=P3").json().path("items").findValuesAsText("label"))
            .containsExactly("P3-m1");
        assertThat(service.get(spots + "?verdict=enriched").json().path("items").size()).isEqualTo(6);
        String cursor = service.get(spots + "?verdict=enriched&page_size=4").json().path("next").asText();
        assertThat(service.get(spots + "?verdict=enriched&page_size=4&cursor=" + cursor).json().path("items").size())
            .isEqualTo(2);
        assertThat(service.get(spots + ".ndjson").text().lines()).hasSize(9);
        Reply csv = service.get(spots + ".csv?feature=matrix");
        assertThat(csv.text().lines()).hasSize(1 + 3 * 2);
        assertThat(service.get(spots + ".csv", "If-None-Match", csv.etag()).status()).isEqualTo(304);
    }

    /** The numbers are invented. */
    @Test
    void the_table_of_spots_holds_counts_and_line_as_well() {
        service.put("/v1/samples/counted", "{\"alloy\": \"ag-cu-eutectic\"}");
        service.post("/v1/samples/counted/spots",
            "{\"unit\": \"at%\", \"spots\": [{\"label\": \"1\", \"elements\": {\"Ag\": {\"value\": 60,"
            + " \"net_counts\": 1234.5, \"background_counts\": 17, \"line\": \"La\"}, \"Cu\": 40}}]}");
        List<String> rows = service.get("/v1/samples/counted/spots.csv").text().lines().toList();
        assertThat(rows.get(0)).endsWith(",as_reported,net_counts,background_counts,line");
        assertThat(rows.get(1)).endsWith(",60,1234.5,17.0,La");
        assertThat(rows.get(2)).endsWith(",40,,,");
    }

    /** As a program computes them, not as a workstation prints them; the numbers are invented. */
    @Test
    void values_of_many_digits_come_back_as_they_were_sent() {
        service.put("/v1/samples/many-digits", "{\"alloy\": \"ag-cu-eutectic\"}");
        double[] values = {57.97859433012949, 20.400000000000002, -8.519225124511507, 1e-17, 127.30985289779952};
        for (int i = 0; i < values.length; i++) {
            service.post("/v1/samples/many-digits/spots", "{\"unit\": \"at%\", \"spots\": [{\"label\": \"" + i
                + "\", \"total_percent\": 43.07527706340061, \"elements\": {\"Ag\": {\"value\": " + values[i]
                + ", \"u\": 0.3333333333333333}, \"Cu\": 50}}]}");
        }
        JsonNode spots = service.get("/v1/samples/many-digits/spots").json().path("items");
        List<String> rows = service.get("/v1/samples/many-digits/spots.csv").text().lines().filter(row -> row.contains(",Ag,"))
            .toList();
        for (int i = 0; i < values.length; i++) {
            JsonNode silver = spots.path(i).path("elements").path("Ag");
            assertThat(silver.path("value").asDouble()).isEqualTo(values[i]);
            assertThat(silver.path("u").asDouble()).isEqualTo(0.3333333333333333);
            assertThat(spots.path(i).path("total_percent").asDouble()).isEqualTo(43.07527706340061);
            assertThat(rows.get(i)).contains(",measured," + values[i] + ",");
        }
        assertThat(service.get("/v1/results?sample=many-digits&element=Ag").json().path("items").path(1).path("reported_percent")
            .asDouble())
            .isEqualTo(values[1]);
    }

    @Test
    void text_cells_that_look_like_formulas_are_defused_and_numbers_stay_numbers() {
        service.put("/v1/samples/formulas", InventedPowder.SAMPLE);
        service.post("/v1/samples/formulas/spots", "{\"unit\": \"at%\", \"spots\": [{\"label\": \"=cmd()\", "
            + "\"feature\": \"@home\", \"elements\":"
            + " {\"Ag\": 60, \"Cu\": -0.2, \"O\": 0.5}}]}");
        String csv = service.get("/v1/samples/formulas/spots.csv").text();
        assertThat(csv).contains(",'=cmd(),").contains(",'@home,").contains(",-0.2,");
        String results = service.get("/v1/results.csv?sample=formulas").text();
        assertThat(results).contains(",'=cmd(),");
    }

    @Test
    void results_are_flat_rows_of_every_sample_or_of_one() {
        first("rows-a");
        first("rows-b");
        JsonNode copper = service.get("/v1/results?sample=rows-a&element=Cu&verdict=enriched").json().path("items");
        assertThat(copper.size()).isEqualTo(6);
        assertThat(copper.get(0).path("adjustment").asText()).isEqualTo("benjamini-hochberg");
        assertThat(copper.get(0).path("atomic_percent").asDouble()).isEqualTo(78.8);
        assertThat(service.get("/v1/results.csv?element=Cu").text()).contains("rows-a,").contains("rows-b,");
        assertThat(service.get("/v1/results?sample=nobody").status()).isEqualTo(404);
        assertThat(service.get("/v1/results?element=Cuu").code()).isEqualTo("unknown-element");
        assertThat(service.get("/v1/results?from=yesterday").code()).isEqualTo("time-without-zone");
        assertThat(service.get("/v1/results?sample=rows-a&from=2026-11-01T00:00:00Z").json().path("items").size())
            .isZero();
        int seen = 0;
        String cursor = "";
        do {
            JsonNode page = service.get("/v1/results?sample=rows-a&page_size=5" + cursor).json();
            seen += page.path("items").size();
            cursor = page.path("next").isNull() ? "" : "&cursor=" + page.path("next").asText();
        } while (!cursor.isEmpty());
        assertThat(seen).isEqualTo(18);
    }
}
