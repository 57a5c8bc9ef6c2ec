package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import surfeit.storage.OnBothEngines;
import surfeit.storage.RecordEngine;

/** Samples: stated, restated, read as they are and as they were, listed. */
@OnBothEngines
class SampleTest {
    private static final JsonNode EVERYTHING = OpenApi.DOCUMENT.root().path("paths").path("/v1/samples/{sample}")
        .path("put")
        .path("requestBody").path("content").path("application/json").path("examples").path("everything stated")
            .path("value");
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
    void what_was_put_comes_back_with_every_default_shown() {
        Reply created = service.put("/v1/samples/whole", EVERYTHING.toString());
        assertThat(created.status()).isEqualTo(201);
        assertThat(created.header("Location")).hasValue("/v1/samples/whole");
        JsonNode read = service.get("/v1/samples/whole").json();
        EVERYTHING.properties().forEach(entry -> assertThat(sameNumbers(read.path(entry.getKey())))
            .as(entry.getKey()).isEqualTo(sameNumbers(entry.getValue())));
        JsonNode small = service.put("/v1/samples/small", "{\"alloy\": \"ag-cu-eutectic\"}").json();
        assertThat(small.path("accuracy_class").asText()).isEqualTo("standardless");
        assertThat(small.path("margin_odds_ratio").asDouble()).isEqualTo(1.25);
        assertThat(small.has("beam_energy_kev")).isFalse();
    }

    private static JsonNode sameNumbers(JsonNode node) {
        return OpenApi.parse(node.toString().replaceAll("(\\d)\\.0(?=[,}\\]]|$)", "$1"));
    }

    @Test
    void an_answer_can_be_sent_back_and_changes_nothing() {
        service.put("/v1/samples/back", EVERYTHING.toString());
        Reply read = service.get("/v1/samples/back");
        Reply again = service.put("/v1/samples/back", read.text());
        assertThat(again.status()).isEqualTo(200);
        assertThat(again.json().path("revision").asInt()).isEqualTo(1);
        assertThat(again.etag()).isEqualTo(read.etag());
    }

    /** Nominals as a program computes them; the numbers are invented. */
    @Test
    void a_nominal_of_many_digits_can_be_sent_back_and_changes_nothing() {
        for (double silver : new double[] {50.49807258549227, 56.6492674471424, 66.78691350123906, 100.0 / 3}) {
            String sample = "/v1/samples/many-digits-" + silver;
            service.put(sample, "{\"nominal\": {\"unit\": \"wt%\", \"elements\": {\"Ag\": " + silver
                + ", \"Cu\": {\"low\": 1e-13, \"high\": "
                + (100 - silver) + "}}}}");
            assertThat(service.put(sample, service.get(sample).text()).status()).as(sample).isEqualTo(200);
        }
    }

    @Test
    void a_change_needs_the_revision_it_starts_from() {
        Reply first = service.put("/v1/samples/guarded", "{\"alloy\": \"ag-cu-eutectic\"}");
        String other = "{\"alloy\": \"ag-cu-eutectic\", \"description\": \"lot 8\"}";
        assertThat(service.put("/v1/samples/guarded", other).code()).isEqualTo("revision-required");
        assertThat(service.put("/v1/samples/guarded", other, "If-Match", "\"99.abc\"").code())
            .isEqualTo("revision-mismatch");
        assertThat(service.put("/v1/samples/guarded", other, "If-Match", "W/" + first.etag()).code())
            .isEqualTo("revision-mismatch");
        Reply changed = service.put("/v1/samples/guarded", other, "If-Match", first.etag());
        assertThat(changed.status()).isEqualTo(200);
        assertThat(changed.json().path("revision").asInt()).isEqualTo(2);
        assertThat(service.put("/v1/samples/guarded", other, "If-Match", first.etag()).status()).isEqualTo(200);
        assertThat(service.put("/v1/samples/new-only", other, "If-None-Match", "*").status()).isEqualTo(201);
    }

    @Test
    void every_revision_stays_readable() {
        Reply first = service.put("/v1/samples/history", "{\"alloy\": \"ag-cu-eutectic\", \"description\": \"first\"}");
        service.put("/v1/samples/history", "{\"alloy\": \"ag-cu-eutectic\", \"description\": \"second\"}", "If-Match",
            first.etag());
        assertThat(service.get("/v1/samples/history/revisions/1").json().path("description").asText())
            .isEqualTo("first");
        assertThat(service.get("/v1/samples/history/revisions/2").json().path("description").asText())
            .isEqualTo("second");
        assertThat(service.get("/v1/samples/history/revisions").json().path("items").findValuesAsText("revision"))
            .containsExactly("1", "2");
        assertThat(service.get("/v1/samples/history/revisions/3").status()).isEqualTo(404);
        assertThat(service.get("/v1/samples/history/revisions/x").status()).isEqualTo(404);
    }

