package surfeit.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.http.Server;

/** The README says what the program does: its settings, its commands, its curl lines. */
class ReadmeTest {
    private static final Pattern ROW = Pattern.compile("\\| `([a-z-]+)` \\| (.*?) \\| (.*?) \\| (.*?) \\|");

    private static final Settings SETTINGS = Settings.read(Map.of(Setting.PORT, "0"), Map.of(), Optional.empty());

    @TempDir
    Path folder;

    @Test
    void every_setting_is_in_the_table_with_its_default_and_every_row_is_a_setting() throws IOException {
        List<String> documented = section("## Settings").lines().map(ROW::matcher).filter(Matcher::matches)
            .map(row -> row.group(1) + " = " + row.group(2) + " (" + row.group(3) + "): " + row.group(4)).toList();
        List<String> known = Arrays.stream(Setting.values())
            .map(setting -> setting.key() + " = " + (setting.standard().isEmpty() ? "–" : setting.standard())
                + " (" + setting.unit() + "): " + setting.meaning()).toList();
        assertThat(documented).containsExactlyElementsOf(known);
    }

    @Test
    void every_command_the_readme_names_exists() throws IOException {
        Matcher command = Pattern.compile("surfeit\\.jar ([a-z-]+)").matcher(readme());
        List<String> named = new ArrayList<>();
        while (command.find()) {
            named.add(command.group(1));
        }
        assertThat(named).isNotEmpty();
        assertThat(Main.commandLine().getSubcommands().keySet()).containsAll(named);
    }

    @Test
    void the_curl_lines_answer_for_the_table_shown_beside_them() throws IOException, InterruptedException {
        String section = section("## Your own table");
        Matcher table = Pattern.compile("```\\n(label,.*?)```", Pattern.DOTALL).matcher(section);
        assertThat(table.find()).isTrue();
        Files.writeString(folder.resolve("my-spots.csv"), table.group(1));
        List<String> lines = curlLines(section);
        assertThat(lines).hasSizeGreaterThanOrEqualTo(4);
        try (Opened opened = opened(); Server server = Service.start(SETTINGS, opened)) {
            for (String line : lines) {
                String answer = run(line, server, folder);
                if (line.contains(".md")) {
                    assertThat(answer).contains("Cu enriched");
                }
            }
        }
    }

    @Test
    void the_first_command_answers_for_that_table_what_is_shown() throws IOException {
        String section = section("## Your own table");
        Matcher table = Pattern.compile("```\\n(label,.*?)```", Pattern.DOTALL).matcher(section);
        Matcher command = Pattern.compile("surfeit\\.jar (interpret .+)").matcher(section);
        Matcher shown = Pattern.compile("```\\n(feature .*?)```", Pattern.DOTALL).matcher(section);
        assertThat(table.find() && command.find() && shown.find()).isTrue();
        Path file = Files.writeString(folder.resolve("my-spots.csv"), table.group(1));
        CommandRun run = CommandRun.of((Object[]) command.group(1).strip().replace("my-spots.csv", file.toString()).split(" "));
        assertThat(run.code()).as(run.err()).isZero();
        for (String part : shown.group(1).strip().split("\n\n|(?=- )")) {
            assertThat(withoutRules(plain(run.out()))).contains(withoutRules(plain(part)).strip());
        }
    }

    @Test
    void the_described_sample_shown_beside_that_table_answers_with_its_cautions() throws IOException {
        String section = section("## Your own table");
        Matcher table = Pattern.compile("```\\n(label,.*?)```", Pattern.DOTALL).matcher(section);
        Matcher sample = Pattern.compile("```json\\n(.*?)```", Pattern.DOTALL).matcher(section);
        Matcher command = Pattern.compile("surfeit\\.jar (interpret .+ --sample .+) --format html").matcher(section);
        assertThat(table.find() && sample.find() && command.find()).isTrue();
        Path spots = Files.writeString(folder.resolve("my-spots.csv"), table.group(1));
        Path described = Files.writeString(folder.resolve("lot-7.json"), sample.group(1));
        CommandRun run = CommandRun.of((Object[]) command.group(1).strip().replace("my-spots.csv", spots.toString())
            .replace("lot-7.json", described.toString()).split(" "));
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(inOneLine(run.out())).contains("To be stated: feature_size_um", "Cautions", "Oxidisers:", "your site's rules")
            .doesNotContain("beam_energy_kev");
    }

    private static String withoutRules(String table) {
        return table.replaceAll("-{2,}", "-");
    }

