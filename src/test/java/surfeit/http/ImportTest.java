package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.storage.OnBothEngines;
import surfeit.storage.RecordEngine;

/** Spots on their way in. */
@OnBothEngines
class ImportTest {
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

    private static String sample(String name) {
        assertThat(service.put("/v1/samples/" + name, InventedPowder.SAMPLE).status()).isEqualTo(201);
        return "/v1/samples/" + name + "/spots";
    }

    @Test
    void a_second_identical_upload_in_another_format_stores_nothing() {
        String spots = sample("again");
        Reply first = service.post(spots, "text/csv", InventedPowder.WIDE);
        assertThat(first.status()).isEqualTo(201);
        assertThat(first.json().path("accepted_count").asInt()).isEqualTo(9);
        assertThat(first.header("Location")).hasValue("/v1/imports/" + first.json().path("id").asText());
        for (Reply again : new Reply[] {service.post(spots, "text/csv", InventedPowder.semicolon()), service.post(spots,
            InventedPowder.json()),
            service.post(spots, "application/x-ndjson", InventedPowder.ndjson()), service.post(spots, "text/csv",
                InventedPowder.longTable()), service.post(spots, "text/csv", InventedPowder.turned()),
            service.post(spots, "text/csv", InventedPowder.merged())}) {
            assertThat(again.status()).isEqualTo(200);
            assertThat(again.json().path("accepted_count").asInt()).isZero();
            assertThat(again.json().path("unchanged_count").asInt()).isEqualTo(9);
            assertThat(again.json().path("id").isNull()).isTrue();
        }
        assertThat(service.get(spots).json().path("items").size()).isEqualTo(9);
    }

    @Test
    void the_dialect_is_echoed_and_a_stated_one_wins() {
        JsonNode detected = service.post(sample("dialect"), "text/csv", InventedPowder.semicolon()).json()
            .path("dialect");
        assertThat(detected.path("delimiter").asText()).isEqualTo(";");
        assertThat(detected.path("decimal").asText()).isEqualTo(",");
        assertThat(detected.path("layout").asText()).isEqualTo("wide");
        assertThat(detected.path("decided_by").asText()).isEqualTo("detected");
        Reply wrong = service.post(sample("stated") + "?decimal=.", "text/csv", InventedPowder.semicolon());
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(service.post(sample("nonsense") + "?delimiter=%23", "text/csv", InventedPowder.WIDE).code())
            .isEqualTo("value-out-of-range");
    }

    @Test
    void a_faulty_row_refuses_all_by_default_and_says_where() {
        String spots = sample("refused");
        Reply reply = service.post(spots, "text/csv", InventedPowder.WIDE.replace("78.0", "780")
            + "P9,P9,matrix,s1,60.0,x\n");
        assertThat(reply.status()).isEqualTo(422);
        assertThat(reply.json().path("fault_count").asInt()).isEqualTo(2);
        JsonNode first = reply.json().path("errors").get(0);
        assertThat(first.path("line").asInt()).isEqualTo(3);
        assertThat(first.path("column").asInt()).isEqualTo(6);
        assertThat(first.path("column_name").asText()).isEqualTo("Cu at%");
        assertThat(first.path("value").asText()).isEqualTo("780");
        assertThat(service.get(spots).json().path("items").size()).isZero();
    }

    @Test
    void skip_records_the_good_rows_and_gives_the_others_back_as_a_table() {
        String spots = sample("skipped");
        Reply reply = service.post(spots + "?on_error=skip", "text/csv", InventedPowder.WIDE.replace("78.0", "780"));
        assertThat(reply.status()).isEqualTo(201);
        assertThat(reply.json().path("accepted_count").asInt()).isEqualTo(8);
        assertThat(reply.json().path("rejected_count").asInt()).isEqualTo(1);
        Reply rejected = service.get(reply.json().path("links").path("rejected").asText());
        assertThat(rejected.text().lines()).hasSize(2);
        assertThat(rejected.text()).startsWith("label,particle,feature,session,Ag at%,Cu at%,problem\n")
            .contains("value-out-of-range");
        Reply mended = service.post(spots, "text/csv", rejected.text().replace(",780,", ",78.0,"));
        assertThat(mended.json().path("accepted_count").asInt()).as(mended.text()).isEqualTo(1);
    }

