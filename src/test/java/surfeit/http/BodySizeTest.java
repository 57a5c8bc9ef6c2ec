package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.intake.IntakeLimits;

/** Every limit of requests refuses with the name of its setting, and what lies beyond it is not read. */
class BodySizeTest {
    private static final int UPLOAD_MAX = 2 << 20;
    private static final int JSON_MAX = 64 << 10;
    private static final String SPOTS = "/v1/samples/A7/spots";
    private static RunningService service;

    @BeforeAll
    static void start() {
        service = RunningService.start(ServerSettings.DEFAULT
            .withRequests(RequestLimits.DEFAULT.withBytes(UPLOAD_MAX, JSON_MAX).withJsonDepth(8))
            .withIntake(new IntakeLimits(5, 2, 10, 50, 6)));
        service.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    private static void requireRefused(Reply reply, int status, String code, String setting) {
        assertThat(reply.status()).as(reply.text()).isEqualTo(status);
        assertThat(reply.code()).isEqualTo(code);
        assertThat(reply.json().path("setting").asText()).isEqualTo(setting);
    }

    @Test
    void a_body_that_is_announced_too_large_is_refused_before_it_is_sent() throws IOException {
        try (RawRequest request = new RawRequest(service)) {
            request.head("POST", SPOTS, "text/csv", UPLOAD_MAX + 1);
            RawRequest.Answer answer = request.answer();
            assertThat(answer.status()).isEqualTo(413);
            assertThat(answer.body()).contains("\"setting\":\"upload-bytes-max\"");
        }
    }

    @Test
    void a_body_of_unknown_length_is_refused_where_it_passes_the_limit() throws IOException {
        try (RawRequest request = new RawRequest(service)) {
            request.send("PUT /v1/samples/A8 HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\n"
                + "Transfer-Encoding: chunked\r\n\r\n");
            byte[] chunk = ("4000\r\n" + " ".repeat(0x4000) + "\r\n").getBytes(StandardCharsets.US_ASCII);
            for (int sent = 0; sent < JSON_MAX + 0x4000; sent += 0x4000) {
                request.send(chunk);
            }
            RawRequest.Answer answer = request.answer();
            assertThat(answer.status()).isEqualTo(413);
            assertThat(answer.body()).contains("\"setting\":\"json-bytes-max\"");
            assertThat(request.isClosed()).isTrue();
        }
    }

    @Test
    void a_small_body_that_inflates_beyond_the_limit_is_refused_and_leaves_nothing_behind() throws IOException {
        byte[] bomb = bomb(1L << 30);
        assertThat(bomb.length).isLessThan(UPLOAD_MAX);
        long before = uploadFiles();
        Reply reply = service.send("POST", SPOTS, bomb, "Content-Type", "text/csv", "Content-Encoding", "gzip");
        requireRefused(reply, 413, "upload-too-large", "upload-bytes-max");
        assertThat(uploadFiles()).isEqualTo(before);
        requireRefused(service.send("PUT", "/v1/samples/A8", bomb(1L << 24), "Content-Type", "application/json",
            "Content-Encoding", "gzip"), 413,
            "upload-too-large", "json-bytes-max");
    }

    @Test
    void compressed_bytes_that_inflate_to_nothing_are_counted_too() {
        byte[] nothing = BodyTimeTest.emptyBlocks((UPLOAD_MAX + (2 << 20)) / 5);
        Reply reply = service.send("POST", SPOTS, nothing, "Content-Type", "text/csv", "Content-Encoding", "gzip");
        requireRefused(reply, 413, "upload-too-large", "upload-bytes-max");
    }

    @Test
    void a_compressed_body_that_is_cut_short_or_not_compressed_is_told_so() {
        byte[] whole = RunningService.gzip("label,Ag at%,Cu at%\na,60,40\n".getBytes(StandardCharsets.UTF_8));
        for (byte[] body : new byte[][] {Arrays.copyOf(whole, whole.length / 2),
            "label,Ag at%".getBytes(StandardCharsets.UTF_8)}) {
            assertThat(service.send("POST", SPOTS, body, "Content-Type", "text/csv", "Content-Encoding", "gzip").code())
                .isEqualTo("malformed-request");
        }
        assertThat(service.send("POST", SPOTS, whole, "Content-Type", "text/csv", "Content-Encoding", "br").code())
            .isEqualTo("unsupported-media-type");
        assertThat(service.send("POST", SPOTS, whole, "Content-Type", "text/csv", "Content-Encoding", "gzip").status())
            .isEqualTo(201);
    }

    @ParameterizedTest
    @ValueSource(strings = {"application/json", "application/x-ndjson"})
    void json_that_nests_too_deep_is_refused(String mediaType) {
        String deep = "{\"unit\": \"at%\", \"label\": \"a\", \"elements\": " + "[".repeat(9) + "]".repeat(9) + "}";
        Reply reply = service.post(SPOTS, mediaType, mediaType.endsWith("ndjson") ? deep : "{\"spots\": [" + deep
            + "]}");
        assertThat(reply.code()).isEqualTo("malformed-json");
        assertThat(reply.json().path("setting").asText()).isEqualTo("json-depth-max");
        assertThat(reply.json().path("errors").findValuesAsText("detail"))
            .contains("Expected JSON that nests at most 8 levels deep, found more.");
    }

    @Test
    void a_very_deep_body_is_refused_without_a_deep_stack() {
        Reply reply = service.put("/v1/samples/A8", "[".repeat(30_000) + "]".repeat(30_000));
        requireRefused(reply, 400, "malformed-json", "json-depth-max");
    }

    @Test
    void rows_elements_labels_cells_and_columns_beyond_their_limits_are_refused_by_name() {
        String head = "label,Ag at%,Cu at%\n";
        requireRefused(csv(head + "a,60,40\n".repeat(6)), 413, "upload-too-large", "upload-rows-max");
        requireRefused(csv("label,Ag at%,Cu at%,Zn at%\na,60,30,10\n"), 413, "upload-too-large",
            "elements-per-spot-max");
        requireRefused(csv(head + "a-long-label,60,40\n"), 422, "name-invalid", "label-length-max");
        requireRefused(csv("label,Ag at%,Cu at%,Remark\na,60,40," + "x".repeat(51) + "\n"), 413, "upload-too-large",
            "cell-length-max");
        requireRefused(csv("label,Ag at%,Cu at%,b,c,d,e\na,60,40,,,,\n"), 413, "upload-too-large", "columns-max");
    }

    @Test
    void spots_in_json_meet_the_same_limits() {
        String elements = "\"elements\": {\"Ag\": 60, \"Cu\": 40}";
        requireRefused(json("{\"label\": \"a-long-label\", " + elements + "}"), 422, "name-invalid",
            "label-length-max");
        requireRefused(json("{\"label\": \"a\", \"elements\": {\"Ag\": 60, \"Cu\": 30, \"Zn\": 10}}"), 413,
            "upload-too-large",
            "elements-per-spot-max");
        String six = "{\"label\": \"a\", " + elements + "}" + (", {\"label\": \"b\", " + elements + "}").repeat(5);
        requireRefused(json(six), 413, "upload-too-large", "upload-rows-max");
    }

    private static Reply csv(String table) {
        return service.post(SPOTS, "text/csv", table);
    }

    private static Reply json(String spots) {
        return service.post(SPOTS, "{\"unit\": \"at%\", \"spots\": [" + spots + "]}");
    }

    private static byte[] bomb(long size) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        byte[] blanks = " ".repeat(1 << 16).getBytes(StandardCharsets.US_ASCII);
        try (OutputStream gzip = new GZIPOutputStream(out, 1 << 16)) {
            for (long written = 0; written < size; written += blanks.length) {
                gzip.write(blanks);
            }
        }
        return out.toByteArray();
    }

    private static long uploadFiles() throws IOException {
        try (Stream<Path> files = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
            return files.filter(file -> file.getFileName().toString().startsWith("surfeit-upload-")).count();
        }
    }
}
