package surfeit.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Puts what the benchmarks of this run measured into one table: {@code target/bench/table.md} and {@code .csv}. */
@Tag("bench-table")
class TableTest {
    private static final Path FOLDER = Path.of("target", "bench");

    @Test
    void every_goal_stands_in_the_table() throws IOException, InterruptedException {
        List<String> markdown = new ArrayList<>(List.of(machine(), "",
            "| | goal | wanted | ceiling | ours | ratio | |", "|---|---|---|---|---|---|---|"));
        List<String> csv = new ArrayList<>(List.of("number,goal,wanted,ceiling,ours,ratio,verdict"));
        for (Goal goal : Goal.values()) {
            List<String> cells = goal.found().cells();
            markdown.add("| " + String.join(" | ", cells) + " |");
            csv.add(String.join(",", cells.stream().map(cell -> '"' + cell + '"').toList()));
        }
        Files.createDirectories(FOLDER);
        Files.write(FOLDER.resolve("table.md"), markdown);
        Files.write(FOLDER.resolve("table.csv"), csv);
        markdown.forEach(System.out::println);
        assertThat(markdown).hasSize(4 + Goal.values().length);
    }

    /** Which commit, Java and machine gave the figures. */
    private static String machine() throws IOException, InterruptedException {
        return "Commit " + said("git", "rev-parse", "--short", "HEAD")
            + (said("git", "status", "--porcelain").isEmpty() ? "" : " with changes") + ", Java "
            + Runtime.version() + ", " + Runtime.getRuntime().availableProcessors() + " cores, "
            + System.getProperty("os.name") + " " + System.getProperty("os.arch") + ".";
    }

    private static String said(String... command) throws IOException, InterruptedException {
        try {
            Process process = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
            String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
            return process.waitFor() == 0 ? text : "unknown";
        } catch (IOException e) {
            return "unknown";
        }
    }
}
