package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.lab.EventLog;
import surfeit.lab.Expectation;
import surfeit.lab.Occasion;
import surfeit.storage.OnBothEngines;
import surfeit.storage.RecordEngine;

/** What happened, as a stream, as lines, and asked for again and again. */
@OnBothEngines
class EventRouteTest {
    private static final String ALLOY = "{\"alloy\": \"ag-cu-eutectic\"}";
    @Parameter
    RecordEngine engine;
    private RunningService service;

    @BeforeEach
    void start() {
        service = RunningService.start(engine);
        service.put("/v1/samples/A7", ALLOY);
    }

    @AfterEach
    void stop() {
        service.close();
    }

    private void record(String sample, String label) {
        assertThat(service.post("/v1/samples/" + sample + "/spots", "text/csv",
            "label,Ag at%,Cu at%\n" + label + ",21.2,78.8\n").status()).isEqualTo(201);
    }

    private static JsonNode data(Map<String, String> block) {
        JsonNode data = OpenApi.parse(block.get("data"));
        assertThat(OpenApi.DOCUMENT.faults("/components/schemas/Event", data)).isEmpty();
        return data;
    }

    @Test
    void a_stream_starts_now_and_tells_each_event_once_with_its_number_type_and_pointers() {
        try (EventClient client = EventClient.open(service, "")) {
            assertThat(client.response().statusCode()).isEqualTo(200);
            assertThat(client.response().headers().firstValue("Content-Type")).hasValue("text/event-stream");
            assertThat(client.response().headers().firstValue("Cache-Control")).hasValue("no-store");
            assertThat(client.next()).as("where it starts").containsEntry("id", "1").doesNotContainKey("data");
            record("A7", "P1-1");
            service.put("/v1/samples/A8", ALLOY);

            Map<String, String> imported = client.next();
            assertThat(imported).containsEntry("id", "2").containsEntry("event", "spots.imported");
            assertThat(data(imported)).hasToString("{\"id\":2,\"type\":\"spots.imported\","
                + "\"time\":\"2026-11-24T08:30:00Z\",\"sample\":\"A7\",\"import\":\"imp_0001\",\"accepted_count\":1}");
            Map<String, String> changed = client.next();
            assertThat(changed).containsEntry("id", "3").containsEntry("event", "sample.changed");
            assertThat(data(changed).path("sample").asText()).isEqualTo("A8");
        }
    }

    @Test
    void who_comes_again_gets_what_he_missed_and_then_what_comes() {
        record("A7", "P1-1");
        record("A7", "P1-2");
        try (EventClient client = EventClient.open(service, "?after=0", "Last-Event-ID", "1")) {
            assertThat(client.next()).containsEntry("id", "1");
            assertThat(client.next()).containsEntry("id", "2");
            assertThat(client.next()).containsEntry("id", "3");
            record("A7", "P1-3");
            assertThat(client.next()).containsEntry("id", "4");
        }
    }