    @Test
    void the_worked_case_quotes_what_the_program_says() throws IOException, InterruptedException {
        String section = section("## A worked case: as made against etched");
        StringBuilder said = new StringBuilder();
        section.lines().filter(line -> line.startsWith("java -jar target/surfeit.jar ")).forEach(line -> {
            CommandRun run = CommandRun.of((Object[]) line.replace("java -jar target/surfeit.jar ", "").split(" "));
            assertThat(run.code()).as(run.err()).isZero();
            said.append(inOneLine(run.out()));
        });
        List<String> quoted = section.lines().filter(line -> line.startsWith("> ")).map(line -> line.substring(2)).toList();
        assertThat(quoted).hasSize(5);
        assertThat(said).contains(quoted.get(0));
        try (Opened opened = opened(); Server server = Service.start(SETTINGS, opened)) {
            for (String line : curlLines(section)) {
                said.append(inOneLine(run(line, server, Path.of("").toAbsolutePath())));
            }
            assertThat(said).contains(quoted)
                .contains("\"id\":\"int_0001\"", "Quantify with standards: 3 particles then show it.");
            assertThat(inTwoSessions(server)).contains("Cu inconclusive, odds ×1.52 (0.93 to 2.48)")
                .contains("Measure lot-7 and another-day in one session");
            assertThat(section).contains("(odds ×0.93 to ×2.48)");
        }
    }

    /** The etched powder measured on another day, against the same powder as atomised. */
    private String inTwoSessions(Server server) throws IOException, InterruptedException {
        Path samples = Path.of("sample-spectra-results").toAbsolutePath();
        Files.writeString(folder.resolve("another-day.csv"),
            Files.readString(samples.resolve("ag-cu-braze-powder-etched.csv")).replace("2026-11-20-a", "2026-11-21-a"));
        String at = "http://127.0.0.1:8420/v1/samples/another-day";
        run("curl -X PUT -H 'Content-Type: application/json' --data-binary @"
            + samples.resolve("ag-cu-braze-powder-etched.sample.json") + " " + at, server, folder);
        run("curl -H 'Content-Type: text/csv' --data-binary @another-day.csv " + at + "/spots", server, folder);
        return run("curl 'http://127.0.0.1:8420/v1/comparisons.md?a=lot-7&b=another-day'", server, folder);
    }

    private Opened opened() {
        return Opened.on(folder.resolve("data"), SETTINGS);
    }

    private static List<String> curlLines(String section) {
        assumeTrue(Files.exists(Path.of("/usr/bin/curl")), "no curl on this machine: its lines were not run");
        return section.lines().filter(line -> line.startsWith("curl ")).toList();
    }

    private static String run(String line, Server server, Path in) throws IOException, InterruptedException {
        String command = line.replace("http://127.0.0.1:8420", server.address())
            .replace("curl ", "curl -sS --fail-with-body ");
        Process process = new ProcessBuilder("bash", "-c", command).directory(in.toFile()).redirectErrorStream(true)
            .start();
        String answer = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).as(line + "\n" + answer).isZero();
        return answer;
    }

    private static String inOneLine(String text) {
        return text.replaceAll("\\s+", " ");
    }

    @Test
    void the_worked_case_of_other_causes_prints_what_the_readme_shows() throws IOException {
        String section = section("## What else could explain it");
        Matcher command = Pattern.compile("surfeit\\.jar (.+)").matcher(section);
        assertThat(command.find()).isTrue();
        CommandRun run = CommandRun.of((Object[]) command.group(1).strip().split(" "));
        assertThat(run.code()).isZero();
        Matcher shown = Pattern.compile("```\\n(dark patch .*?)```", Pattern.DOTALL).matcher(section);
        assertThat(shown.find()).isTrue();
        String[] parts = shown.group(1).strip().split("\n\n");
        assertThat(parts).hasSize(3);
        for (String part : parts) {
            assertThat(plain(run.out())).contains(plain(part));
        }
        String explained = section.substring(shown.end());
        Object[] asReport = (command.group(1).strip() + " --format md").split(" ");
        String report = CommandRun.of(asReport).out();
        Matcher number = Pattern.compile("\\d+\\.\\d+").matcher(explained);
        while (number.find()) {
            assertThat(report).contains(number.group());
        }
        assertThat(explained).contains("1.76", "2.17", "4.52", "1.1", "50.2 to 64.2 %", "26.7 to 30.8 at% Si");
        assertThat(report).contains("50.2 to 64.2 %", "26.7 to 30.8 at% Si");
    }

    /** A terminal may lack the signs for "times" and "plus or minus", and then its table is a little wider. */
    private static String plain(String text) {
        return text.replace("\u00d7", "x").replaceAll("\u00b1|\\+-", "~").replaceAll("[ \n]+", " ");
    }

    private static String section(String heading) throws IOException {
        String text = readme();
        int from = text.indexOf(heading + "\n");
        assertThat(from).as(heading).isNotNegative();
        int to = text.indexOf("\n## ", from + heading.length());
        return text.substring(from, to < 0 ? text.length() : to);
    }

    private static String readme() throws IOException {
        return Files.readString(Path.of("README.md"));
    }
}
