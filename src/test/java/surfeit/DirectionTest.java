package surfeit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Which package may use which, which outside library belongs where, and what the core does without. */
class DirectionTest {
    private static final Path MAIN = Path.of("src", "main", "java");
    private static final int LONGEST_FILE = 400;

    /** Packages of this project each package may use; the core stands first. */
    private static final Map<String, Set<String>> MAY_USE = Map.ofEntries(
        Map.entry("element", Set.of()),
        Map.entry("statistics", Set.of()),
        Map.entry("composition", Set.of("element")),
        Map.entry("spot", Set.of("composition", "element")),
        Map.entry("xray", Set.of("composition", "element")),
        Map.entry("preparation", Set.of("spot", "composition", "element")),
        Map.entry("rival", Set.of("preparation", "spot", "composition", "element", "xray")),
        Map.entry("intake", Set.of("spot", "composition", "element")),
        Map.entry("segregation", Set.of("rival", "preparation", "composition", "spot", "statistics", "element", "xray")),
        Map.entry("report", Set.of("segregation", "rival", "spot", "composition", "statistics", "element", "xray")),
        Map.entry("lab", calculating()),
        Map.entry("storage", with(calculating(), "lab")),
        Map.entry("http", with(calculating(), "lab")),
        Map.entry("cli", with(calculating(), "lab", "http", "storage")));

    /** The same between the parts of the interpretation; those below know nothing of their front doors, "". */
    private static final Map<String, Set<String>> INTERPRETATION_MAY_USE = Map.ofEntries(
        Map.entry("answer", Set.of()),
        Map.entry("uncertainty", Set.of()),
        Map.entry("sums", Set.of("answer", "uncertainty")),
        Map.entry("blocks", Set.of("answer", "sums")),
        Map.entry("nominal", Set.of("answer", "uncertainty", "sums", "blocks")),
        Map.entry("phase", tested()),
        Map.entry("depth", tested()),
        Map.entry("contrast", with(tested(), "blocks")),
        Map.entry("verdict", with(tested(), "phase", "depth")),
        Map.entry("plan", with(tested(), "blocks", "contrast")),
        Map.entry("screening", with(tested(), "blocks")),
        Map.entry("", with(tested(), "blocks", "phase", "depth", "contrast", "verdict")));

    private static final Set<String> CORE = with(calculating(), "lab");

    /** Beginnings of names from outside this project and Java; a name that begins like none of them is refused. */
    private static final Map<String, Set<String>> LIBRARIES_ONLY_IN = Map.ofEntries(
        Map.entry("org.apache.commons.math3.", CORE),
        Map.entry("de.siegmar.fastcsv.", Set.of("element", "intake", "report", "http")),
        Map.entry("com.fasterxml.jackson.", Set.of("http")),
        Map.entry("io.javalin.", Set.of("http")),
        Map.entry("org.eclipse.jetty.", Set.of("http")),
        Map.entry("jakarta.servlet.", Set.of("http")),
        Map.entry("kotlin.", Set.of("http")),
        Map.entry("org.jdbi.", Set.of("storage")),
        Map.entry("com.zaxxer.hikari.", Set.of("storage")),
        Map.entry("org.flywaydb.", Set.of("storage")),
        Map.entry("org.sqlite.", Set.of("storage")),
        Map.entry("org.postgresql.", Set.of("storage")),
        Map.entry("javax.sql.", Set.of("storage")),
        Map.entry("com.sun.management.", Set.of("http")),
        Map.entry("picocli.", Set.of("cli")),
        Map.entry("org.slf4j.", Set.of("http", "storage", "cli")));

    /** Parts of Java itself that are kept to some packages. */
    private static final Map<String, Set<String>> JAVA_ONLY_IN = Map.of(
        "java.sql.", Set.of("storage"),
        "java.net.http.", Set.of("http", "cli"),
        "java.util.logging.", Set.of("http", "storage", "cli"));

    /** Time, chance, the console and the environment, which the core is given and never fetches. */
    private static final Pattern FETCHED = Pattern.compile("\\.now\\(\\)|\\bClock\\.system|"
        + "\\bSystem\\.(currentTimeMillis|nanoTime|out|err|in|getenv|getProperty|getLogger)\\b|"
        + "\\bMath\\.random\\b|\\bnew Random\\(\\)|\\bThreadLocalRandom\\b|"
        + "\\bSecureRandom\\b|\\brandomUUID\\b");

    /** The one way to make an exception without a stack trace: {@code super(message, null, false, false)}. */
    private static final Pattern WITHOUT_STACK_TRACE = Pattern.compile("super\\([^;]*, null, false, false\\)");

    private static List<SourceFile> files;

    @BeforeAll
    static void read() throws IOException {
        files = SourceFile.allUnder(MAIN);
    }

    @Test
    void every_package_has_its_place_in_the_picture() {
        assertThat(files).isNotEmpty();
        assertThat(files.stream().map(SourceFile::projectPackage)).isSubsetOf(MAY_USE.keySet());
    }

