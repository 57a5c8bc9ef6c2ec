package surfeit.faults;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Duration;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A second service on the same folder, another program that holds the file, and a file that was overwritten. */
class UnusableRecordTest {
    private static final Duration START = Duration.ofSeconds(30);

    @TempDir
    Path folder;

    @Test
    void a_second_service_on_the_same_folder_is_refused_and_the_first_goes_on() throws Exception {
        try (RunningProgram first = RunningProgram.serve(folder)) {
            try (RunningProgram second = RunningProgram.serve(folder)) {
                assertThat(second.isListening()).isFalse();
                assertThat(second.exitWithin(START)).isEqualTo(1);
                assertThat(second.log()).contains("The data folder " + folder
                    + " is in use by another running program (process ")
                    .contains("Stop that one, or choose another folder with --data").doesNotContain("at surfeit.");
            }
            assertThat(first.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}").statusCode()).isEqualTo(201);
            Figures.print("two services on one folder", "the second ended with exit code 1, the first went on");
        }
    }

    @Test
    void a_file_that_another_program_holds_is_told_with_what_to_do_and_used_again_once_it_is_free() throws Exception {
        try (RunningProgram program = RunningProgram.serve(folder)) {
            program.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
            SentSpots spots = SentSpots.table("A7", "p", 12, new Random(1));
            try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("surfeit.db"));
                 Statement statement = other.createStatement()) {
                statement.execute("BEGIN IMMEDIATE");

                assertUnavailable(program.post("/v1/samples/A7/spots", spots.mediaType(), spots.body()),
                    "Another program holds the file");
                assertThat(program.get("/v1/samples/A7").statusCode()).as("reading goes on").isEqualTo(200);

                statement.execute("ROLLBACK");
            }
            assertThat(program.post("/v1/samples/A7/spots", spots.mediaType(), spots.body()).statusCode())
                .isEqualTo(201);
            assertThat(RecordedSpots.of(program, "A7").count()).isEqualTo(12);
            Figures.print("file locked by another program", "12 spots refused with 503, then acknowledged, 0 lost");
        }
    }

    @Test
    void a_file_overwritten_while_the_service_runs_is_told_and_never_read_as_values() throws Exception {
        fill();
        try (RunningProgram program = RunningProgram.serve(folder)) {
            overwrite();

            assertUnavailable(program.get("/v1/samples/A7/spots?page_size=5000"), "is damaged",
                "restore the last backup");
            assertNeverWhole(program, "/v1/samples/A7/spots.ndjson");
            assertNeverWhole(program, "/v1/samples/A7/spots.csv");
            assertNeverWhole(program, "/v1/samples/A7/segregation");
            assertNeverWhole(program, "/v1/backup");
            assertThat(program.get("/healthz").statusCode()).isEqualTo(200);
            program.terminate();
            program.exitWithin(START);
        }
        try (RunningProgram again = RunningProgram.serve(folder)) {
            assertThat(again.isListening()).isFalse();
            assertThat(again.exitWithin(START)).isEqualTo(1);
            assertThat(again.log()).contains("is damaged", "Keep a copy of it, and restore the last backup")
                .doesNotContain("at surfeit.");
        }
        Figures.print("file overwritten", "told with 503 while running, exit code 1 at the next start");
    }

    private static void assertNeverWhole(RunningProgram program, String path) throws InterruptedException {
        String outcome;
        try {
            outcome = "answered with " + program.get(path).statusCode();
        } catch (IOException e) {
            outcome = "broken off";
        }
        assertThat(outcome).as(path).isIn("answered with 503", "broken off");
    }

    private void fill() throws Exception {
        try (RunningProgram program = RunningProgram.serve(folder)) {
            program.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
            SentSpots spots = SentSpots.table("A7", "p", 2000, new Random(1));
            assertThat(program.post("/v1/samples/A7/spots", spots.mediaType(), spots.body()).statusCode())
                .isEqualTo(201);
            program.terminate();
            program.exitWithin(START);
        }
    }

    /** Overwrites all but the first pages, in which the engine keeps the list of tables. */
    private void overwrite() throws IOException {
        try (RandomAccessFile file = new RandomAccessFile(folder.resolve("surfeit.db").toFile(), "rw")) {
            for (long at = 40 * 4096; at + 4096 <= file.length(); at += 4096) {
                file.seek(at);
                file.write("overwritten by something else".repeat(100).getBytes(StandardCharsets.US_ASCII));
            }
        }
    }

    private static void assertUnavailable(HttpResponse<String> answer, String... words) {
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(503);
        assertThat(answer.body()).contains("\"code\":\"storage-unavailable\"").contains(words);
    }
}
