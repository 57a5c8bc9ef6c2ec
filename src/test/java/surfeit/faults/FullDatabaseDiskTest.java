package surfeit.faults;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.postgresql.PostgresServer;

/** The database's tables stand on a disk of some megabytes until that is full; the server's own log has room. */
class FullDatabaseDiskTest {
    private static final int DISK_MEGABYTES = 24;
    private static final int SPOTS_A_TABLE = 1000;
    private static final int REFUSALS = 3;
    private static final int LEFT_BYTES = 4 << 20;

    @TempDir
    Path folder;

    @Test
    void a_full_disk_of_the_database_is_told_reading_goes_on_and_writing_goes_on_once_there_is_room() throws Exception {
        Optional<SmallDisk> mounted = SmallDisk.mount(folder.resolve("disk"), DISK_MEGABYTES);
        assumeTrue(mounted.isPresent(), "no disk may be mounted here");
        try (SmallDisk disk = mounted.get(); PostgresServer server = PostgresServer.own()) {
            server.createDatabase("lab", disk.path().resolve("tables"));
            try (RunningProgram program = RunningProgram.serve(server.url("lab"), PostgresServer.USER,
                    PostgresServer.PASSWORD)) {
                program.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
                Path ballast = disk.fillUpTo(LEFT_BYTES);
                int acknowledged = fill(program);
                assertThat(program.get("/readyz").statusCode()).isEqualTo(200);
                assertThat(RecordedSpots.of(program, "A7").count()).isEqualTo(acknowledged);

                Files.delete(ballast);
                assertThat(post(program, "after").statusCode()).isEqualTo(201);
                int recorded = RecordedSpots.of(program, "A7").count();
                Figures.print("full disk of the database", acknowledged + SPOTS_A_TABLE + " spots acknowledged before and "
                    + "after, " + (acknowledged + SPOTS_A_TABLE - recorded)
                    + " lost; refused with 507, readable meanwhile, written again once there was room");
                assertThat(recorded).isEqualTo(acknowledged + SPOTS_A_TABLE);
            }
        }
    }

    private static HttpResponse<String> post(RunningProgram program, String prefix) throws Exception {
        SentSpots spots = SentSpots.table("A7", prefix, SPOTS_A_TABLE, new Random(prefix.hashCode()));
        return program.post("/v1/samples/A7/spots", spots.mediaType(), spots.body());
    }

    /** Sends tables until one is refused, and a few more. @return how many spots were acknowledged */
    private static int fill(RunningProgram program) throws Exception {
        int acknowledged = 0;
        int refused = 0;
        for (int n = 0; refused < REFUSALS; n++) {
            HttpResponse<String> answer = post(program, "t" + n);
            if (answer.statusCode() == 201) {
                acknowledged += SPOTS_A_TABLE;
            } else {
                assertThat(answer.statusCode()).as(answer.body()).isEqualTo(507);
                assertThat(answer.body()).contains("\"code\":\"storage-full\"", "The disk of the database");
                refused++;
            }
        }
        assertThat(acknowledged).isPositive();
        return acknowledged;
    }
}
