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
        assumeTrue(Files.exists(Path.of("/usr/bin/curl")), "no curl on this machine: its lines were not run");
        String section = section("## Your own table");
        Matcher table = Pattern.compile("```\\n(label,.*?)```", Pattern.DOTALL).matcher(section);
        assertThat(table.find()).isTrue();
        Files.writeString(folder.resolve("my-spots.csv"), table.group(1));
        List<String> lines = section.lines().filter(line -> line.startsWith("curl ")).toList();
        assertThat(lines).hasSizeGreaterThanOrEqualTo(4);
        Settings settings = Settings.read(Map.of(Setting.PORT, "0"), Map.of(), Optional.empty());
        try (Opened opened = Opened.on(folder.resolve("data"), settings); Server server = ServeCommand.start(settings, opened)) {
            for (String line : lines) {
                String command = line.replace("http://127.0.0.1:8420", server.address()).replace("curl ", "curl -sS --fail-with-body ");
                Process process = new ProcessBuilder("bash", "-c", command).directory(folder.toFile()).redirectErrorStream(true).start();
                String answer = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
                assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
                assertThat(process.exitValue()).as(line + "\n" + answer).isZero();
                if (command.contains(".md")) {
                    assertThat(answer).contains("Cu enriched");
                }
            }
        }
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
