package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * The longest examples of the OpenAPI document are what the program answers.
 *
 * <p>Where an answer changed on purpose, {@code mvn test -Dtest=ExamplesTest -Dsurfeit.examples.write=true} writes them
 * anew.
 */
class ExamplesTest {
    private static final Path DOCUMENT = Path.of("openapi", "openapi.yaml");
    private static final String BEGIN = "    # answers of the program itself; ExamplesTest holds them to it\n";
    private static final String END = "    # end of the program's own answers\n";
    private static final JsonNode EXAMPLES = OpenApi.DOCUMENT.root().path("components").path("examples");
    private static final Map<String, Reply> ANSWERS = new LinkedHashMap<>();
    private static final Map<String, String> SUMMARIES = Map.ofEntries(
        Map.entry("interpretation", "Copper-rich patches"), Map.entry("interpretationCsv", "Copper-rich patches as rows"),
        Map.entry("interpretationMarkdown", "Copper-rich patches to read"), Map.entry("resultPage", "One page"),
        Map.entry("resultsCsv", "One row per spot and element"), Map.entry("resultsNdjson", "One row a line"),
        Map.entry("storedInterpretation", "A frozen answer, stale by now"), Map.entry("storedInterpretationPage", "One page"),
        Map.entry("signalDepths", "An alloy at one beam energy"),
        Map.entry("surfaceDepths", "An oil film and a small patch on an alloy"), Map.entry("plan", "From numbers"),
        Map.entry("beamPlan", "A beam energy for a film"), Map.entry("comparison", "An etched lot"),
        Map.entry("comparisonCsv", "An etched lot as rows"), Map.entry("comparisonMarkdown", "An etched lot to read"));
    private static RunningService service;

    @BeforeAll
    static void ask() throws IOException {
        service = RunningService.start();
        String request = EXAMPLES.path("interpretationRequest").path("value").toString();
        ANSWERS.put("interpretation", service.post("/v1/interpretations", request));
        ANSWERS.put("interpretationCsv", service.post("/v1/interpretations.csv", request));
        ANSWERS.put("interpretationMarkdown", service.post("/v1/interpretations.md", request));
        JsonNode body = OpenApi.parse(request);
        service.put("/v1/samples/A7", body.path("sample").toString());
        service.post("/v1/samples/A7/spots", "{\"unit\": " + body.path("unit") + ", \"session\": "
            + body.path("session") + ", \"spots\": "
            + body.path("spots") + "}");
        ANSWERS.put("resultPage", service.get("/v1/results?element=Cu&page_size=1"));
        ANSWERS.put("resultsCsv", service.get("/v1/results.csv?element=Cu"));
        ANSWERS.put("plan", service.post("/v1/plans", EXAMPLES.path("planRequest").path("value").toString()));
        ANSWERS.put("beamPlan", service.post("/v1/plans", EXAMPLES.path("beamRequest").path("value").toString()));
        ANSWERS.put("signalDepths", service.post("/v1/signal-depths", EXAMPLES.path("signalDepthRequest").path("value").toString()));
        ANSWERS.put("surfaceDepths", service.post("/v1/signal-depths", EXAMPLES.path("surfaceRequest").path("value").toString()));
        ANSWERS.put("resultsNdjson", service.get("/v1/results.ndjson?element=Cu"));
        service.send("POST", "/v1/samples/A7/interpretations", new byte[0]);
        service.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}", "If-Match", "*");
        ANSWERS.put("storedInterpretation", service.get("/v1/interpretations/int_0001"));
        ANSWERS.put("storedInterpretationPage", service.get("/v1/samples/A7/interpretations"));
        InventedPowder.etchedLots(service);
        ANSWERS.put("comparison", service.get("/v1/comparisons?a=as-made&b=etched"));
        ANSWERS.put("comparisonCsv", service.get("/v1/comparisons.csv?a=as-made&b=etched"));
        ANSWERS.put("comparisonMarkdown", service.get("/v1/comparisons.md?a=as-made&b=etched"));
        if (Boolean.getBoolean("surfeit.examples.write")) {
            write();
        }
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    @Test
    void the_documented_answers_are_what_the_program_answers() {
        for (Map.Entry<String, Reply> answer : ANSWERS.entrySet()) {
            assertThat(answer.getValue().status()).as(answer.getKey()).isEqualTo(200);
            JsonNode documented = EXAMPLES.path(answer.getKey()).path("value");
            if (documented.isTextual()) {
                assertThat(withoutNumbers(documented.asText())).as(answer.getKey())
                    .isEqualTo(withoutNumbers(answer.getValue().text()));
            } else {
                requireEqual(answer.getKey(), documented, answer.getValue().json());
            }
        }
    }

