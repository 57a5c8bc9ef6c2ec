package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.storage.OnBothEngines;
import surfeit.storage.RecordEngine;

/** Uploads that are read and recorded while they arrive, and such as stop on their way; invented spots. */
@OnBothEngines
class ArrivingUploadTest {
    private static final int ROWS = 12_000;
    /** Makes the upload larger than the mebibyte that is received before it is begun. */
    private static final String REMARK = "invented number".repeat(8);
    private static final String CSV = "text/csv";
    private static final String NDJSON = "application/x-ndjson";
    /** On a loaded machine the beginning may come too slowly to be read before the end. */
    private static final int ATTEMPTS = 20;

    @Parameter
    RecordEngine engine;
    private static RunningService service;

    @BeforeParameterizedClassInvocation
    static void start(RecordEngine engine) {
        service = RunningService.start(engine);
    }

    @AfterParameterizedClassInvocation
    static void stop() {
        service.close();
    }

    private static byte[] upload(String mediaType) {
        boolean table = mediaType.equals(CSV);
        StringBuilder text = new StringBuilder(table ? "label,Ag at%,Cu at%,Remark\n" : "");
        for (int i = 0; i < ROWS; i++) {
            text.append(table ? "P1-" + i + ",60.1,39.9," + REMARK + "\n"
                : "{\"label\": \"P1-" + i + "\", \"unit\": \"at%\", \"elements\": {\"Ag\": 60.1, \"Cu\": 39.9}}"
                + " ".repeat(REMARK.length()) + "\n");
        }
        return text.toString().getBytes(StandardCharsets.US_ASCII);
    }

    private static String sample(String name) {
        service.put("/v1/samples/" + name, "{\"alloy\": \"ag-cu-eutectic\"}");
        return "/v1/samples/" + name + "/spots";
    }

    /** A request whose body has come but for its last bytes. */
    private static RawRequest begin(String path, String mediaType, byte[] body, int missing) throws IOException {
        RawRequest request = new RawRequest(service).head("POST", path, mediaType, body.length, "Connection: close");
        return request.send(Arrays.copyOf(body, body.length - missing));
    }

    private static byte[] end(byte[] body, int missing) {
        return Arrays.copyOfRange(body, body.length - missing, body.length);
    }

    private static JsonNode accepted(RawRequest request) throws IOException {
        RawRequest.Answer answer = request.answer();
        assertThat(answer.status()).as(answer.body()).isEqualTo(201);
        JsonNode report = new ObjectMapper().readTree(answer.body());
        assertThat(report.path("accepted_count").asInt()).isEqualTo(ROWS);
        return report;
    }

    private static long recordedSpots(String name) {
        for (JsonNode sample : service.get("/v1/samples?page_size=200").json().path("items")) {
            if (sample.path("sample").asText().equals(name)) {
                return sample.path("spot_count").asLong(-1);
            }
        }
        throw new AssertionError("no sample " + name);
    }

    private static JsonNode progress(String name) {
        return service.get("/v1/imports/" + name).json();
    }

    @ParameterizedTest
    @ValueSource(strings = {CSV, NDJSON})
    void spots_are_recorded_before_the_last_have_come(String mediaType) throws Exception {
        byte[] body = upload(mediaType);
        boolean early = false;
        for (int attempt = 0; attempt < ATTEMPTS && !early; attempt++) {
            String name = "early-" + mediaType.length() + "-" + attempt;
            try (RawRequest request = begin(sample(name) + "?import=" + name, mediaType, body, 100_000)) {
                for (int i = 0; i < 100 && !early; i++) {
                    JsonNode now = progress(name);
                    assertThat(now.path("state").asText("receiving")).isEqualTo("receiving");
                    early = now.path("spot_count").asInt() > 0;
                    Thread.sleep(5);
                }
                assertThat(recordedSpots(name)).as("seen by others before the commit").isZero();
                request.send(end(body, 100_000));
                assertThat(accepted(request).at("/file/byte_count").asInt()).isEqualTo(body.length);
            }
            assertThat(progress(name).path("spot_count").asInt()).isEqualTo(ROWS);
            assertThat(recordedSpots(name)).isEqualTo(ROWS);
        }
        assertThat(early).as("spots dealt with while it arrives").isTrue();
    }

    @Test
    void an_upload_that_stops_on_its_way_holds_nobody_up_and_goes_on_later() throws Exception {
        byte[] body = upload(CSV);
        try (RawRequest request = begin(sample("stops"), CSV, body, 1)) {
            String others = sample("others");
            for (int i = 0; i < 5; i++) {
                assertThat(service.post(others, CSV, "label,Ag at%,Cu at%\nP1-" + i + ",60.1,39.9\n").status()).isEqualTo(201);
                Thread.sleep(60);
            }
            assertThat(request.isAnswered()).isFalse();
            accepted(request.send(end(body, 1)));
        }
        assertThat(recordedSpots("stops")).isEqualTo(ROWS);
        assertThat(recordedSpots("others")).isEqualTo(5);
    }

