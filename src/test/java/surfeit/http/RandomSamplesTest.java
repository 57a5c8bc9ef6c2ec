package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Invented samples drawn at random, with numbers computed by another program that shares no code with this one: its
 * first lines say how. Whatever is expected of an answer must be in it; the answer may say more.
 */
class RandomSamplesTest {
    private static final double RELATIVE = 1e-6;
    private static final int SPOTS_AT_ONCE = 2;
    private static final ObjectMapper JSON = new ObjectMapper();
    private static RunningService service;
    private static List<JsonNode> cases;

    @BeforeAll
    static void start() throws IOException {
        service = RunningService.start();
        cases = ComputedOutside.cases("random-samples");
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    @Test
    void every_answer_has_the_numbers_another_program_computed() {
        assertThat(cases).hasSizeGreaterThan(30);
        for (int i = 0; i < cases.size(); i++) {
            JsonNode answer = service.post("/v1/interpretations", cases.get(i).path("request").toString()).json();
            ComputedOutside.requireAll(RELATIVE, "case " + i, cases.get(i).path("expected"), answer);
        }
    }

    @Test
    void samples_stored_in_pieces_and_their_screening_have_these_numbers_too() {
        int screened = 0;
        for (int i = 0; i < cases.size(); i++) {
            JsonNode screening = cases.get(i).path("screening");
            if (!screening.isMissingNode()) {
                String sample = "/v1/samples/random-" + i;
                store(sample, cases.get(i).path("request"));
                ComputedOutside.requireAll(RELATIVE, "case " + i, cases.get(i).path("expected"), service.get(sample + "/segregation").json());
                requireRows("case " + i, screening, service.get("/v1/results?sample=random-" + i + "&page_size=5000").json());
                screened++;
            }
        }
        assertThat(screened).isGreaterThan(9);
    }

    @Test
    void two_samples_are_compared_with_the_numbers_another_program_computed() throws IOException {
        List<JsonNode> pairs = ComputedOutside.cases("random-comparisons");
        assertThat(pairs).hasSize(30);
        for (int i = 0; i < pairs.size(); i++) {
            for (String side : List.of("a", "b")) {
                String sample = "/v1/samples/pair-" + i + side;
                assertThat(service.put(sample, pairs.get(i).path(side).path("sample").toString()).status()).isEqualTo(201);
                assertThat(service.post(sample + "/spots", pairs.get(i).path(side).path("upload").toString()).status())
                    .isEqualTo(201);
            }
            JsonNode answer = service.get("/v1/comparisons?a=pair-" + i + "a&b=pair-" + i + "b&same_particles="
                + pairs.get(i).path("same_particles")).json();
            ComputedOutside.requireAll(RELATIVE, "pair " + i, pairs.get(i).path("expected"), answer);
        }
    }

    /** A few spots at a time, the answer asked in between. */
    private static void store(String sample, JsonNode request) {
        assertThat(service.put(sample, request.path("sample").toString()).status()).isEqualTo(201);
        List<JsonNode> spots = ComputedOutside.list(request.path("spots"));
        for (int from = 0; from < spots.size(); from += SPOTS_AT_ONCE) {
            ObjectNode upload = JSON.createObjectNode().put("unit", request.path("unit").asText());
            ArrayNode some = upload.putArray("spots");
            spots.subList(from, Math.min(from + SPOTS_AT_ONCE, spots.size())).forEach(some::add);
            assertThat(service.post(sample + "/spots", upload.toString()).status()).isEqualTo(201);
            service.get(sample + "/segregation");
        }
    }

    private static void requireRows(String where, JsonNode screening, JsonNode results) {
        Map<String, JsonNode> rows = new LinkedHashMap<>();
        results.path("items").forEach(row -> rows.put(row.path("label").asText() + " " + row.path("element").asText(), row));
        for (JsonNode expected : screening) {
            String name = expected.path("label").asText() + " " + expected.path("element").asText();
            assertThat(rows).as(where).containsKey(name);
            ComputedOutside.requireAll(RELATIVE, where + ", spot " + name, expected, rows.get(name));
        }
    }
}
