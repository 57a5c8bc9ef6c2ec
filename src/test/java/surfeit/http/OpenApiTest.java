package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import surfeit.lab.Problem;

/** The document and the code say the same of every route, parameter, form and problem. */
class OpenApiTest {
    private static final OpenApi DOCUMENT = OpenApi.DOCUMENT;
    private static RunningService service;
    private static RouteTable table;

    @BeforeAll
    static void start() {
        service = RunningService.start();
        table = RunningService.routes(service.laboratory());
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    @Test
    void every_route_is_documented_and_every_documented_route_exists() {
        assertThat(documented(operation -> "")).isEqualTo(coded(route -> ""));
    }

    @Test
    void every_route_needs_the_scope_the_document_names() {
        assertThat(documented(operation -> operation.node().path("x-scope").asText()))
            .isEqualTo(coded(route -> route.scope().word()));
    }

    @Test
    void every_route_knows_the_query_parameters_the_document_names() {
        assertThat(documented(operation -> parameters(operation, "query").toString()))
            .isEqualTo(coded(route -> new TreeSet<>(route.parameters()).toString()));
    }

    @Test
    void every_route_names_its_path_parameters() {
        for (OpenApi.Operation operation : DOCUMENT.operations()) {
            Set<String> inPath = new TreeSet<>();
            Arrays.stream(operation.path().split("/")).filter(step -> step.startsWith("{"))
                .forEach(step -> inPath.add(step.substring(1, step.indexOf('}'))));
            assertThat(parameters(operation, "path")).as(operation.path()).isEqualTo(inPath);
        }
    }

    @Test
    void every_route_reads_the_media_types_the_document_names() {
        assertThat(documented(operation -> names(DOCUMENT.followed(operation.node().path("requestBody"))
            .path("content")).toString()))
            .isEqualTo(coded(route -> mediaTypes(route.takes())));
    }

    @Test
    void every_route_answers_in_the_forms_the_document_names() {
        Map<String, String> documented = documented(operation -> {
            JsonNode answers = operation.node().path("responses");
            JsonNode ok = DOCUMENT.followed(answers.path(answers.has("200") ? "200" : "201"));
            return names(ok.path("content")).toString();
        });
        Map<String, String> coded = new TreeMap<>();
        for (Route route : table.routes()) {
            if (route.forms().contains(Form.FILE)) {
                coded.put(name(route, route.path()), documented.get(name(route, route.path())));
                continue;
            }
            coded.put(name(route, route.path()), mediaTypes(route.forms()));
            if (route.suffixed()) {
                route.forms().forEach(form -> coded.put(name(route, route.path() + form.suffix()),
                    mediaTypes(List.of(form))));
            }
        }
        assertThat(documented).isEqualTo(coded);
    }

    /** A suffix wins over Accept, and a file comes as it is: both never answer 406. */
    @Test
    void whatever_comes_in_one_form_only_because_its_address_says_so_is_never_not_acceptable() {
        Map<String, String> can = new TreeMap<>();
        for (Route route : table.routes()) {
            can.put(name(route, route.path()),
                Boolean.toString(!route.forms().contains(Form.FILE) && route.formOfPath().isEmpty()));
            if (route.suffixed()) {
                route.forms().forEach(form -> can.put(name(route, route.path() + form.suffix()), "false"));
            }
        }
        assertThat(documented(operation -> Boolean.toString(operation.node().path("responses").has("406")))).isEqualTo(can);
    }

    @Test
    void every_problem_has_an_example_that_says_what_the_catalogue_says() {
        Set<String> examples = new TreeSet<>();
        for (Map.Entry<String, JsonNode> example : DOCUMENT.root().path("components").path("examples").properties()) {
            if (example.getKey().startsWith("problem-")) {
                JsonNode value = example.getValue().path("value");
                Problem problem = Problem.ofCode(example.getKey().substring("problem-".length())).orElseThrow();
                assertThat(value.path("code").asText()).isEqualTo(problem.code());
                assertThat(value.path("title").asText()).isEqualTo(problem.title());
                assertThat(value.path("status").asInt()).isEqualTo(problem.status());
                assertThat(value.path("type").asText()).isEqualTo(ProblemJson.address(problem));
                examples.add(problem.code());
            }
        }
        assertThat(examples).isEqualTo(Arrays.stream(Problem.values()).map(Problem::code)
            .collect(Collectors.toCollection(TreeSet::new)));
    }

    @Test
    void problems_stand_under_their_own_status() {
        for (Map.Entry<String, JsonNode> path : DOCUMENT.root().path("paths").properties()) {
            for (JsonNode operation : path.getValue()) {
                for (Map.Entry<String, JsonNode> answer : operation.path("responses").properties()) {
                    for (JsonNode media : DOCUMENT.followed(answer.getValue()).path("content")) {
                        for (JsonNode example : media.path("examples")) {
                            JsonNode status = DOCUMENT.followed(example).path("value").path("status");
                            if (status.isInt() && !answer.getKey().equals("default") && status.asInt() >= 400) {
                                assertThat(answer.getKey()).isEqualTo(status.asText());
                            }
                        }
                    }
                }
            }
        }
    }

    @Test
    void every_example_fits_its_shape() {
        List<String> faults = new ArrayList<>();
        for (OpenApi.Operation operation : DOCUMENT.operations()) {
            check(operation.pointer() + "/requestBody/content", faults);
            operation.node().path("responses").fieldNames()
                .forEachRemaining(status -> check(operation.pointer() + "/responses/" + status + "/content", faults));
        }
        assertThat(faults).isEmpty();
    }

    private static void check(String pointer, List<String> faults) {
        String resolved = DOCUMENT.resolved(pointer);
        for (Map.Entry<String, JsonNode> media : DOCUMENT.root().at(resolved).properties()) {
            if (!media.getKey().endsWith("json")) {
                continue;
            }
            List<JsonNode> examples = new ArrayList<>();
            media.getValue().path("examples").forEach(example -> examples.add(DOCUMENT.followed(example)
                .path("value")));
            if (media.getValue().has("example")) {
                examples.add(media.getValue().get("example"));
            }
            String schema = resolved + "/" + OpenApi.escaped(media.getKey()) + "/schema";
            for (JsonNode example : examples) {
                DOCUMENT.faults(schema, example).forEach(fault -> faults.add(pointer + ": " + fault));
            }
        }
    }

    @Test
    void every_reference_leads_somewhere_and_no_key_is_a_slip_of_the_pen() {
        walk(DOCUMENT.root(), "");
    }

    private static void walk(JsonNode node, String at) {
        if (node.has("$ref")) {
            String reference = node.get("$ref").asText();
            assertThat(DOCUMENT.root().at(reference.substring(1)).isMissingNode()).as(at + " -> " + reference)
                .isFalse();
        }
        for (Map.Entry<String, JsonNode> field : node.properties()) {
            assertThat(field.getValue().isNull() && !at.contains("/example")).as(at + "/" + field.getKey()
                + " has no value").isFalse();
            walk(field.getValue(), at + "/" + field.getKey());
        }
        if (node.isArray()) {
            node.forEach(item -> walk(item, at + "/-"));
        }
    }

    @Test
    void every_shape_and_every_key_is_explained() {
        for (Map.Entry<String, JsonNode> schema : DOCUMENT.root().path("components").path("schemas").properties()) {
            assertThat(schema.getValue().path("description").asText()).as(schema.getKey()).isNotBlank();
            explained(schema.getValue(), schema.getKey());
        }
    }

    private static void explained(JsonNode schema, String at) {
        for (Map.Entry<String, JsonNode> property : schema.path("properties").properties()) {
            String description = property.getValue().path("description").asText(DOCUMENT.followed(property.getValue())
                .path("description").asText());
            assertThat(description).as(at + "." + property.getKey()).isNotBlank();
            explained(property.getValue(), at + "." + property.getKey());
            explained(property.getValue().path("items"), at + "." + property.getKey() + "[]");
        }
    }

    private interface OfOperation {
        String value(OpenApi.Operation operation);
    }

    private interface OfRoute {
        String value(Route route);
    }

    private static Map<String, String> documented(OfOperation of) {
        Map<String, String> all = new TreeMap<>();
        DOCUMENT.operations().forEach(operation -> all.put(operation.method() + " " + operation.path(),
            of.value(operation)));
        return all;
    }

    private static Map<String, String> coded(OfRoute of) {
        Map<String, String> all = new TreeMap<>();
        for (Route route : table.routes()) {
            route.paths().forEach(path -> all.put(name(route, path), of.value(route)));
        }
        return all;
    }

    private static String name(Route route, String path) {
        return route.method() + " " + path.replace('<', '{').replace('>', '}');
    }

    private static Set<String> parameters(OpenApi.Operation operation, String in) {
        Set<String> names = new TreeSet<>();
        List<JsonNode> all = new ArrayList<>();
        operation.node().path("parameters").forEach(all::add);
        DOCUMENT.root().path("paths").path(operation.path()).path("parameters").forEach(all::add);
        all.stream().map(DOCUMENT::followed).filter(parameter -> parameter.path("in").asText().equals(in))
            .forEach(parameter -> names.add(parameter.path("name").asText()));
        return names;
    }

    private static Set<String> names(JsonNode object) {
        Set<String> names = new TreeSet<>();
        object.fieldNames().forEachRemaining(names::add);
        return names;
    }

    private static String mediaTypes(List<Form> forms) {
        return forms.stream().map(Form::mediaType).collect(Collectors.toCollection(TreeSet::new)).toString();
    }
}
