package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.lab.EventFilter;
import surfeit.lab.InputRevisions;
import surfeit.lab.LabEvent;
import surfeit.lab.Segregation;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.blocks.SpotSource;
import surfeit.storage.OnBothEngines;
import surfeit.storage.RecordEngine;

/** A frozen answer stays as it was, and says so when what it was made from has changed. */
@OnBothEngines
class StoredInterpretationTest {
    private static final String OF_ALLOY = "{\"alloy\": \"ag-cu-eutectic\"}";
    private static final String RESTATED = """
        {"name": "Restated", "nominal": {"unit": "at%", "elements": {"Ag": 20, "Cu": 80}},
         "source": "invented for a test", "source_read": "yes"}""";
    @Parameter
    RecordEngine engine;
    private RunningService service;

    @BeforeEach
    void start() {
        service = RunningService.start(engine);
        service.put("/v1/samples/lot-7", OF_ALLOY);
        service.post("/v1/samples/lot-7/spots", "text/csv", InventedPowder.WIDE);
    }

    @AfterEach
    void stop() {
        service.close();
    }

    private Reply freeze(String query, String... headers) {
        return service.send("POST", "/v1/samples/lot-7/interpretations" + query, new byte[0], headers);
    }

    /** The bytes of the key {@code answer}, which stands last. */
    private static String answer(Reply reply) {
        String text = reply.text();
        return text.substring(text.indexOf("\"answer\":") + "\"answer\":".length(), text.length() - 1);
    }

    @Test
    void freezing_keeps_the_answer_of_this_moment_in_every_form() {
        Reply stored = freeze("");

        assertThat(stored.status()).isEqualTo(201);
        String address = stored.header("Location").orElseThrow();
        assertThat(address).isEqualTo("/v1/interpretations/" + stored.json().path("id").asText());
        assertThat(service.get(address).body()).isEqualTo(stored.body());
        assertThat(service.get(address + ".json").body()).isEqualTo(stored.body());
        assertThat(answer(stored)).isEqualTo(service.get("/v1/samples/lot-7/segregation").text());
        assertThat(service.get(address + ".csv").body())
            .isEqualTo(service.get("/v1/samples/lot-7/segregation.csv").body());
        assertThat(service.get(address + ".md").body())
            .isEqualTo(service.get("/v1/samples/lot-7/segregation.md").body());
    }

    @Test
    void it_names_the_revisions_and_everything_it_was_made_with() {
        JsonNode stored = freeze("?by=particle").json();

        assertThat(stored.path("sample").asText()).isEqualTo("lot-7");
        assertThat(stored.path("by").asText()).isEqualTo("particle");
        assertThat(stored.path("stored_time").asText()).isEqualTo(RunningService.NOW.toString());
        assertThat(stored.path("inputs").toString())
            .isEqualTo("{\"sample_revision\":2,\"alloy\":\"ag-cu-eutectic\",\"alloy_revision\":0}");
        assertThat(stored.path("method").path("version")).isEqualTo(stored.at("/answer/method/version"));
        assertThat(stored.path("program_version")).isEqualTo(stored.at("/answer/program_version"));
        JsonNode shared = service.get("/shared").json().path("items");
        stored.path("reference_tables_sha256").properties().forEach(table -> assertThat(shared).anySatisfy(file -> {
            assertThat(file.path("path").asText()).isEqualTo("/shared/" + table.getKey());
            assertThat(file.path("sha256")).isEqualTo(table.getValue());
        }));
        assertThat(stored.path("reference_tables_sha256").fieldNames()).toIterable()
            .contains("reference/elements.csv", "reference/lines.csv", "vocabulary/materials.csv", "vocabulary/cautions.csv")
            .doesNotContain("vocabulary/words.csv", "vocabulary/problems.csv");
    }

    @Test
    void the_checksums_are_those_of_what_is_given_back() throws Exception {
        Reply stored = freeze("");
        String address = stored.header("Location").orElseThrow();

        JsonNode checksums = stored.json().path("answer_sha256");

        assertThat(checksums.path("json").asText()).isEqualTo(sha256(answer(stored)));
        assertThat(checksums.path("csv").asText()).isEqualTo(sha256(service.get(address + ".csv").text()));
        assertThat(checksums.path("md").asText()).isEqualTo(sha256(service.get(address + ".md").text()));
    }