    @Test
    void what_he_missed_is_read_from_the_log_where_it_is_no_longer_held() {
        for (int i = 0; i < 1400; i++) {
            service.laboratory().describe("B" + i, service.laboratory().sample("A7").sample(),
                Expectation.NONE, new Occasion("test", RunningService.NOW));
        }
        try (EventClient client = EventClient.open(service, "?after=0")) {
            client.next();
            for (int id = 1; id <= 1401; id++) {
                assertThat(client.next()).containsEntry("id", Integer.toString(id));
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"'?types=spots.imported', 2 4", "'?sample=A8', 3 4",
        "'?types=sample.changed,alloy.changed&sample=A8', 3",
        "'?types=stream.reset', ''"})
    void a_stream_can_be_of_one_sample_and_of_some_types(String query, String ids) {
        try (EventClient client = EventClient.open(service, query)) {
            client.next();
            record("A7", "P1-1");
            service.put("/v1/samples/A8", ALLOY);
            record("A8", "P1-1");
            for (String id : ids.isEmpty() ? new String[0] : ids.split(" ")) {
                assertThat(client.next()).containsEntry("id", id);
            }
            assertThat(client.next(1)).isEmpty();
        }
        assertThat(service.get("/v1/events" + query + "&after=1").json().path("next").asInt()).isEqualTo(4);
    }

    @Test
    void a_number_too_old_or_not_on_record_is_answered_with_a_reset_first() {
        record("A7", "P1-1");
        service.put("/v1/samples/A8", ALLOY);
        service.laboratory().eventLog().forget(RunningService.NOW.plusSeconds(1));
        for (String number : List.of("1", "77")) {
            try (EventClient client = EventClient.open(service, "?types=alloy.changed&sample=A9", "Last-Event-ID",
                number)) {
                assertThat(client.next()).containsEntry("id", "3");
                Map<String, String> reset = client.next();
                assertThat(reset).containsEntry("id", "3").containsEntry("event", "stream.reset");
                assertThat(data(reset).path("links").path("samples").asText()).isEqualTo("/v1/samples");
            }
            Reply poll = service.get("/v1/events?after=" + number);
            assertThat(poll.json().at("/items/0/type").asText()).isEqualTo("stream.reset");
            assertThat(poll.json().path("next").asInt()).isEqualTo(3);
        }
        for (String number : List.of("0", "2")) {
            assertThat(service.get("/v1/events?after=" + number).json().at("/items/0/type").asText())
                .isEqualTo("sample.changed");
        }
    }

    /** Day 91 comes by another service on the record. */
    @Test
    void a_running_service_forgets_what_is_older_than_ninety_days_but_never_the_newest() throws Exception {
        record("A7", "P1-1");
        Clock later = Clock.fixed(RunningService.NOW.plus(Duration.ofDays(91)), ZoneOffset.UTC);
        try (Server other = Server.start(ServerSettings.DEFAULT.withPort(0), service.laboratory(), later)) {
            assertThat(other.port()).isPositive();
            for (int i = 0; i < 100 && service.laboratory().eventLog().range().first() == 1; i++) {
                Thread.sleep(100);
            }
        }
        assertThat(service.laboratory().eventLog().range()).isEqualTo(new EventLog.Range(2, 2));
        record("A7", "P1-2");
        assertThat(service.laboratory().eventLog().range().last()).isEqualTo(3);
    }

    @Test
    void lines_hold_the_same_events_and_end_when_they_are_to() {
        record("A7", "P1-1");
        try (EventClient client = EventClient.lines(service, "?after=0&wait_s=1")) {
            assertThat(client.response().headers().firstValue("Content-Type")).hasValue("application/x-ndjson");
            assertThat(data(client.next()).path("type").asText()).isEqualTo("sample.changed");
            assertThat(data(client.next()).path("type").asText()).isEqualTo("spots.imported");
            assertThat(client.hasEnded()).isTrue();
        }
    }

    @Test
    void who_asks_again_and_again_waits_for_the_next_event_and_no_longer_than_he_said() throws Exception {
        Reply now = service.get("/v1/events");
        assertThat(now.json()).hasToString("{\"items\":[],\"next\":1}");
        assertThat(now.header("Cache-Control")).hasValue("no-store");
        assertThat(service.get("/v1/events?after=1&wait_s=1").json()).isEqualTo(now.json());

        CompletableFuture<Reply> waiting = CompletableFuture.supplyAsync(() ->
            service.get("/v1/events?after=1&wait_s=30&types=spots.imported"));
        Thread.sleep(300);
        service.put("/v1/samples/A8", ALLOY);
        Thread.sleep(3000);
        assertThat(waiting).isNotDone();
        record("A8", "P1-1");
        Reply answer = waiting.get(5, TimeUnit.SECONDS);
        assertThat(answer.json().path("items")).hasSize(1);
        assertThat(answer.json().at("/items/0/import").asText()).isEqualTo("imp_0001");
        assertThat(answer.json().path("next").asInt()).isEqualTo(3);
    }

    @Test
    void only_the_head_opens_no_stream() {
        assertThat(service.send("HEAD", "/v1/events", new byte[0], "Accept", "text/event-stream").status())
            .isEqualTo(200);
        assertThat(service.send("HEAD", "/v1/events?wait_s=60", new byte[0]).status()).isEqualTo(200);
    }

    @Test
    void what_cannot_be_meant_is_refused() {
        assertThat(service.get("/v1/events?types=spots.import").json().path("detail").asText())
            .contains("got \"spots.import\"").contains("nearest known: spots.imported");
        assertThat(service.get("/v1/events?types=").code()).isEqualTo("value-out-of-range");
        assertThat(service.get("/v1/events?after=-1").code()).isEqualTo("value-out-of-range");
        assertThat(service.get("/v1/events?after=1", "Last-Event-ID", "x").json().path("detail").asText())
            .contains("Last-Event-ID");
        assertThat(service.get("/v1/events?wait_s=61").code()).isEqualTo("value-out-of-range");
        assertThat(service.get("/v1/events?sample=a%20b").code()).isEqualTo("name-invalid");
        assertThat(service.get("/v1/events?since=1").code()).isEqualTo("unknown-parameter");
        assertThat(service.get("/v1/events", "Accept", "text/csv").code()).isEqualTo("not-acceptable");
    }

    /** With a short patience for bodies, which must not shorten what is silent on purpose. */
    @Test
    void a_silent_stream_shows_that_it_lives_after_fifteen_seconds_and_goes_on() {
        try (RunningService hasty = RunningService.start(engine, ServerSettings.DEFAULT.withRequests(
                RequestLimits.DEFAULT.withTimes(Duration.ofSeconds(1), Duration.ofSeconds(60))));
             EventClient client = EventClient.open(hasty, ""); EventClient lines = EventClient.lines(hasty, "")) {
            String start = client.next().get("id");
            assertThat(client.next(13)).isEmpty();
            assertThat(client.next(6)).hasValue(Map.of("", "alive"));
            assertThat(lines.next()).containsEntry("data", "");
            hasty.put("/v1/samples/A8", ALLOY);
            int next = Integer.parseInt(start) + 1;
            assertThat(client.next()).containsEntry("id", Integer.toString(next));
            assertThat(data(lines.next()).path("id").asInt()).isEqualTo(next);
        }
    }
}
