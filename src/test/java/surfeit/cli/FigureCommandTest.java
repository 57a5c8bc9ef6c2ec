package surfeit.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.lab.Expectation;
import surfeit.lab.Occasion;
import surfeit.spot.Sample;

/** Reports and figures printed by the commands, as files. */
class FigureCommandTest {
    private static final Path POWDER = Path.of("sample-spectra-results", "ag-cu-braze-powder.csv");
    private static final Path SAMPLE = Path.of("sample-spectra-results", "ag-cu-braze-powder.sample.json");

    @TempDir
    Path folder;

    private static String printed(Object... arguments) {
        PrintStream before = System.out;
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            System.setOut(new PrintStream(out, true, StandardCharsets.ISO_8859_1));
            CommandRun run = CommandRun.of(arguments);
            assertThat(run.code()).as(run.err()).isZero();
        } finally {
            System.setOut(before);
        }
        return out.toString(StandardCharsets.UTF_8);
    }

    @Test
    void a_file_of_spots_becomes_a_report_or_a_figure_in_utf_8_whatever_the_terminal_shows() {
        assertThat(printed("interpret", POWDER, "--sample", SAMPLE, "--format", "html"))
            .startsWith("<!DOCTYPE html>")
            .contains("<h1>ag-cu-braze-powder.csv: enrichment and depletion at the surface</h1>", "What was found",
                "\u00b1", "Figure 3.").endsWith("</html>\n");
        assertThat(printed("interpret", POWDER, "--sample", SAMPLE, "--format", "svg"))
            .startsWith("<?xml").contains("enrichment factors by feature").endsWith("</svg>\n");
        assertThat(printed("interpret", POWDER, "--sample", SAMPLE, "--format", "svg", "--figure", "spots"))
            .contains("every spot, by feature and particle");
    }

    @Test
    void a_sample_on_record_becomes_a_report_or_a_figure() {
        try (Opened opened = Opened.on(folder, Settings.read(Map.of(), Map.of(), Optional.empty()))) {
            opened.laboratory().describe("lot-7", Sample.of(Optional.of("ag-cu-eutectic"), Optional.empty()),
                Expectation.NONE, new Occasion("test", Instant.EPOCH));
        }
        assertThat(CommandRun.of("import", POWDER, "--sample", "lot-7", "--data", folder).code()).isZero();
        assertThat(printed("report", "lot-7", "--data", folder, "--format", "html")).contains("Sample lot-7");
        assertThat(printed("report", "lot-7", "--data", folder, "--format", "svg", "--figure", "contrasts"))
            .contains("Sample lot-7: groups against each other");
    }

    @Test
    void a_wrong_figure_is_wrong_usage() {
        assertThat(CommandRun.of("interpret", POWDER, "--sample", SAMPLE, "--format", "svg", "--figure", "pie"))
            .satisfies(run -> assertThat(run.code()).isEqualTo(2))
            .satisfies(run -> assertThat(run.err()).contains("factors, spots, contrasts or depths"));
        assertThat(CommandRun.of("interpret", POWDER, "--sample", SAMPLE, "--figure", "spots").code()).isEqualTo(2);
    }
}