    @Test
    void spots_of_a_turned_table_come_back_as_a_wide_one_that_can_be_mended_and_posted() {
        String spots = sample("turned");
        Reply refused = service.post(spots, "text/csv", InventedPowder.turned().replace("78.0", "780"));
        assertThat(refused.json().path("errors").get(0).path("column").asInt()).isEqualTo(3);
        assertThat(refused.json().path("errors").get(0).path("line").asInt()).isEqualTo(6);
        Reply reply = service.post(spots + "?on_error=skip", "text/csv",
            InventedPowder.turned().replace("78.0", "780"));
        assertThat(reply.json().path("dialect").path("layout").asText()).isEqualTo("turned");
        assertThat(reply.json().path("accepted_count").asInt()).isEqualTo(8);
        Reply rejected = service.get(reply.json().path("links").path("rejected").asText());
        assertThat(rejected.text()).startsWith("label,particle,feature,session,Ag at%,Cu at%,problem\n");
        assertThat(rejected.text().lines()).hasSize(2);
        Reply mended = service.post(spots, "text/csv", rejected.text().replace(",780,", ",78.0,"));
        assertThat(mended.json().path("accepted_count").asInt()).as(mended.text()).isEqualTo(1);
        assertThat(service.post(spots, "text/csv", InventedPowder.WIDE).json().path("unchanged_count").asInt())
            .isEqualTo(9);
    }

    @ParameterizedTest
    @CsvSource({"application/json, true", "application/x-ndjson, false"})
    void a_byte_order_mark_before_json_is_passed_over_at_the_start_only(String type, boolean isDocument) {
        String spots = sample("marked-" + isDocument);
        String body = isDocument ? InventedPowder.json() : InventedPowder.ndjson();
        assertThat(service.post(spots, type, "\uFEFF" + body).json()
            .path("accepted_count").asInt()).isEqualTo(9);
        assertThat(service.post(spots, type, body).json().path("unchanged_count").asInt()).isEqualTo(9);
        String twice = "\uFEFF\uFEFF" + body;
        assertThat(service.post(spots, type, twice).code()).isEqualTo("malformed-json");
        String inside = body.replaceFirst("\n", "\n\uFEFF");
        assertThat(service.post(spots, type, inside).code()).isEqualTo("malformed-json");
        Reply wide = service.send("POST", spots, ("\uFEFF" + body).getBytes(StandardCharsets.UTF_16LE), "Content-Type",
            type);
        assertThat(wide.code()).isEqualTo("malformed-json");
        assertThat(wide.json().path("detail").asText()).contains("the byte order mark of UTF-16; save it as UTF-8");
    }

    @Test
    void the_description_of_a_sample_may_begin_with_a_byte_order_mark() {
        assertThat(service.put("/v1/samples/marked", "\uFEFF" + InventedPowder.SAMPLE).status()).isEqualTo(201);
        assertThat(service.put("/v1/samples/only-marked", "\uFEFF").json().path("detail").asText()).contains("empty body");
    }