    @Test
    void an_unchanged_sample_is_304_without_a_body() {
        String etag = service.put("/v1/samples/still", "{\"alloy\": \"ag-cu-eutectic\"}").etag();
        Reply reply = service.get("/v1/samples/still", "If-None-Match", etag);
        assertThat(reply.status()).isEqualTo(304);
        assertThat(reply.body()).isEmpty();
        assertThat(service.send("HEAD", "/v1/samples/still", new byte[0]).etag()).isEqualTo(etag);
    }

    @Test
    void a_list_is_walked_page_by_page_without_gap_or_repeat() {
        Set<String> all = new HashSet<>();
        for (int i = 0; i < 7; i++) {
            service.put("/v1/samples/walk-" + i, "{\"alloy\": \"al-si-eutectic\", \"description\": \"walked\"}");
            all.add("walk-" + i);
        }
        Set<String> seen = new HashSet<>();
        String address = "/v1/samples?alloy=al-si-eutectic&q=walked&page_size=3";
        int pages = 0;
        while (true) {
            Reply page = service.get(address);
            pages++;
            page.json().path("items").forEach(item -> assertThat(seen.add(item.path("sample").asText())).isTrue());
            JsonNode next = page.json().path("next");
            if (next.isNull()) {
                assertThat(page.header("Link")).isEmpty();
                break;
            }
            String link = page.header("Link").orElseThrow();
            assertThat(link).startsWith("<" + service.server().address()).endsWith("; rel=\"next\"").contains("cursor="
                + next.asText());
            address = link.substring(1, link.indexOf('>')).substring(service.server().address().length());
        }
        assertThat(seen).isEqualTo(all);
        assertThat(pages).isEqualTo(3);
    }

    @Test
    void a_cursor_fits_only_the_list_it_came_from() {
        service.put("/v1/samples/c1", "{\"alloy\": \"sac305\"}");
        service.put("/v1/samples/c2", "{\"alloy\": \"sac305\"}");
        String cursor = service.get("/v1/samples?alloy=sac305&page_size=1").json().path("next").asText();
        assertThat(service.get("/v1/samples?alloy=sac305&page_size=2&cursor=" + cursor).json().path("items").size())
            .isEqualTo(1);
        assertThat(service.get("/v1/samples?alloy=al-si-eutectic&cursor=" + cursor).code())
            .isEqualTo("cursor-mismatch");
        assertThat(service.get("/v1/alloys?cursor=" + cursor).code()).isEqualTo("cursor-mismatch");
        assertThat(service.get("/v1/samples?cursor=nonsense").code()).isEqualTo("cursor-mismatch");
        assertThat(service.get("/v1/samples?cursor=%20").code()).isEqualTo("cursor-mismatch");
    }

    @Test
    void every_fault_of_a_body_is_told_at_once_at_its_place() {
        Reply reply = service.put("/v1/samples/faulty", "{\"aloy\": \"x\", \"nominal\": {\"unit\": \"%\", "
            + "\"elements\": {\"Agg\": 60, \"Cu\": 140}},"
            + " \"alpha\": 0.7, \"form\": \"partikle\", \"preparation\": [{\"reagent\": \"water\"}], \"u_level\": "
                + "1.5, \"alpha\": 0.05}");
        assertThat(reply.status()).isEqualTo(400);
        assertThat(reply.json().path("errors").findValuesAsText("pointer")).containsExactly("/aloy", "/nominal/unit",
            "/nominal/elements/Agg", "/nominal/elements/Cu", "/alpha", "/form", "/preparation/0/step", "/u_level",
            "/alpha");
        assertThat(reply.json().path("errors").get(0).path("detail").asText()).contains("nearest known: alloy");
        assertThat(reply.json().path("fault_count").asInt()).isEqualTo(9);
        assertThat(service.get("/v1/samples/faulty").status()).isEqualTo(404);
    }

    @Test
    void an_alloy_nobody_knows_is_told_at_its_place() {
        assertThat(service.put("/v1/samples/unknown", "{\"alloy\": \"no-such\"}").json().path("errors").path(0).path("pointer")
            .asText())
            .isEqualTo("/alloy");
        Reply asked = service.post("/v1/interpretations", "{\"sample\": {\"alloy\": \"no-such\"}, \"unit\": \"at%\", \"spots\": "
            + "[{\"label\": \"1\", \"elements\": {\"Ag\": 60, \"Cu\": 40}}]}");
        assertThat(asked.code()).isEqualTo("alloy-unknown");
        assertThat(asked.json().path("errors").path(0).path("pointer").asText()).isEqualTo("/sample/alloy");
    }

    @Test
    void null_means_not_stated() {
        ObjectNode body = EVERYTHING.deepCopy();
        body.putNull("coating");
        body.putNull("mount");
        JsonNode read = service.put("/v1/samples/nulls", body.toString()).json();
        assertThat(read.has("coating")).isFalse();
    }
}
