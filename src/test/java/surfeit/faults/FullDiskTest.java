package surfeit.faults;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The service runs on a disk of a few megabytes until that is full. */
class FullDiskTest {
    private static final int DISK_MEGABYTES = 8;
    private static final int SPOTS_A_TABLE = 200;
    private static final int REFUSALS = 5;
    private static final long LEFT_BYTES = 1_500_000;

    @TempDir
    Path folder;

    @Test
    void a_full_disk_is_told_reading_goes_on_and_writing_goes_on_once_there_is_room() throws Exception {
        Optional<SmallDisk> mounted = SmallDisk.mount(folder.resolve("disk"), DISK_MEGABYTES);
        assumeTrue(mounted.isPresent(), "no disk may be mounted here");
        try (SmallDisk disk = mounted.get()) {
            Path data = disk.path().resolve("data");
            Path temporary = Files.createDirectory(disk.path().resolve("tmp"));
            int acknowledged;
            try (RunningProgram program = RunningProgram.serve(data, "-Djava.io.tmpdir=" + temporary)) {
                program.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
                Path ballast = disk.fillUpTo(LEFT_BYTES);
                acknowledged = fill(program);
                assertFullButReadable(program, acknowledged);
                assertThat(leftBehind(data)).isEmpty();
                assertThat(leftBehind(temporary)).isEmpty();

                Files.delete(ballast);
                SentSpots more = SentSpots.table("A7", "after", SPOTS_A_TABLE, new Random(7));
                assertThat(program.post("/v1/samples/A7/spots", more.mediaType(), more.body()).statusCode())
                    .isEqualTo(201);
                acknowledged += SPOTS_A_TABLE;
                assertThat(program.get("/v1/backup").statusCode()).isEqualTo(200);
                program.terminate();
                program.exitWithin(Duration.ofSeconds(15));
                assertThat(program.log().lines()).isNotEmpty()
                    .allMatch(line -> line.contains(" WARN Refusals - The disk that holds "));
            }
            try (RunningProgram again = RunningProgram.serve(data)) {
                int recorded = RecordedSpots.of(again, "A7").count();
                Figures.print("full disk", acknowledged + " spots acknowledged before and after, "
                    + (acknowledged - recorded)
                    + " lost; refused with 507, readable meanwhile, written again once there was room");
                assertThat(recorded).isEqualTo(acknowledged);
            }
        }
    }

    /** Sends tables until one is refused, and a few more. @return how many spots were acknowledged */
    private static int fill(RunningProgram program) throws Exception {
        int acknowledged = 0;
        int refused = 0;
        for (int n = 0; refused < REFUSALS; n++) {
            SentSpots spots = SentSpots.table("A7", "t" + n, SPOTS_A_TABLE, new Random(n));
            HttpResponse<String> answer = program.post("/v1/samples/A7/spots", spots.mediaType(), spots.body());
            if (answer.statusCode() == 201) {
                acknowledged += SPOTS_A_TABLE;
            } else {
                assertFull(answer);
                refused++;
            }
        }
        assertThat(acknowledged).isPositive();
        return acknowledged;
    }

    private static void assertFullButReadable(RunningProgram program, int acknowledged) throws Exception {
        assertThat(program.get("/readyz").statusCode()).isEqualTo(200);
        assertThat(RecordedSpots.of(program, "A7").count()).isEqualTo(acknowledged);
        assertThat(program.get("/v1/samples/A7/segregation").statusCode()).isEqualTo(200);
        assertFull(program.get("/v1/backup"));
        String larger = SentSpots.table("A7", "large", 60_000, new Random(3)).body();
        assertThat(larger.length()).as("more than is kept in memory").isGreaterThan(1 << 20);
        assertFull(program.post("/v1/samples/A7/spots", "text/csv", larger));
    }

    private static void assertFull(HttpResponse<String> answer) {
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(507);
        assertThat(answer.body()).contains("\"code\":\"storage-full\"");
    }

    /** Files half made. */
    private static Stream<String> leftBehind(Path folder) throws Exception {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString())
                .filter(name -> name.contains("partial") || name.contains("upload"))
                .toList().stream();
        }
    }
}