    @Test
    void every_documented_upload_is_taken() {
        int number = 0;
        for (String path : new String[] {"/v1/samples/{sample}/spots", "/v1/interpretations"}) {
            JsonNode content = OpenApi.DOCUMENT.followed(OpenApi.DOCUMENT.root().path("paths").path(path).path("post")
                .path("requestBody"))
                .path("content");
            for (Map.Entry<String, JsonNode> media : content.properties()) {
                for (JsonNode example : media.getValue().path("examples")) {
                    JsonNode value = OpenApi.DOCUMENT.followed(example).path("value");
                    String sample = "/v1/samples/upload-" + number++;
                    service.put(sample, "{\"alloy\": \"ag-cu-eutectic\"}");
                    String address = path.startsWith("/v1/samples") ? sample + "/spots"
                        : path + (media.getKey().equals("text/csv") ? "?alloy=ag-cu-eutectic" : "");
                    Reply reply = service.post(address, media.getKey(), value.isTextual() ? value.asText()
                        : value.toString());
                    assertThat(reply.status()).as(reply.text()).isIn(200, 201);
                }
            }
        }
    }

    @Test
    void every_documented_sample_and_alloy_can_be_put() {
        JsonNode paths = OpenApi.DOCUMENT.root().path("paths");
        int number = 0;
        for (JsonNode example : paths.path("/v1/samples/{sample}").path("put").path("requestBody").path("content")
            .path("application/json")
                .path("examples")) {
            assertThat(service.put("/v1/samples/put-" + number++, example.path("value").toString()).status())
                .isEqualTo(201);
        }
        JsonNode alloy = paths.path("/v1/alloys/{alloy}").path("put").path("requestBody").path("content")
            .path("application/json").path("example");
        assertThat(service.put("/v1/alloys/documented", alloy.toString()).status()).isEqualTo(201);
    }

    /**
     * Processors may differ in the last digit of a logarithm: numbers are compared as numbers, or not at all in texts.
     */
    private static void requireEqual(String at, JsonNode documented, JsonNode answered) {
        if (documented.isNumber() && answered.isNumber()) {
            assertThat(documented.asDouble()).as(at).isCloseTo(answered.asDouble(),
                within(1e-9 * Math.max(1, Math.abs(answered.asDouble()))));
            return;
        }
        assertThat(documented.getNodeType()).as(at).isEqualTo(answered.getNodeType());
        if (isChecksum(documented) && isChecksum(answered)) {
            return;
        }
        if (!documented.isContainerNode()) {
            assertThat(documented).as(at).isEqualTo(answered);
        } else if (documented.isArray()) {
            assertThat(documented.size()).as(at).isEqualTo(answered.size());
            for (int i = 0; i < documented.size(); i++) {
                requireEqual(at + "/" + i, documented.get(i), answered.get(i));
            }
        } else {
            assertThat(documented.fieldNames()).as(at).toIterable().containsExactlyElementsOf(answered::fieldNames);
            documented.fieldNames().forEachRemaining(name -> requireEqual(at + "/" + name, documented.get(name),
                answered.get(name)));
        }
    }

    /** A checksum over an answer follows the last digit of its numbers. */
    private static boolean isChecksum(JsonNode node) {
        return node.isTextual() && node.asText().matches("[0-9a-f]{64}");
    }

    private static String withoutNumbers(String text) {
        return text.replace("\r\n", "\n").stripTrailing().replaceAll("\\d+(\\.\\d+)?([eE]-?\\d+)?", "#");
    }

    private static void write() throws IOException {
        StringBuilder examples = new StringBuilder(BEGIN);
        for (Map.Entry<String, Reply> answer : ANSWERS.entrySet()) {
            examples.append("    ").append(answer.getKey()).append(":\n      summary: ")
                .append(SUMMARIES.get(answer.getKey())).append("\n");
            examples.append(answer.getValue().mediaType().equals("application/json") ? json(answer.getValue())
                : text(answer.getValue()));
        }
        String document = Files.readString(DOCUMENT);
        int begin = document.indexOf(BEGIN);
        int end = document.indexOf(END);
        Files.writeString(DOCUMENT, document.substring(0, begin) + examples + document.substring(end));
    }

    private static String json(Reply answer) throws JsonProcessingException {
        String pretty = new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(answer.json());
        return "      value:\n" + pretty.replaceAll("(?m)^", "        ") + "\n";
    }

    private static String text(Reply answer) {
        return "      value: |\n" + answer.text().replace("\r\n", "\n").stripTrailing()
            .replaceAll("(?m)^(?=.)", "        ") + "\n";
    }
}
