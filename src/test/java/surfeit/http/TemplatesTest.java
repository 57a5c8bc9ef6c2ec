package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import surfeit.intake.SpotField;

/** The templates that a lab writes over are taken as they are; their rows are invented. */
class TemplatesTest {
    private static final Path FOLDER = Path.of("shared", "templates");
    private static RunningService service;

    @BeforeAll
    static void start() {
        service = RunningService.start();
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    /** Every template that holds spots. */
    static List<String> spots() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.map(file -> file.getFileName().toString()).filter(name -> name.contains("spots")).sorted().toList();
        }
    }

    @ParameterizedTest
    @MethodSource("spots")
    void a_template_of_spots_is_recorded_as_it_is_with_nothing_left_out(String name) throws IOException {
        assertThat(service.put("/v1/samples/" + name, text("sample-invented.json")).status()).isEqualTo(201);
        Reply taken = service.post("/v1/samples/" + name + "/spots", name.endsWith(".csv") ? "text/csv"
            : "application/x-ndjson", text(name));
        assertThat(taken.status()).as(taken.text()).isEqualTo(201);
        assertThat(taken.json().path("accepted_count").asInt()).isGreaterThan(1);
        assertThat(taken.json().path("rejected_count").asInt()).isZero();
        assertThat(taken.json().path("left_out")).isEmpty();
        JsonNode patch = service.get("/v1/samples/" + name + "/spots").json().path("items").valueStream()
            .filter(spot -> spot.path("label").asText().equals("P1-patch-1")).findFirst().orElseThrow();
        assertThat(patch.path("unit").asText()).isEqualTo("at%");
        assertThat(patch.at("/elements/Ag/value").asDouble()).isEqualTo(21.2);
        assertThat(patch.at("/elements/Cu/value").asDouble()).isEqualTo(78.8);
        assertThat(patch.path("feature").asText()).isEqualTo("dark patch");
        assertThat(service.get("/v1/samples/" + name + "/segregation").json().path("groups")).isNotEmpty();
    }

    @Test
    void the_reference_spots_of_their_template_correct_the_others() throws IOException {
        service.put("/v1/samples/referenced", text("sample-invented.json"));
        service.post("/v1/samples/referenced/spots", "text/csv", text("reference-spots-invented.csv"));
        JsonNode group = service.get("/v1/samples/referenced/segregation").json().path("groups").get(0);
        assertThat(group.at("/reference/used").asBoolean()).isTrue();
    }

    @Test
    void every_column_that_a_table_may_have_is_in_a_template() throws IOException {
        Set<String> columns = new LinkedHashSet<>();
        for (String name : spots()) {
            columns.addAll(List.of(text(name).lines().findFirst().orElseThrow().split(",")));
        }
        assertThat(columns).containsAll(Arrays.stream(SpotField.values()).map(SpotField::text)
            .filter(field -> !field.equals("unit")).toList());
    }

    @Test
    void the_json_templates_fit_their_schemas() throws IOException {
        SchemaFile spot = SchemaFile.read("spot.json");
        assertThat(text("spots-invented.ndjson").lines().map(OpenApi::parse)).hasSize(2)
            .allSatisfy(line -> assertThat(spot.faults(line)).isEmpty());
        assertThat(SchemaFile.read("sample.json").faults(OpenApi.parse(text("sample-invented.json")))).isEmpty();
    }

    @Test
    void every_template_says_in_its_name_that_its_rows_are_invented() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            assertThat(files.map(file -> file.getFileName().toString())).hasSizeGreaterThan(5)
                .allMatch(name -> name.contains("-invented."));
        }
    }

    private static String text(String name) throws IOException {
        return Files.readString(FOLDER.resolve(name));
    }
}
