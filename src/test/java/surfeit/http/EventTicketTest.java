package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.Parameter;
import surfeit.lab.Occasion;
import surfeit.lab.TokenScope;
import surfeit.storage.OnBothEngines;
import surfeit.storage.RecordEngine;

/** Passes for a browser's event stream. */
@OnBothEngines
class EventTicketTest {
    private static final Admission ANNA = new Admission("anna", Optional.empty(), () -> true);
    @Parameter
    RecordEngine engine;
    private RunningService service;

    @BeforeEach
    void start() {
        service = RunningService.start(engine);
        service.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
    }

    @AfterEach
    void stop() {
        service.close();
    }

    private Reply take(String token) {
        return service.send("POST", "/v1/event-tickets", new byte[0], RunningService.bearer(token));
    }

    @Test
    void a_ticket_opens_one_stream_without_a_token_and_no_second_one() {
        String token = service.token("anna", TokenScope.READ);
        Reply taken = take(token);
        assertThat(taken.status()).isEqualTo(201);
        assertThat(taken.header("Cache-Control")).hasValue("no-store");
        assertThat(taken.json().path("expires_time").asText()).isEqualTo("2026-11-24T08:31:00Z");
        String query = "?after=0&ticket=" + taken.json().path("ticket").asText();

        try (EventClient client = EventClient.open(service, query)) {
            assertThat(client.response().statusCode()).isEqualTo(200);
            client.next();
            assertThat(client.next()).containsEntry("event", "sample.changed");
        }
        Reply again = service.get("/v1/events" + query, "Accept", "text/event-stream");
        assertThat(again.code()).isEqualTo("token-rejected");
        assertThat(again.headers().allValues("WWW-Authenticate"))
            .containsExactly("Bearer realm=\"surfeit\", error=\"invalid_token\"");
        assertThat(again.text()).doesNotContain(taken.json().path("ticket").asText());
    }

    @Test
    void a_ticket_is_taken_with_the_scope_read_and_opens_nothing_but_events() {
        assertThat(take(service.token("writer", TokenScope.WRITE)).code()).isEqualTo("scope-missing");
        String ticket = take(service.token("reader", TokenScope.READ)).json().path("ticket").asText();
        assertThat(service.get("/v1/samples?ticket=" + ticket).code()).isEqualTo("token-missing");
        assertThat(service.get("/v1/events", RunningService.bearer(ticket)).code()).isEqualTo("token-rejected");
        assertThat(service.get("/v1/events?ticket=tkt_x").code()).isEqualTo("token-rejected");
        assertThat(service.get("/v1/events?ticket=" + ticket).status()).isEqualTo(200);
    }

    @Test
    void the_body_of_the_request_says_nothing_or_is_refused() {
        assertThat(service.post("/v1/event-tickets", "{}").status()).isEqualTo(201);
        assertThat(service.post("/v1/event-tickets", "{\"scopes\": [\"admin\"]}").code())
            .isEqualTo("unknown-parameter");
        assertThat(service.post("/v1/event-tickets", "text/plain", "{}").code()).isEqualTo("unsupported-media-type");
    }

    @Test
    void with_its_token_a_ticket_and_an_open_stream_come_to_their_end() {
        service.token("other", TokenScope.READ);
        String token = service.token("anna", TokenScope.READ);
        String ticket = take(token).json().path("ticket").asText();
        try (EventClient client = EventClient.open(service, "", RunningService.bearer(token))) {
            client.next();
            service.laboratory().access().revoke("tok_0002", new Occasion("test", RunningService.NOW));
            assertThat(client.hasEnded()).isTrue();
        }
        assertThat(service.get("/v1/events?ticket=" + ticket).code()).isEqualTo("token-rejected");
    }

    @Test
    void a_stream_opened_before_the_first_token_was_made_ends_with_it() {
        try (EventClient client = EventClient.open(service, "")) {
            client.next();
            service.token("anna", TokenScope.READ);
            assertThat(client.hasEnded()).isTrue();
        }
    }

    @Test
    void a_ticket_is_good_for_sixty_seconds_by_a_clock_nobody_can_set() {
        AtomicLong nanoTime = new AtomicLong(Long.MAX_VALUE);
        EventTickets tickets = new EventTickets(nanoTime::get);
        String first = tickets.issue(ANNA, RunningService.NOW).ticket();
        String second = tickets.issue(ANNA, RunningService.NOW).ticket();
        assertThat(first).startsWith("tkt_").hasSize(47).isNotEqualTo(second);
        nanoTime.addAndGet(Duration.ofSeconds(60).toNanos() - 1);
        assertThat(tickets.redeem(first)).hasValue(ANNA);
        assertThat(tickets.redeem(first)).isEmpty();
        nanoTime.addAndGet(1);
        assertThat(tickets.redeem(second)).isEmpty();
    }
}