    @Test
    void uses_point_inward() {
        assertThat(findings(files, file -> file.projectPackagesUsed().stream()
            .filter(used -> !MAY_USE.getOrDefault(file.projectPackage(), Set.of()).contains(used)))).isEmpty();
    }

    @Test
    void uses_within_the_interpretation_point_inward_too() {
        List<SourceFile> interpretation =
            files.stream().filter(file -> file.projectPackage().equals("segregation")).toList();
        assertThat(interpretation.stream().map(SourceFile::part)).hasSameElementsAs(INTERPRETATION_MAY_USE.keySet());
        assertThat(findings(interpretation, file -> file.partsUsed().stream()
            .filter(used -> !INTERPRETATION_MAY_USE.getOrDefault(file.part(), Set.of()).contains(used)))).isEmpty();
    }

    @Test
    void no_package_uses_itself_by_way_of_others() {
        Map<String, Set<String>> uses = new TreeMap<>();
        files.forEach(file ->
            uses.computeIfAbsent(file.projectPackage(), name -> new TreeSet<>()).addAll(file.projectPackagesUsed()));
        assertNoneReachesItself(uses);
    }

    @Test
    void neither_does_a_part_of_the_interpretation() {
        assertNoneReachesItself(INTERPRETATION_MAY_USE);
    }

    private static void assertNoneReachesItself(Map<String, Set<String>> uses) {
        assertThat(uses.keySet()).allSatisfy(start -> {
            Set<String> reached = new HashSet<>(uses.get(start));
            for (int step = 0; step < uses.size(); step++) {
                reached.addAll(reached.stream().flatMap(name -> uses.getOrDefault(name, Set.of()).stream()).toList());
            }
            assertThat(reached).as("packages that %s uses in the end", start).doesNotContain(start);
        });
    }

    @Test
    void libraries_stay_where_they_belong() {
        assertThat(findings(files, file -> file.namesUsed().stream().filter(name -> !name.startsWith("surfeit."))
            .filter(name -> !allowed(name, file.projectPackage())))).isEmpty();
    }

    private static boolean allowed(String name, String projectPackage) {
        Map<String, Set<String>> rules = name.startsWith("java.") ? JAVA_ONLY_IN : LIBRARIES_ONLY_IN;
        return rules.entrySet().stream().filter(rule -> name.startsWith(rule.getKey())).findFirst()
            .map(rule -> rule.getValue().contains(projectPackage)).orElse(name.startsWith("java."));
    }

    @Test
    void the_core_is_given_time_and_chance_and_fetches_neither() {
        assertThat(findings(core(), file -> FETCHED.matcher(file.code()).results().map(MatchResult::group))).isEmpty();
    }

    @Test
    void the_core_knows_no_null() {
        assertThat(findings(core(), file -> WITHOUT_STACK_TRACE.matcher(file.code()).replaceAll("super()").lines()
            .filter(line -> line.matches(".*\\bnull\\b.*")))).isEmpty();
    }

    private static List<SourceFile> core() {
        return files.stream().filter(file -> CORE.contains(file.projectPackage())).toList();
    }

    /** What is wrong in each file, with its path in front. */
    private static List<String> findings(List<SourceFile> looked, Function<SourceFile, Stream<String>> wrong) {
        return looked.stream()
            .flatMap(file -> wrong.apply(file).map(found -> file.path() + ": " + found.strip())).toList();
    }

    @Test
    void no_package_is_a_drawer_for_everything() throws IOException {
        try (Stream<Path> paths = Files.walk(MAIN)) {
            assertThat(paths.filter(Files::isDirectory).map(path -> path.getFileName().toString()))
                .doesNotContain("util", "utils", "common", "commons", "helper", "helpers", "misc", "tools");
        }
    }

    @Test
    void every_package_says_what_it_is() {
        assertThat(files.stream().map(file -> file.path().resolveSibling("package-info.java")).distinct())
            .allSatisfy(description -> assertThat(description).exists());
    }

    @Test
    void no_file_is_longer_than_four_hundred_lines() throws IOException {
        assertThat(findings(SourceFile.allUnder(Path.of("src")), file -> Stream.of(file.lineCount())
            .filter(lines -> lines > LONGEST_FILE).map(lines -> lines + " lines"))).isEmpty();
    }

    private static Set<String> calculating() {
        return Set.of("element", "composition", "statistics", "xray", "spot", "preparation", "rival", "segregation",
            "intake", "report");
    }

    /** What a part of the interpretation uses that goes on from groups tested against nominal. */
    private static Set<String> tested() {
        return Set.of("answer", "uncertainty", "sums", "nominal");
    }

    private static Set<String> with(Set<String> packages, String... more) {
        Set<String> all = new TreeSet<>(packages);
        all.addAll(Arrays.asList(more));
        return all;
    }
}
