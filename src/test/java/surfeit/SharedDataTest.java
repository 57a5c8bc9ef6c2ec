package surfeit;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import surfeit.element.ElementTable;
import surfeit.element.ReferenceTable;

/** What the folder {@code shared} promises to its readers. */
class SharedDataTest {
    private static final Path SHARED = Path.of("shared");
    private static final Path REFERENCE = SHARED.resolve("reference");
    private static final String CHECK_CASES = "vectors/NN-*.json";

    static List<String> tables() throws IOException {
        try (Stream<Path> files = Files.list(REFERENCE)) {
            return files.map(file -> file.getFileName().toString()).filter(name -> name.endsWith(".csv")).sorted()
                .toList();
        }
    }

    static List<Path> files() throws IOException {
        try (Stream<Path> files = Files.walk(SHARED)) {
            return files.filter(Files::isRegularFile).sorted().toList();
        }
    }

    @ParameterizedTest
    @MethodSource("tables")
    void every_row_has_a_source_and_all_columns(String name) {
        ReferenceTable table = ReferenceTable.packaged(name);
        Set<String> columns = table.rows().get(0).keySet();
        assertThat(columns).contains("source");
        assertThat(table.rows()).allSatisfy(row -> {
            assertThat(row.get("source")).isNotBlank();
            assertThat(row.keySet()).isEqualTo(columns);
        });
    }

    static List<String> wordLists() throws IOException {
        try (Stream<Path> files = Files.list(SHARED.resolve("vocabulary"))) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @ParameterizedTest
    @MethodSource("wordLists")
    void every_word_has_a_source_and_all_columns_and_stands_once(String name) {
        List<Map<String, String>> rows = ReferenceTable.vocabulary(name).rows();
        int keys = name.equals("words.csv") ? 2 : 1;
        assertThat(rows).allSatisfy(row -> assertThat(row.keySet()).isEqualTo(rows.get(0).keySet()));
        assertThat(rows).extracting(row -> row.values().stream().limit(keys).toList()).doesNotHaveDuplicates()
            .allMatch(words -> words.stream().noneMatch(String::isBlank));
    }

    @Test
    void the_checksums_are_those_of_the_tables() throws IOException {
        Map<String, String> listed = Files.readAllLines(REFERENCE.resolve("SHA256SUMS")).stream()
            .map(line -> line.split(" {2}", 2)).collect(Collectors.toMap(parts -> parts[1], parts -> parts[0]));
        assertThat(listed.keySet()).containsExactlyInAnyOrderElementsOf(tables());
        for (String name : tables()) {
            assertThat(ReferenceTable.packaged(name).sha256())
                .as(name + ": after a change, write the checksums anew (shared/README.md)").isEqualTo(listed.get(name));
        }
    }

    @ParameterizedTest
    @MethodSource("tables")
    void every_element_a_table_names_is_known(String name) {
        List<String> symbols = ReferenceTable.packaged(name).rows().stream()
            .flatMap(row -> Stream.of("symbol", "emitter", "elem_a", "elem_b").filter(row::containsKey).map(row::get))
            .toList();
        assertThat(symbols).allSatisfy(symbol -> assertThat(ElementTable.standard().bySymbol(symbol)).isPresent());
    }

    @ParameterizedTest
    @MethodSource("files")
    void texts_are_utf8_without_a_mark_and_end_their_lines_in_lf(Path file) throws IOException {
        String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(Files.readAllBytes(file))).toString();
        assertThat(text).doesNotContain("\r").doesNotContain("\uFEFF").isNotBlank();
    }

    @Test
    void the_version_is_three_numbers() throws IOException {
        assertThat(Files.readString(SHARED.resolve("VERSION"))).matches("\\d+\\.\\d+\\.\\d+\\R");
    }

    @Test
    void the_readme_has_a_line_for_every_file_and_names_none_that_is_missing() throws IOException {
        Set<String> present = files().stream().map(file -> SHARED.relativize(file).toString().replace('\\', '/'))
            .map(name -> name.matches("vectors/\\d\\d-[a-z0-9-]+\\.json") ? CHECK_CASES : name)
            .collect(Collectors.toCollection(LinkedHashSet::new));
        Set<String> named = Files.readAllLines(SHARED.resolve("README.md")).stream()
            .filter(line -> line.startsWith("| `")).map(line -> line.split("`")[1]).collect(Collectors.toSet());
        assertThat(named).containsExactlyInAnyOrderElementsOf(present);
    }

    @Test
    void every_client_says_in_its_head_whether_the_tests_run_it_and_the_readme_says_the_same() throws IOException {
        String readme = Files.readString(SHARED.resolve("README.md"));
        try (Stream<Path> clients = Files.list(SHARED.resolve("clients"))) {
            assertThat(clients.filter(Files::isRegularFile)).isNotEmpty().allSatisfy(client -> {
                String head = Files.readString(client).lines().limit(25).collect(Collectors.joining(" "));
                boolean run = head.contains("Run by the project's own tests");
                assertThat(head.contains("Not run by the project's tests")).as(client.toString()).isNotEqualTo(run);
                assertThat(readme).containsPattern("`clients/" + client.getFileName() + "` .*; "
                    + (run ? "run by the tests" : "not run") + " \\|");
            });
        }
    }

    @Test
    void every_check_case_says_that_its_data_are_invented() throws IOException {
        ObjectMapper json = new ObjectMapper();
        for (Path file : files()) {
            if (file.getFileName().toString().matches("\\d\\d-.*\\.json")) {
                assertThat(json.readTree(file.toFile()).path("data_origin").asText()).as(file.toString())
                    .contains("invented");
            }
        }
    }
}