    @Test
    void of_one_that_breaks_off_in_its_last_byte_nothing_stays() throws Exception {
        byte[] body = upload(CSV);
        String spots = sample("breaks") + "?import=breaks";
        begin(spots, CSV, body, 1).close();
        for (int i = 0; i < 500 && !progress("breaks").path("state").asText().equals("refused"); i++) {
            Thread.sleep(20);
        }
        assertThat(progress("breaks").path("state").asText()).isEqualTo("refused");
        assertThat(recordedSpots("breaks")).isZero();
        try (RawRequest again = begin(spots, CSV, body, 0)) {
            accepted(again);
        }
    }

    @Test
    void characters_that_only_the_end_tells_are_found_all_the_same() throws Exception {
        byte[] body = upload(CSV);
        body[body.length - REMARK.length()] = (byte) 0xB5; // the micro sign of windows-1252, no character of UTF-8
        try (RawRequest request = begin(sample("micro"), CSV, body, 1)) {
            JsonNode report = accepted(request.send(end(body, 1)));
            assertThat(report.at("/dialect/charset").asText()).isEqualTo("windows-1252");
        }
        assertThat(recordedSpots("micro")).isEqualTo(ROWS);
    }

    @Test
    void a_fault_in_the_last_row_refuses_all() throws Exception {
        byte[] body = new String(upload(CSV), StandardCharsets.US_ASCII).replace("P1-" + (ROWS - 1) + ",60.1", "P1-x,160.1")
            .getBytes(StandardCharsets.US_ASCII);
        try (RawRequest request = begin(sample("faulty"), CSV, body, 1)) {
            RawRequest.Answer answer = request.send(end(body, 1)).answer();
            assertThat(answer.status()).isEqualTo(422);
            assertThat(new ObjectMapper().readTree(answer.body()).at("/errors/0/line").asInt()).isEqualTo(ROWS + 1);
        }
        assertThat(recordedSpots("faulty")).isZero();
    }

    @Test
    void one_that_is_only_checked_leaves_nothing_and_is_answered_as_if_it_had_come_at_once() throws Exception {
        byte[] body = upload(CSV);
        String spots = sample("checked");
        String[] reports = new String[2];
        for (int i = 0; i < 2; i++) {
            try (RawRequest request = begin(spots + "?validate_only=true&import=checked-" + i, CSV, body, i == 0 ? 1 : 0)) {
                Thread.sleep(i == 0 ? 300 : 0);
                RawRequest.Answer answer = (i == 0 ? request.send(end(body, 1)) : request).answer();
                assertThat(answer.status()).as(answer.body()).isEqualTo(200);
                reports[i] = answer.body().replaceAll("\\d{4}-\\d\\d-\\d\\dT[0-9:.]+Z", "time");
            }
            assertThat(progress("checked-" + i).path("state").asText()).isEqualTo("checked");
        }
        assertThat(reports[0]).isEqualTo(reports[1]);
        assertThat(recordedSpots("checked")).isZero();
    }

    @Test
    void one_that_grows_too_large_on_its_way_leaves_nothing_and_is_counted_once() throws Exception {
        ServerSettings settings = ServerSettings.DEFAULT.withRequests(RequestLimits.DEFAULT.withBytes(1_600_000, 1 << 20));
        try (RunningService narrow = RunningService.start(engine, settings)) {
            narrow.put("/v1/samples/large", "{\"alloy\": \"ag-cu-eutectic\"}");
            byte[] body = upload(CSV);
            try (RawRequest request = new RawRequest(narrow)) {
                request.send("POST /v1/samples/large/spots?import=large HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: " + CSV
                    + "\r\nTransfer-Encoding: chunked\r\nConnection: close\r\n\r\n");
                request.send(Integer.toHexString(body.length) + "\r\n").send(Arrays.copyOf(body, 1_590_000));
                Thread.sleep(50);
                    request.send(Arrays.copyOfRange(body, 1_590_000, body.length)).send("\r\n0\r\n\r\n");
                assertThat(request.answer().status()).isEqualTo(413);
            }
            assertThat(narrow.get("/v1/imports/large").json().path("state").asText()).isEqualTo("refused");
            assertThat(narrow.get("/v1/samples/large/spots").json().path("items")).isEmpty();
            assertThat(narrow.get("/metrics").text()).contains("surfeit_imports_total{outcome=\"refused\"} 1\n")
                .contains("surfeit_imports_total{outcome=\"recorded\"} 0\n");
            assertThat(narrow.post("/v1/samples/large/spots", CSV, "label,Ag at%,Cu at%\n1,60,40\n").status()).isEqualTo(201);
        }
    }

    @Test
    void one_in_gzip_whose_client_waits_to_be_told_to_go_on_is_recorded_once() throws Exception {
        byte[] plain = upload(CSV);
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (OutputStream out = new GZIPOutputStream(packed)) {
            out.write(plain);
        }
        byte[] body = packed.toByteArray();
        try (RawRequest request = new RawRequest(service).head("POST", sample("packed"), CSV, body.length,
            "Content-Encoding: gzip", "Expect: 100-continue", "Connection: close")) {
            assertThat(request.head().status()).isEqualTo(100);
            request.send(Arrays.copyOf(body, body.length - 20));
            Thread.sleep(200);
            assertThat(accepted(request.send(end(body, 20))).at("/file/byte_count").asInt()).isEqualTo(plain.length);
        }
        assertThat(recordedSpots("packed")).isEqualTo(ROWS);
    }
}
