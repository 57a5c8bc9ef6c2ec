package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import surfeit.composition.Basis;
import surfeit.composition.SourceRead;
import surfeit.element.ReferenceTable;
import surfeit.intake.CsvDialect;
import surfeit.lab.InputChange;
import surfeit.lab.LabEvent;
import surfeit.lab.Problem;
import surfeit.lab.SampleRevision;
import surfeit.lab.TokenScope;
import surfeit.rival.Rival;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.DepthReading;
import surfeit.segregation.answer.DiffractionMismatch;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.PhaseReading;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Scope;
import surfeit.segregation.answer.SpotSpread;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.contrast.FeatureComparison;
import surfeit.segregation.plan.MeasurementPlan;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Position;
import surfeit.spot.SpotCentre;
import surfeit.xray.DepthCaveat;
import surfeit.xray.Excitation;
import surfeit.xray.OverlapSeverity;

/** The words and codes of answers, and the tables of {@code shared/vocabulary} that explain them, know each other. */
class WordListsTest {
    /** Lists that are constants of the program. */
    private static final Map<String, List<String>> CONSTANTS = Map.ofEntries(
        list("verdict", Verdict.values(), Verdict::word), list("contrast verdict", Contrast.Word.values(), Contrast.Word::word),
        list("reason", Reason.values(), Reason::word),
        list("scope", Scope.values(), Scope::word),
        list("caveat weight", Caveat.Weight.values(), WordListsTest::spoken),
        list("cause strength", Rival.CouldExplain.values(), Rival.CouldExplain::word),
        list("phase reading", PhaseReading.Kind.values(), PhaseReading.Kind::word),
        list("spot pattern", SpotSpread.Pattern.values(), SpotSpread.Pattern::word),
        list("depth reading", DepthReading.Word.values(), DepthReading.Word::word),
        list("diffraction mismatch", DiffractionMismatch.Kind.values(), DiffractionMismatch.Kind::word),
        list("feature state", FeatureComparison.State.values(), FeatureComparison.State::word),
        list("plan remedy", MeasurementPlan.Remedy.Kind.values(), MeasurementPlan.Remedy.Kind::word),
        list("excitation", Excitation.values(), WordListsTest::spoken),
        list("overlap severity", OverlapSeverity.values(), WordListsTest::spoken),
        Map.entry("event", with(words(LabEvent.Type.values(), LabEvent.Type::word), "stream.reset", "stream.shutdown")),
        Map.entry("change", with(words(SampleRevision.What.values(), SampleRevision.What::words), InputChange.ALLOY_STATED)),
        list("upload state", OngoingUpload.State.values(), OngoingUpload.State::word),
        list("table layout", CsvDialect.Layout.values(), CsvDialect.Layout::words),
        list("dialect origin", CsvDialect.DecidedBy.values(), CsvDialect.DecidedBy::words),
        list("unit", Basis.values(), Basis::unit), list("grouping", GroupBy.values(), GroupBy::word),
        list("accuracy class", AccuracyClass.values(), AccuracyClass::words),
        list("form", surfeit.spot.Form.values(), surfeit.spot.Form::words),
        list("spot centre", SpotCentre.values(), SpotCentre::words), list("position", Position.values(), Position::words),
        list("source read", SourceRead.values(), SourceRead::words), list("token scope", TokenScope.values(), TokenScope::word));
    /** Lists that only the OpenAPI document states, to which every answer of every test is held. */
    private static final Set<String> OF_THE_DOCUMENT =
        Set.of("scale", "random uncertainty", "reading state", "role", "alloy origin", "beam question");
    /** One word for machines that ask whether the service runs. */
    private static final Set<String> NOT_EXPLAINED = Set.of("/Status/properties/status");
    private static final Pattern CAVEAT = Pattern.compile("Caveat\\.(?:note|warning)\\(\\s*(?:\"([a-z-]+)\")?");
    private static final JsonNode SHAPES = OpenApi.DOCUMENT.root().path("components").path("schemas");

    @Test
    void every_constant_has_its_row_and_every_row_its_constant() {
        Map<String, List<String>> explained = explained();
        assertThat(explained.keySet()).containsAll(OF_THE_DOCUMENT).containsAll(CONSTANTS.keySet())
            .hasSize(OF_THE_DOCUMENT.size() + CONSTANTS.size());
        CONSTANTS.forEach((list, words) -> assertThat(explained.get(list)).as(list).containsExactlyElementsOf(words));
    }

    @Test
    void every_list_of_words_of_the_openapi_document_is_explained_and_every_explained_word_is_in_one() {
        Map<String, Set<String>> documented = new LinkedHashMap<>();
        collect(SHAPES, "", documented);
        Map<String, List<String>> explained = explained();
        assertThat(documented.keySet()).containsExactlyInAnyOrderElementsOf(explained.keySet());
        documented.forEach((list, words) ->
            assertThat(words).as(list).containsExactlyInAnyOrderElementsOf(explained.get(list)));
    }

