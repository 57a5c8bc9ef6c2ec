package surfeit.faults;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.net.Socket;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A service with little memory takes and gives long lists, of more spots than it holds p values in memory.
 * {@code -Dsurfeit.faults.heap-mb=64 -Dsurfeit.faults.heap-spots=500000} is a million rows of results.
 */
class SmallHeapTest {
    private static final int HEAP_MB = Integer.getInteger("surfeit.faults.heap-mb", 48);
    private static final int SPOTS = Integer.getInteger("surfeit.faults.heap-spots", 140_000);
    private static final int SPOTS_OF_UPLOAD = 50_000;
    /** Of the places for bodies on their way, all but a few. */
    private static final int ANNOUNCING = 90;

    @TempDir
    Path folder;

    /** Kept: a client that nobody holds any more breaks off the answers it is given. */
    private static final HttpClient CLIENT = HttpClient.newHttpClient();

    private record Listed(long rows, long bytes, long millis) {
    }

    private static Listed list(RunningProgram program, String path) throws Exception {
        long start = System.nanoTime();
        long rows = 0;
        long bytes = 0;
        HttpResponse<InputStream> response = CLIENT.send(
            HttpRequest.newBuilder(program.address().resolve(path)).build(), HttpResponse.BodyHandlers.ofInputStream());
        assertThat(response.statusCode()).isEqualTo(200);
        try (BufferedReader in = new BufferedReader(new InputStreamReader(response.body(), StandardCharsets.UTF_8))) {
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                rows++;
                bytes += line.length();
            }
        }
        return new Listed(rows, bytes, (System.nanoTime() - start) / 1_000_000);
    }

    @Test
    void all_results_and_all_spots_are_given_by_a_service_whose_memory_would_not_hold_them() throws Exception {
        try (RunningProgram program = RunningProgram.serve(folder, "-Xmx" + HEAP_MB + "m", "-XX:TieredStopAtLevel=4")) {
            program.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
            for (int sent = 0; sent < SPOTS; sent += SPOTS_OF_UPLOAD) {
                SentSpots spots = SentSpots.table("A7", "upload" + sent, Math.min(SPOTS_OF_UPLOAD, SPOTS - sent),
                    new Random(sent));
                assertThat(program.post("/v1/samples/A7/spots", "text/csv", spots.body()).statusCode()).isEqualTo(201);
            }
            Listed csv = list(program, "/v1/results.csv");
            Listed ndjson = list(program, "/v1/results.ndjson");
            Listed shown = list(program, "/v1/samples/A7/spots.csv?verdict=enriched");
            Figures.print("long lists in a small heap", "-Xmx" + HEAP_MB + "m, " + SPOTS + " spots: results.csv " + csv
                + ", results.ndjson " + ndjson + ", enriched spots " + shown);

            assertThat(csv.rows()).isEqualTo(2L * SPOTS + 1);
            assertThat(ndjson.rows()).isEqualTo(2L * SPOTS);
            assertThat(ndjson.bytes()).isGreaterThan(HEAP_MB * 1_000_000L);
            assertThat(shown.rows()).isGreaterThan(1);
            assertThat(program.log()).isEmpty();
        }
    }

    @Test
    void bodies_that_are_announced_and_do_not_come_take_no_memory() throws Exception {
        List<Socket> announcing = new ArrayList<>();
        try (RunningProgram program = RunningProgram.serve(folder, "-Xmx" + HEAP_MB + "m")) {
            program.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
            for (int i = 0; i < ANNOUNCING; i++) {
                Socket socket = new Socket(program.address().getHost(), program.address().getPort());
                announcing.add(socket);
                socket.getOutputStream().write(("POST /v1/samples/A7/spots HTTP/1.1\r\nHost: localhost\r\n"
                    + "Content-Type: text/csv\r\nContent-Length: 60000000\r\nExpect: 100-continue\r\n\r\n")
                    .getBytes(StandardCharsets.US_ASCII));
            }
            for (Socket socket : announcing) {
                assertThat(new String(socket.getInputStream().readNBytes(12), StandardCharsets.US_ASCII))
                    .isEqualTo("HTTP/1.1 100");
            }
            SentSpots spots = SentSpots.table("A7", "p", 2000, new Random(1));
            assertThat(program.post("/v1/samples/A7/spots", spots.mediaType(), spots.body()).statusCode())
                .isEqualTo(201);
            assertThat(RecordedSpots.of(program, "A7").count()).isEqualTo(2000);
            for (Socket socket : announcing) {
                socket.close();
            }
            assertThat(program.log()).isEmpty();
        }
    }
}
