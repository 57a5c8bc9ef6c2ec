package surfeit.faults;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.Socket;
import java.net.URI;
import java.net.http.HttpRequest;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Base64;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the service writes to its log while good, faulty and broken-off requests come in that carry secrets. */
class QuietLogTest {
    private static final String SECRET = "lab_bm90LWZvci1sb2dz";
    private static final String BASIC = Base64.getEncoder()
        .encodeToString(("anna:" + SECRET).getBytes(StandardCharsets.UTF_8));

    @TempDir
    Path folder;

    @Test
    void neither_tokens_nor_bodies_come_into_the_log_and_all_is_quiet() throws Exception {
        assertThat(logOf()).isEmpty();
    }

    @Test
    void nor_do_they_where_the_log_is_asked_to_tell_everything() throws Exception {
        assertThat(logOf("-Dorg.slf4j.simpleLogger.defaultLogLevel=trace")).doesNotContainIgnoringCase(SECRET)
            .doesNotContain(BASIC);
    }

    private String logOf(String... javaOptions) throws Exception {
        try (RunningProgram program = RunningProgram.serve(folder, javaOptions)) {
            Set<Integer> statuses = new TreeSet<>();
            program.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
            SentSpots spots = SentSpots.table("A7", "p", 5000, new Random(1));
            statuses.add(send(program, "text/csv", spots.body()));
            statuses.add(send(program, "text/csv", "label,Ag at%,Cu at%\n" + SECRET + ",1,2\n" + SECRET + ",1,3\n"));
            statuses.add(send(program, "text/csv", "label;Ag;Cu\n" + SECRET + ";;\n"));
            statuses.add(send(program, "application/json", "{\"unit\": \"at%\", \"" + SECRET + "\": 1}"));
            statuses.add(send(program, "application/json", "{\"unit\": \"" + SECRET));
            statuses.add(send(program, "application/xml", "<" + SECRET + "/>"));
            statuses.add(program.get("/v1/samples/A7?ticket=" + SECRET).statusCode());
            statuses.add(program.get("/v1/spots/" + SECRET).statusCode());
            statuses.add(program.get("/v1/events?ticket=" + SECRET).statusCode());
            breakOff(program.address(), "GET /v1/events?wait_s=1&ticket=" + SECRET
                + " HTTP/1.1\r\nHost: localhost\r\n\r\n");
            for (int i = 0; i < 5; i++) {
                breakOff(program.address(), "GET /v1/events?after=0 HTTP/1.1\r\nHost: localhost\r\n"
                    + "Accept: text/event-stream\r\n"
                    + "X-Key: " + SECRET + "\r\n\r\n");
                breakOff(program.address(), "GET /v1/samples/A7/spots.ndjson?page_size=" + SECRET
                    + " HTTP/1.1\r\nHost: x\r\n\r\n");
                breakOff(program.address(), "GET /v1/samples/A7/spots.ndjson HTTP/1.1\r\nHost: x\r\nX-Key: " + SECRET
                    + "\r\n\r\n");
                breakOff(program.address(), "POST /v1/samples/A7/spots HTTP/1.1\r\nHost: x\r\n"
                    + "Content-Type: text/csv\r\nContent-Length: 900\r\n\r\nlabel;" + SECRET);
                breakOff(program.address(), SECRET + " / NOT-HTTP\r\n\r\n");
                breakOff(program.address(), "GET / HTTP/1.1\r\nHost: a\r\nHost: " + SECRET + "\r\n\r\n");
                breakOff(program.address(), "GET / HTTP/1.1\r\nHost: " + SECRET + "@x:99999\r\n\r\n");
                breakOff(program.address(), "GET / HTTP/1.1\r\nHost: x\r\nAuthorization : " + SECRET + "\r\n\r\n");
                breakOff(program.address(), "GET / HTTP/1.1\r\nX-Key: " + SECRET.repeat(2000) + "\r\n\r\n");
            }
            program.terminate();
            program.exitWithin(Duration.ofSeconds(15));

            assertThat(statuses).contains(201, 400, 401, 404, 415, 422);
            return program.log();
        }
    }

    private static int send(RunningProgram program, String mediaType, String body) throws Exception {
        HttpRequest.Builder request = HttpRequest.newBuilder(program.address().resolve("/v1/samples/A7/spots"))
            .header("Content-Type", mediaType).header("Idempotency-Key", SECRET + body.hashCode())
            .header("Authorization", "Basic " + BASIC)
            .POST(HttpRequest.BodyPublishers.ofString(body));
        return program.send(request).statusCode();
    }

    /** Sends this and is gone before the answer can be. */
    private static void breakOff(URI address, String bytes) throws Exception {
        try (Socket socket = new Socket(address.getHost(), address.getPort())) {
            socket.setSoLinger(true, 0);
            socket.getOutputStream().write(bytes.getBytes(StandardCharsets.US_ASCII));
            socket.getOutputStream().flush();
            Thread.sleep(20);
        }
    }
}