    @Test
    void the_readme_of_the_shared_files_says_where_each_list_stands() throws IOException {
        List<String> told = Files.readAllLines(Path.of("shared", "README.md")).stream()
            .dropWhile(line -> !line.startsWith("| list | ")).skip(2).takeWhile(line -> line.startsWith("| "))
            .flatMap(line -> Stream.of(line.substring(2, line.indexOf(" | ")).split(", "))).toList();
        assertThat(told).containsExactlyInAnyOrderElementsOf(explained().keySet());
    }

    @Test
    void every_file_the_openapi_document_points_to_is_there() {
        List<String> urls = SHAPES.findValues("externalDocs").stream().map(docs -> docs.path("url").asText()).toList();
        assertThat(urls).hasSizeGreaterThan(20).allMatch(url ->
            PackedFiles.load().shared().containsKey(url.replaceFirst("^/shared/", "")));
    }

    @Test
    void every_caveat_of_the_program_has_its_row_and_every_row_its_caveat() throws IOException {
        Set<String> given = new LinkedHashSet<>();
        try (Stream<Path> files = Files.walk(Path.of("src", "main", "java"))) {
            for (Path file : files.filter(path -> path.toString().endsWith(".java")).toList()) {
                for (Matcher call = CAVEAT.matcher(Files.readString(file)); call.find();) {
                    assertThat(call.group(1)).as("%s: a caveat is told with its code as it is", file).isNotNull();
                    given.add(call.group(1));
                }
            }
        }
        assertThat(given).hasSizeGreaterThan(30);
        Arrays.stream(DepthCaveat.values()).forEach(caveat -> given.add(spoken(caveat).replace(' ', '-')));
        assertThat(column("caveats.csv", "code")).containsExactlyInAnyOrderElementsOf(given);
    }

    @Test
    void every_problem_has_its_row_in_the_words_of_its_page_and_every_row_its_problem() {
        List<List<String>> rows = ReferenceTable.vocabulary("problems.csv").rows().stream()
            .map(row -> Stream.of("code", "status", "title", "meaning", "what_to_do").map(row::get).toList()).toList();
        assertThat(rows).containsExactlyElementsOf(Arrays.stream(Problem.values()).map(problem -> List.of(problem.code(),
            Integer.toString(problem.status()), problem.title(), problem.explanation(), problem.whatToDo())).toList());
    }

    @Test
    void every_end_of_a_name_that_the_lint_knows_has_its_row_and_every_row_is_one_it_knows() throws IOException {
        String rule = Files.readString(Path.of("openapi", "functions", "unit-in-name.js"));
        List<String> known = new ArrayList<>();
        for (String from : new String[] {"const UNITS =", "const PARTS ="}) {
            int begin = rule.indexOf(from);
            Matcher end = Pattern.compile("[('|](_[a-z0-9_]+)").matcher(rule.substring(begin, rule.indexOf(";", begin)));
            while (end.find()) {
                known.add(end.group(1));
            }
        }
        assertThat(column("units.csv", "ending")).hasSizeGreaterThan(20).containsExactlyElementsOf(known);
    }

    /** Adds the words of every list below a node to those of its name. */
    private static void collect(JsonNode node, String at, Map<String, Set<String>> documented) {
        if (node.path("enum").isArray() && !NOT_EXPLAINED.contains(at)) {
            assertThat(node.path("x-words").asText()).as("%s names its list as x-words", at).isNotEmpty();
            Set<String> words = documented.computeIfAbsent(node.path("x-words").asText(), name -> new LinkedHashSet<>());
            node.path("enum").valueStream().filter(JsonNode::isTextual).map(JsonNode::asText).forEach(words::add);
        }
        node.properties().forEach(each -> collect(each.getValue(), at + "/" + each.getKey(), documented));
        if (node.isArray()) {
            node.forEach(each -> collect(each, at, documented));
        }
    }

    private static Map<String, List<String>> explained() {
        Map<String, List<String>> lists = new LinkedHashMap<>();
        ReferenceTable.vocabulary("words.csv").rows().forEach(row ->
            lists.computeIfAbsent(row.get("list"), name -> new ArrayList<>()).add(row.get("word")));
        return lists;
    }

    private static List<String> column(String table, String name) {
        return ReferenceTable.vocabulary(table).rows().stream().map(row -> row.get(name)).toList();
    }

    private static <E> Map.Entry<String, List<String>> list(String name, E[] constants, Function<E, String> word) {
        return Map.entry(name, words(constants, word));
    }

    private static <E> List<String> words(E[] constants, Function<E, String> word) {
        return Arrays.stream(constants).map(word).toList();
    }

    private static List<String> with(List<String> words, String... more) {
        return Stream.concat(words.stream(), Stream.of(more)).toList();
    }

    /** What answers make of a constant that has no word of its own. */
    private static String spoken(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
