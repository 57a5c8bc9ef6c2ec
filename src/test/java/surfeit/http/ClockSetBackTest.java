package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.composition.AlloyCatalogue;
import surfeit.lab.AuditEntry;
import surfeit.lab.EventFilter;
import surfeit.lab.LabEvent;
import surfeit.lab.Laboratory;
import surfeit.lab.PageRequest;
import surfeit.lab.SampleRevision;
import surfeit.segregation.Interpreter;
import surfeit.storage.SqliteStore;

/** The clock of the machine is set back a day while the service runs: order comes from numbers, never from times. */
class ClockSetBackTest {
    private static final Instant NOON = Instant.parse("2026-11-20T12:00:00Z");

    @TempDir
    Path folder;
    private final SetClock clock = new SetClock();
    private SqliteStore store;
    private Laboratory laboratory;
    private Server server;

    @BeforeEach
    void start() {
        store = SqliteStore.open(folder);
        laboratory = new Laboratory(store, AlloyCatalogue.packaged(), new Interpreter(), 0.003);
        server = Server.start(ServerSettings.DEFAULT.withPort(0), laboratory, clock);
    }

    @AfterEach
    void stop() {
        server.close();
        store.close();
    }

    @Test
    void revisions_events_and_audit_stay_in_the_order_things_happened() throws Exception {
        send("PUT", "/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}", 201);
        post("P1-1", 78.8, 201);
        clock.set(NOON.minus(Duration.ofDays(1)));
        post("P1-2", 77.9, 201);
        String id = laboratory.spots("A7", surfeit.lab.SpotFilter.ALL, PageRequest.first(1)).items().get(0).id();
        send("POST", "/v1/spots/" + id + "/corrections",
            "{\"reason\": \"misread\", \"changes\": {\"elements\": {\"Cu\": 78.9}}}", 200);
        clock.set(NOON.plus(Duration.ofDays(1)));
        post("P1-3", 76.5, 201);

        List<SampleRevision> revisions = laboratory.sampleRevisions("A7", PageRequest.first(10)).items();
        assertThat(revisions).extracting(SampleRevision::number).containsExactly(1L, 2L, 3L, 4L, 5L);
        assertThat(revisions).extracting(revision -> revision.occasion().when()).isNotEqualTo(
            revisions.stream().map(revision -> revision.occasion().when()).sorted().toList());
        assertThat(laboratory.events(EventFilter.ALL, 0, 10)).extracting(LabEvent::type).containsExactly(
            LabEvent.Type.SAMPLE_CHANGED, LabEvent.Type.SPOTS_IMPORTED, LabEvent.Type.SPOTS_IMPORTED,
            LabEvent.Type.SPOT_CORRECTED, LabEvent.Type.SPOTS_IMPORTED);
        assertThat(laboratory.events(EventFilter.ALL, 0, 10)).extracting(LabEvent::id)
            .containsExactly(1L, 2L, 3L, 4L, 5L);
        assertThat(laboratory.auditLog().page(PageRequest.first(10)).items()).extracting(AuditEntry::number)
            .containsExactly(1L, 2L, 3L, 4L, 5L);
        assertThat(laboratory.auditLog().check().broken()).isEmpty();
        assertThat(labels("/v1/samples/A7/spots")).containsExactly("P1-1", "P1-2", "P1-3");
    }

    @Test
    void an_answer_under_a_key_is_kept_while_the_clock_is_behind() throws Exception {
        send("PUT", "/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}", 201);
        String first = post("P1-1", 78.8, 201, "Idempotency-Key", "run-1").body();
        clock.set(NOON.minus(Duration.ofDays(30)));

        assertThat(post("P1-1", 78.8, 201, "Idempotency-Key", "run-1").body()).isEqualTo(first);
        assertThat(laboratory.sample("A7").spotCount()).isEqualTo(1);
    }

    @Test
    void a_change_read_before_the_clock_went_back_still_shows_as_a_change() throws Exception {
        send("PUT", "/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}", 201);
        post("P1-1", 78.8, 201);
        HttpResponse<String> before = send("GET", "/v1/samples/A7/segregation", "", 200);
        String tag = before.headers().firstValue("ETag").orElseThrow();
        send("GET", "/v1/samples/A7/segregation", "", 304, "If-None-Match", tag);
        clock.set(NOON.minus(Duration.ofDays(1)));
        post("P1-2", 60.0, 201);

        HttpResponse<String> after = send("GET", "/v1/samples/A7/segregation", "", 200, "If-None-Match", tag);

        assertThat(after.headers().firstValue("ETag")).isNotEqualTo(Optional.of(tag));
        assertThat(OpenApi.parse(after.body()).path("spot_count").asInt()).isEqualTo(2);
    }

    private HttpResponse<String> post(String label, double copper, int status, String... headers) throws Exception {
        return send("POST", "/v1/samples/A7/spots", "{\"unit\": \"at%\", \"spots\": [{\"label\": \"" + label
            + "\", \"elements\": {\"Ag\": " + (100 - copper) + ", \"Cu\": " + copper + "}}]}", status, headers);
    }

    private HttpResponse<String> send(String method, String path, String json, int status, String... headers)
        throws Exception {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(server.address() + path))
            .method(method, HttpRequest.BodyPublishers.ofString(json)).header("Content-Type", "application/json");
        HttpResponse<String> answer = HttpClient.newHttpClient()
            .send((headers.length == 0 ? request : request.headers(headers)).build(),
            HttpResponse.BodyHandlers.ofString());
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(status);
        return answer;
    }

    private List<String> labels(String path) throws Exception {
        List<String> labels = new ArrayList<>();
        for (JsonNode spot : OpenApi.parse(send("GET", path, "", 200).body()).path("items")) {
            labels.add(spot.path("label").asText());
        }
        return labels;
    }

    /** A clock that stands where it was set. */
    private static final class SetClock extends Clock {
        private volatile Instant now = NOON;

        void set(Instant instant) {
            now = instant;
        }

        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }

        @Override
        public Instant instant() {
            return now;
        }
    }
}