    @ParameterizedTest
    @CsvSource({"spots-as-columns.csv, ?unit=at%25, 2, turned, at%", "turned-fields.csv, '', 3, turned, at%",
        "turned-both-units-merged.csv, ?unit=wt%25, 2, turned, wt%", "turned-lines-and-nominal.csv, ?unit=at%25, 2, turned, at%",
        "long-merged-labels-totals.tsv, '', 2, merged, at%", "title-with-unit.tsv, '', 2, wide, wt%",
        "particle-in-merged-cells.csv, '', 4, wide, at%", "german-words.csv, '', 2, wide, at%"})
    void tables_of_labs_are_read_by_the_service(String file, String query, int count, String layout, String unit)
            throws IOException {
        byte[] table = Files.readAllBytes(Path.of("src/test/resources/uploads", file));
        Reply reply = service.send("POST", sample("of-" + file.replaceAll("\\W", "-")) + query, table, "Content-Type",
            "text/csv");
        assertThat(reply.status()).as(reply.text()).isEqualTo(201);
        assertThat(reply.json().path("accepted_count").asInt()).isEqualTo(count);
        assertThat(reply.json().path("dialect").path("layout").asText()).isEqualTo(layout);
        assertThat(reply.json().path("dialect").path("unit").asText()).isEqualTo(unit);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "application/json | {\"spots\": [{\"unit\": \"at%\", SPOT}]} | /spots/0/elements/Zn",
        "application/x-ndjson | {\"unit\": \"at%\", SPOT} | /elements/Zn"})
    void counts_beside_a_value_that_is_no_number_are_told(String type, String body, String pointer) {
        String spots = sample("beside" + pointer.length());
        JsonNode report = service.post(spots, type, body.replace("SPOT",
            "\"label\": \"1\", \"elements\": {\"Ag\": 62.4, "
            + "\"Zn\": {\"value\": \"n.d.\", \"net_counts\": 12, \"background_counts\": 90, \"limit\": 0.25}}")).json();
        assertThat(report.path("accepted_count").asInt()).as(report.toString()).isEqualTo(1);
        assertThat(report.path("left_out").size()).isEqualTo(1);
        JsonNode told = report.path("left_out").get(0);
        assertThat(told.path("pointer").asText()).isEqualTo(pointer);
        assertThat(told.path("reason").asText()).isEqualTo("counts beside a value that is no number");
        assertThat(told.path("label").asText()).isEqualTo("1");
    }

    @Test
    void names_are_the_same_in_both_normal_forms_of_unicode_in_bodies_and_addresses() {
        String spots = sample("normal-forms");
        String table = "label,particle,feature,session,Ag at%,Cu at%\n"
            + "K\u00F61,K\u00FCgelchen,Fl\u00E4che,M\u00E4rz,62,38\n";
        String apart = Normalizer.normalize(table, Normalizer.Form.NFD);
        assertThat(apart).isNotEqualTo(table);
        Reply first = service.post(spots, "text/csv", apart);
        assertThat(first.json().path("accepted_count").asInt()).isEqualTo(1);
        assertThat(service.post(spots, "text/csv", table).json().path("unchanged_count").asInt()).isEqualTo(1);
        String json = "{\"unit\": \"at%\", \"label\": \"Ko\u03081\", \"particle\": \"Ku\u0308gelchen\", "
            + "\"feature\": \"Fla\u0308che\", \"session\": \"Ma\u0308rz\", \"elements\": {\"Ag\": 62, \"Cu\": 38}}";
        assertThat(service.post(spots, "application/x-ndjson", json).json().path("unchanged_count").asInt()).isEqualTo(1);
        assertThat(service.post(spots + "?session=Ma%CC%88rz", "text/csv", table.replace(",session", "").replace(",M\u00E4rz",
            "")).json().path("unchanged_count").asInt()).isEqualTo(1);
        for (String filter : new String[] {"feature=Fla%CC%88che", "feature=Fl%C3%A4che", "particle=Ku%CC%88gelchen",
            "session=Ma%CC%88rz"}) {
            JsonNode items = service.get(spots + "?" + filter).json().path("items");
            assertThat(items.size()).as(filter).isEqualTo(1);
            assertThat(items.get(0).path("label").asText()).isEqualTo("K\u00F61");
        }
        assertThat(service.get(first.json().path("links").path("original").asText()).text()).isEqualTo(apart);
    }

    @Test
    void skip_gives_faulty_json_spots_back_too() {
        String body = "{\"unit\": \"at%\", \"spots\": [{\"label\": \"a\", \"elements\": {\"Ag\": 60, \"Cu\": 40}},"
            + " {\"label\": \"b\", \"tilt\": 3, \"elements\": {\"Ag\": 600}}]}";
        Reply reply = service.post(sample("json-skip") + "?on_error=skip", body);
        assertThat(reply.json().path("accepted_count").asInt()).isEqualTo(1);
        assertThat(reply.json().path("faults").findValuesAsText("pointer"))
            .containsExactly("/spots/1/tilt", "/spots/1/elements/Ag");
        assertThat(service.get(reply.json().path("links").path("rejected").asText()).text()).contains("/spots/1");
    }

    @Test
    void a_broken_line_of_ndjson_spoils_only_itself() {
        String lines = InventedPowder.ndjson().replace("\"P2-d1\", \"particle\"", "\"P2-d1\", particle");
        Reply refused = service.post(sample("ndjson-broken"), "application/x-ndjson", lines);
        assertThat(refused.status()).isEqualTo(400);
        assertThat(refused.json().path("errors").get(0).path("line").asInt()).isEqualTo(3);
        Reply skipped = service.post("/v1/samples/ndjson-broken/spots?on_error=skip", "application/x-ndjson", lines);
        assertThat(skipped.json().path("accepted_count").asInt()).isEqualTo(8);
    }

    @Test
    void a_rehearsal_tells_the_same_and_records_nothing() {
        String spots = sample("rehearsed");
        JsonNode report = service.post(spots + "?validate_only=true", "text/csv", InventedPowder.WIDE).json();
        assertThat(report.path("accepted_count").asInt()).isEqualTo(9);
        assertThat(report.path("validated_only").asBoolean()).isTrue();
        assertThat(report.path("id").isNull()).isTrue();
        assertThat(service.get(spots).json().path("items").size()).isZero();
        assertThat(service.post(spots + "?validate_only=true", "text/csv", InventedPowder.WIDE.replace("78.0", "780"))
            .status()).isEqualTo(422);
    }

    @Test
    void other_values_of_a_recorded_spot_are_refused_with_a_link_to_corrections() {
        String spots = sample("collision");
        service.post(spots, "text/csv", InventedPowder.WIDE);
        Reply reply = service.post(spots, "text/csv", InventedPowder.WIDE.replace("78.0", "77.0"));
        assertThat(reply.status()).isEqualTo(409);
        assertThat(reply.code()).isEqualTo("spot-already-recorded");
        String id = reply.json().path("errors").get(0).path("spot").asText();
        assertThat(reply.json().path("errors").get(0).path("links").path("corrections").asText()).isEqualTo("/v1/spots/"
            + id + "/corrections");
        assertThat(service.get("/v1/spots/" + id).json().path("label").asText()).isEqualTo("P1-d2");
    }

    @Test
    void the_rows_given_back_are_a_table_whatever_accept_says() {
        Reply reply = service.post(sample("given-back") + "?on_error=skip", "text/csv", "label,Ag at%,Cu at%\n1,60,40\n2,600,40\n");
        Reply rows = service.get(reply.json().path("links").path("rejected").asText(), "Accept", "application/json");
        assertThat(rows.status()).isEqualTo(200);
        assertThat(rows.mediaType()).isEqualTo("text/csv");
        assertThat(service.get("/openapi.yaml", "Accept", "application/json").status()).isEqualTo(200);
    }

    @Test
    void the_name_of_the_file_is_kept_and_given_back_in_every_letter() {
        Reply reply = service.send("POST", sample("named"), InventedPowder.WIDE.getBytes(StandardCharsets.UTF_8), "Content-Type", "text/csv",
            "Content-Disposition", "attachment; filename*=UTF-8''Probe%20%C3%A4.csv");
        assertThat(reply.json().path("file").path("name").asText()).isEqualTo("Probe \u00e4.csv");
        assertThat(service.get(reply.json().path("links").path("original").asText()).header("Content-Disposition"))
            .hasValue("attachment; filename=\"Probe _.csv\"; filename*=UTF-8''Probe%20%C3%A4.csv");
    }

    @Test
    void the_bytes_as_sent_are_kept_and_given_back() {
        byte[] bytes = ("\uFEFFsep=;\n" + InventedPowder.semicolon()).getBytes(StandardCharsets.UTF_8);
        Reply reply = service.send("POST", sample("original"), bytes, "Content-Type", "text/csv", "Content-Disposition",
            "attachment; filename=\"export 7.csv\"");
        Reply original = service.get(reply.json().path("links").path("original").asText());
        assertThat(original.body()).isEqualTo(bytes);
        assertThat(original.header("Content-Disposition")).hasValue("attachment; filename=\"export 7.csv\"");
        assertThat(service.get(reply.json().path("links").path("self").asText()).json().path("file").path("byte_count")
            .asInt())
            .isEqualTo(bytes.length);
        assertThat(service.get(reply.json().path("links").path("self").asText() + "/rejected.csv").status())
            .isEqualTo(404);
    }

    @Test
    void a_body_may_come_compressed_and_its_limit_holds_after_inflation() {
        String spots = sample("gzip");
        byte[] zipped = RunningService.gzip(InventedPowder.WIDE.getBytes(StandardCharsets.UTF_8));
        Reply reply = service.send("POST", spots, zipped, "Content-Type", "text/csv", "Content-Encoding", "gzip");
        assertThat(reply.json().path("accepted_count").asInt()).isEqualTo(9);
        byte[] bomb = RunningService.gzip(new byte[9 << 20]);
        Reply tooLarge = service.send("POST", spots,
            bomb, "Content-Type", "application/json", "Content-Encoding", "gzip");
        assertThat(tooLarge.status()).isEqualTo(413);
        assertThat(tooLarge.json().path("setting").asText()).isEqualTo("json-bytes-max");
        assertThat(service.send("POST", spots,
            new byte[] {1, 2, 3}, "Content-Type", "text/csv", "Content-Encoding", "gzip").code())
            .isEqualTo("malformed-request");
        assertThat(service.send("POST", spots, zipped, "Content-Type", "text/csv", "Content-Encoding", "br").status())
            .isEqualTo(415);
    }

    @Test
    void a_large_upload_goes_over_the_disk_and_leaves_no_file_behind() {
        StringBuilder table = new StringBuilder("label,Ag at%,Cu at%\n");
        for (int i = 0; i < 60_000; i++) {
            table.append("spot-").append(i).append(",60.").append(i % 10).append(",39.").append(i % 10).append('\n');
        }
        assertThat(table.length()).isGreaterThan(1 << 20);
        Reply reply = service.post(sample("large"), "text/csv", table.toString());
        assertThat(reply.json().path("accepted_count").asInt()).isEqualTo(60_000);
        Reply ndjson = service.get("/v1/samples/large/spots.ndjson");
        assertThat(ndjson.text().lines().count()).isEqualTo(60_000);
    }

    @Test
    void zero_below_a_limit_not_detected_and_not_reported_stay_four_different_things() {
        String body = "{\"unit\": \"at%\", \"spots\": [{\"label\": \"four\", \"elements\": {\"Ag\": {\"value\": "
            + "62.40, \"u\": 0.4}, \"Cu\": \"37,60\","
            + " \"O\": 0, \"Zn\": \"<0,3\", \"P\": \"n.d.\", \"C\": \"\"}}]}";
        assertThat(service.post(sample("four"), body).status()).isEqualTo(201);
        JsonNode elements = service.get("/v1/samples/four/spots").json().path("items").get(0).path("elements");
        assertThat(elements.findValuesAsText("state"))
            .containsExactly("measured", "measured", "measured", "below_limit", "not_detected", "not_reported");
        assertThat(elements.path("Ag").path("as_reported").asText()).isEqualTo("62.40");
        assertThat(elements.path("Ag").path("u").asDouble()).isEqualTo(0.4);
        assertThat(elements.path("Cu").path("as_reported").asText()).isEqualTo("37,60");
        assertThat(elements.path("Cu").path("value").asDouble()).isEqualTo(37.6);
        assertThat(elements.path("Zn").path("limit").asDouble()).isEqualTo(0.3);
    }

    @Test
    void two_decimal_marks_in_the_texts_of_one_body_are_refused() {
        String body = "{\"unit\": \"at%\", \"spots\": [{\"label\": \"two\", \"elements\": {\"Ag\": \"62,40\", "
            + "\"Cu\": \"37.60\"}}]}";
        assertThat(service.post(sample("two-marks"), body).code()).isEqualTo("mixed-decimal-marks");
    }

    @Test
    void the_offset_of_a_time_is_kept_and_a_local_time_needs_a_zone() {
        String spots = sample("times");
        String body = "{\"unit\": \"at%\", \"spots\": [{\"label\": \"t\", \"acquired_time\": \"%s\", \"elements\": "
            + "{\"Ag\": 60, \"Cu\": 40}}]}";
        assertThat(service.post(spots, body.replace("%s", "2026-11-20T14:03:00")).code())
            .isEqualTo("time-without-zone");
        assertThat(service.post(spots + "?time_zone=Europe/Berlin", body.replace("%s", "2026-11-20T14:03:00")).status())
            .isEqualTo(201);
        assertThat(service.get(spots).json().path("items").get(0).path("acquired_time").asText())
            .isEqualTo("2026-11-20T14:03:00+01:00");
        assertThat(service.post(spots, body.replace("%s", "2026-11-20T13:03:00Z")).json().path("unchanged_count")
            .asInt()).isEqualTo(1);
    }

    @Test
    void a_request_with_a_key_is_done_once_however_often_it_is_sent() {
        String spots = sample("keyed");
        Reply first = service.post(spots, "text/csv", InventedPowder.WIDE, "Idempotency-Key", "run-1");
        Reply again = service.post(spots, "text/csv", InventedPowder.WIDE, "Idempotency-Key", "run-1");
        assertThat(again.status()).isEqualTo(201);
        assertThat(again.text()).isEqualTo(first.text());
        assertThat(again.header("Location")).isEqualTo(first.header("Location"));
        assertThat(service.post(spots, "text/csv", InventedPowder.semicolon(), "Idempotency-Key", "run-1").code())
            .isEqualTo("idempotency-key-reused");
        assertThat(service.post(spots + "?on_error=skip", "text/csv", InventedPowder.WIDE, "Idempotency-Key", "run-1")
            .code())
            .isEqualTo("idempotency-key-reused");
        assertThat(service.post(spots, "text/csv", InventedPowder.WIDE, "Idempotency-Key", "x".repeat(201)).code())
            .isEqualTo("name-invalid");
        assertThat(service.post(spots, "text/csv", InventedPowder.WIDE).json().path("unchanged_count").asInt())
            .isEqualTo(9);
    }

    @Test
    void a_refused_request_keeps_no_answer_for_its_key() {
        String spots = sample("keyed-refused");
        assertThat(service.post(spots, "text/csv", "nothing", "Idempotency-Key", "run-2").status()).isEqualTo(422);
        assertThat(service.post(spots, "text/csv", InventedPowder.WIDE, "Idempotency-Key", "run-2").status())
            .isEqualTo(201);
    }

    @Test
    void a_sample_must_be_there_first() {
        assertThat(service.post("/v1/samples/nobody/spots", "text/csv", InventedPowder.WIDE).status()).isEqualTo(404);
    }
}