    private static String sha256(String text) throws Exception {
        return HexFormat.of().formatHex(
            MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
    }

    private void change(String how) {
        Reply reply = switch (how) {
            case "spots imported" -> service.post("/v1/samples/lot-7/spots?unit=at%25", "text/csv",
                "label,Ag,Cu\nX1,50,50\n");
            case "spot corrected" -> service.post("/v1/spots/spt_0001/corrections",
                "{\"reason\": \"misread\", \"changes\": {\"feature\": \"matrix\"}}");
            case "spot withdrawn" -> service.post("/v1/spots/spt_0001/withdrawal", "{\"reason\": \"charging\"}");
            case "described" -> service.put("/v1/samples/lot-7",
                "{\"alloy\": \"ag-cu-eutectic\", \"description\": \"fraction 20-45 um\"}", "If-Match", "*");
            case "alloy stated" -> service.put("/v1/alloys/ag-cu-eutectic", RESTATED, "If-Match", "*");
            default -> throw new IllegalArgumentException(how);
        };
        assertThat(reply.status()).as(reply.text()).isIn(200, 201);
    }

    @ParameterizedTest
    @CsvSource(nullValues = "-", value = {"spots imported, 3, -, imp_0002", "spot corrected, 3, -, spt_0001",
        "spot withdrawn, 3, -, spt_0001", "described, 3, -, -", "alloy stated, -, 1, ag-cu-eutectic"})
    void each_change_of_an_input_makes_it_stale_and_leaves_the_answer_as_it_was(String how, Integer sample,
                                                                                Integer alloy, String cause) {
        Reply stored = freeze("");
        String address = stored.header("Location").orElseThrow();
        byte[] csv = service.get(address + ".csv").body();
        byte[] markdown = service.get(address + ".md").body();

        change(how);
        JsonNode changed = service.get(address).json();

        assertThat(stored.json().path("stale").asBoolean()).isFalse();
        assertThat(changed.path("stale").asBoolean()).isTrue();
        assertThat(changed.at("/changed_input/change").asText()).isEqualTo(how);
        assertThat(changed.at("/changed_input/sample_revision").isNull()).isEqualTo(sample == null);
        assertThat(changed.at("/changed_input/alloy_revision").isNull()).isEqualTo(alloy == null);
        assertThat(changed.at("/changed_input/" + (alloy == null ? "sample" : "alloy") + "_revision").asInt())
            .isEqualTo(alloy == null ? sample : alloy);
        assertThat(changed.at("/changed_input/cause").asText(null)).isEqualTo(cause);
        assertThat(answer(service.get(address))).isEqualTo(answer(stored));
        assertThat(service.get(address + ".csv").body()).isEqualTo(csv);
        assertThat(service.get(address + ".md").body()).isEqualTo(markdown);
        assertThat(service.get("/v1/samples/lot-7/segregation").text()).isNotEqualTo(answer(stored));
    }

    @Test
    void computed_anew_from_the_revisions_it_names_it_is_the_same_bytes() throws IOException {
        List<Reply> all = new ArrayList<>();
        for (String how : List.of("spots imported", "spot corrected", "alloy stated", "spot withdrawn", "described")) {
            for (GroupBy by : GroupBy.values()) {
                all.add(freeze("?by=" + by.word()));
            }
            change(how);
        }

        for (Reply stored : all) {
            JsonNode inputs = stored.json().path("inputs");
            ByteArrayOutputStream again = new ByteArrayOutputStream();
            new AnswerFile(service.laboratory().segregation("lot-7", new InputRevisions(
                    inputs.path("sample_revision").asLong(), OptionalLong.of(inputs.path("alloy_revision").asLong())),
                    GroupBy.valueOf(stored.json().path("by").asText().toUpperCase(java.util.Locale.ROOT))),
                SpotSource.of(List.of()), Instant.parse(stored.json().path("stored_time").asText())).json(again);

            assertThat(again.toString(StandardCharsets.UTF_8)).isEqualTo(answer(stored));
        }
        assertThat(all).extracting(StoredInterpretationTest::answer).doesNotHaveDuplicates();
    }

    @Test
    void the_spots_it_was_made_from_can_be_read_as_they_were() {
        Reply stored = freeze("");
        String before = service.get("/v1/samples/lot-7/spots.csv").text();
        for (String how : List.of("spots imported", "spot corrected", "spot withdrawn")) {
            change(how);
        }
        String spots = stored.json().at("/links/spots").asText();

        JsonNode first = service.get(spots + "&page_size=1").json();

        assertThat(spots).isEqualTo("/v1/samples/lot-7/spots?revision=2");
        assertThat(service.get("/v1/samples/lot-7/spots.csv?revision=2").text()).isEqualTo(before);
        assertThat(first.at("/items/0/revision").asInt()).isEqualTo(1);
        assertThat(first.at("/items/0/feature").asText()).isEqualTo("dark patch");
        assertThat(service.get("/v1/samples/lot-7/spots?revision=5").json().path("items")).hasSize(9);
        assertThat(service.get("/v1/samples/lot-7/spots?revision=6").status()).isEqualTo(404);
        assertThat(service.get("/v1/samples/lot-7/spots?revision=0").code()).isEqualTo("value-out-of-range");
        assertThat(service.get("/v1/samples/lot-7/spots?revision=2&verdict=enriched").code())
            .isEqualTo("value-out-of-range");
    }

    @Test
    void the_first_change_counts_and_is_told_once() {
        freeze("");
        freeze("?by=sample");
        change("spot corrected");
        change("alloy stated");
        change("spot withdrawn");
        freeze("");

        List<LabEvent> events = service.laboratory().events(EventFilter.ALL, 0, 100).stream()
            .filter(event -> event.type().word().startsWith("interpretation.")).toList();
        assertThat(events).extracting(event -> event.type().word() + " " + event.subject().orElseThrow() + " "
            + event.sample().orElseThrow()).containsExactly("interpretation.stored int_0001 lot-7",
            "interpretation.stored int_0002 lot-7", "interpretation.stale int_0001 lot-7",
            "interpretation.stale int_0002 lot-7", "interpretation.stored int_0003 lot-7");
        assertThat(service.get("/v1/interpretations/int_0001").json().at("/changed_input/change").asText())
            .isEqualTo("spot corrected");
        JsonNode served = service.get("/v1/events?after=0&types=interpretation.stored,interpretation.stale").json()
            .path("items");
        assertThat(served).extracting(event -> event.path("interpretation").asText())
            .containsExactly("int_0001", "int_0002", "int_0001", "int_0002", "int_0003");
    }

    @Test
    void what_changes_no_input_leaves_it_fresh() {
        Reply stored = freeze("");

        service.post("/v1/samples/lot-7/spots", "text/csv", InventedPowder.WIDE);
        service.post("/v1/samples/lot-7/spots?validate_only=true&unit=at%25", "text/csv", "label,Ag,Cu\nX1,50,50\n");
        service.post("/v1/samples/lot-7/spots?on_error=skip", "text/csv", "label,Ag at%,Cu at%\nX1,5000,50\n");
        service.put("/v1/samples/lot-7", OF_ALLOY);
        service.put("/v1/samples/lot-8", OF_ALLOY);
        service.post("/v1/samples/lot-8/spots", "text/csv", InventedPowder.ETCHED);
        service.put("/v1/alloys/another", RESTATED);
        freeze("");

        assertThat(service.get(stored.header("Location").orElseThrow()).body()).isEqualTo(stored.body());
    }

    @Test
    void an_alloy_named_beside_an_own_nominal_is_an_input_for_its_phases() {
        service.put("/v1/samples/own", "{\"alloy\": \"ag-cu-eutectic\", \"nominal\": {\"unit\": \"at%\","
            + " \"elements\": {\"Ag\": 60, \"Cu\": 40}}}");
        service.put("/v1/samples/unnamed", "{\"nominal\": {\"unit\": \"at%\", \"elements\": {\"Ag\": 60, \"Cu\": 40}}}");
        for (String sample : List.of("own", "unnamed")) {
            service.post("/v1/samples/" + sample + "/spots", "text/csv", InventedPowder.ETCHED);
        }
        Reply stored = service.send("POST", "/v1/samples/own/interpretations", new byte[0]);
        Reply unnamed = service.send("POST", "/v1/samples/unnamed/interpretations", new byte[0]);

        change("alloy stated");

        assertThat(stored.json().path("inputs").path("alloy_revision").asInt(-1)).isZero();
        assertThat(service.get("/v1/interpretations/int_0001").json().path("stale").asBoolean()).isTrue();
        assertThat(unnamed.json().path("inputs").path("alloy").isNull()).isTrue();
        assertThat(service.get("/v1/interpretations/int_0002").json().path("stale").asBoolean()).isFalse();
    }

    @Test
    void under_one_key_it_is_stored_once() {
        Reply first = freeze("", "Idempotency-Key", "report-12");
        change("spot corrected");

        assertThat(freeze("", "Idempotency-Key", "report-12").body()).isEqualTo(first.body());
        assertThat(freeze("?by=sample", "Idempotency-Key", "report-12").code()).isEqualTo("idempotency-key-reused");
        assertThat(service.get("/v1/samples/lot-7/interpretations").json().path("items")).hasSize(1);
    }

    /** Some clients send an empty object with every POST. */
    @Test
    void an_empty_object_is_as_good_as_no_body() {
        assertThat(service.post("/v1/samples/lot-7/interpretations", "{}").status()).isEqualTo(201);
        assertThat(service.post("/v1/samples/lot-7/interpretations", "{\"by\": \"particle\"}").code())
            .isEqualTo("unknown-parameter");
        assertThat(service.post("/v1/samples/lot-7/interpretations", "text/csv", "a,b").code())
            .isEqualTo("unsupported-media-type");
    }

    @Test
    void the_etag_changes_when_it_turns_stale_but_never_that_of_the_answer_alone() {
        String address = freeze("").header("Location").orElseThrow();
        String document = service.get(address).etag();
        String csv = service.get(address + ".csv").etag();
        assertThat(service.get(address, "If-None-Match", document).status()).isEqualTo(304);

        change("described");

        assertThat(service.get(address, "If-None-Match", document).status()).isEqualTo(200);
        assertThat(service.get(address + ".csv", "If-None-Match", csv).status()).isEqualTo(304);
        assertThat(service.get(address + ".md").header("Link")).contains("<" + address + ">; rel=\"describedby\","
            + " </v1/samples/lot-7/segregation?by=feature>; rel=\"latest-version\"");
    }

    @Test
    void the_list_of_a_sample_comes_in_pages_and_is_linked_from_it() {
        for (int i = 0; i < 3; i++) {
            freeze("");
        }
        String list = service.get("/v1/samples/lot-7").json().at("/links/interpretations").asText();

        JsonNode first = service.get(list + "?page_size=2").json();
        JsonNode second = service.get(list + "?page_size=2&cursor=" + first.path("next").asText()).json();

        assertThat(first.path("items")).hasSize(2).noneMatch(item -> item.has("answer"));
        assertThat(first.at("/items/1/id").asText()).isEqualTo("int_0002");
        assertThat(second.path("items")).hasSize(1);
        assertThat(second.at("/items/0/id").asText()).isEqualTo("int_0003");
        assertThat(second.path("next").isNull()).isTrue();
        String tag = service.get(list).etag();
        assertThat(service.get(list, "If-None-Match", tag).status()).isEqualTo(304);
        freeze("");
        assertThat(service.get(list, "If-None-Match", tag).status()).isEqualTo(200);
    }

    @Test
    void what_cannot_be_frozen_or_found_is_refused_in_words() {
        assertThat(service.post("/v1/samples/lot-7/interpretations", "{\"by\": \"feature\"}").code())
            .isEqualTo("unknown-parameter");
        assertThat(service.send("POST", "/v1/samples/no-such/interpretations", new byte[0]).status()).isEqualTo(404);
        assertThat(freeze("?by=colour").code()).isEqualTo("value-out-of-range");
        assertThat(service.get("/v1/interpretations/int_0001").json().path("detail").asText())
            .isEqualTo("There is no stored interpretation \"int_0001\".");
        assertThat(service.get("/v1/interpretations/int_0001.md").status()).isEqualTo(404);
        assertThat(service.get("/v1/samples/no-such/interpretations").status()).isEqualTo(404);
        service.put("/v1/samples/silver", "{\"alloy\": \"ag-cu-eutectic\", \"excluded_elements\": [\"Cu\"]}");
        service.post("/v1/samples/silver/spots", "text/csv", InventedPowder.WIDE);
        assertThat(service.send("POST", "/v1/samples/silver/interpretations", new byte[0]).code())
            .isEqualTo("too-few-elements");
        assertThat(service.get("/v1/samples/silver/interpretations").json().path("items")).isEmpty();
    }
}
