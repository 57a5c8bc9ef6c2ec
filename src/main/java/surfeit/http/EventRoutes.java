package surfeit.http;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Stream;
import surfeit.http.feed.EventBatch;
import surfeit.http.feed.EventFeed;
import surfeit.http.feed.Framing;
import surfeit.http.feed.Wanted;
import surfeit.http.json.EmptyJson;
import surfeit.http.json.Nearest;
import surfeit.lab.EventFilter;
import surfeit.lab.LabEvent;
import surfeit.lab.Names;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/** What happened, as a stream or asked for again and again, and the tickets that open a stream. */
final class EventRoutes {
    /** Query parameter that carries a ticket: the one thing in an address that lets somebody in. */
    static final String TICKET = "ticket";
    /** Longest wait for an event, in seconds. Judgement: what stands between often gives up after a minute. */
    private static final int WAIT_MAX_S = 60;
    private static final String LAST_SEEN = "Last-Event-ID";

    private final EventFeed feed;
    private final Tickets tickets;

    EventRoutes(ServiceState state) {
        this.feed = state.feed();
        this.tickets = state.tickets();
    }

    List<Route> routes() {
        return List.of(
            Route.get("/v1/events", Scope.READ).forms(Form.JSON, Form.EVENT_STREAM, Form.NDJSON)
                .parameters("after", "types", "sample", "wait_s", TICKET).stream().to(this::events),
            Route.post("/v1/event-tickets", Scope.READ).to(this::ticket));
    }

    private void events(Exchange exchange) throws IOException {
        Wanted wanted = wanted(exchange);
        exchange.answer().header("Cache-Control", "no-store");
        exchange.answer().header("Vary", "Accept, Authorization");
        if (exchange.form() == Form.JSON) {
            poll(exchange, wanted);
            return;
        }
        exchange.answer().header("X-Accel-Buffering", "no");
        exchange.answer().contentType();
        if (!exchange.answer().isHead()) {
            Framing framing = exchange.form() == Form.NDJSON ? Framing.LINES : Framing.SERVER_SENT;
            exchange.later(() -> feed.stream(wanted, framing, exchange.answer().raw(),
                exchange.admission().stillHolds()));
        }
    }

    private void poll(Exchange exchange, Wanted wanted) throws IOException {
        EventBatch batch = feed.read(wanted.filter(), wanted.after());
        Optional<Duration> wait = wanted.most().filter(most -> !most.isZero());
        if (!batch.events().isEmpty() || wait.isEmpty() || exchange.answer().isHead()) {
            exchange.answer().json(200, batch::write);
            return;
        }
        exchange.later(() -> feed.await(wanted.filter(), batch.next(), wait.get(), found -> answer(exchange, found),
            exchange::onServiceThread));
    }

    private static void answer(Exchange exchange, EventBatch batch) {
        try {
            exchange.answer().json(200, batch::write);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Wanted wanted(Exchange exchange) {
        Parameters parameters = exchange.parameters();
        Optional<String> sample = parameters.text("sample");
        sample.ifPresent(name -> Names.requireSampleName("A sample", name));
        EventFilter filter = new EventFilter(parameters.text("types").map(EventRoutes::types)
            .orElse(EventFilter.ALL.types()), sample);
        long wait = parameters.wholeNumber("wait_s", -1, 0, WAIT_MAX_S);
        return new Wanted(filter, after(exchange), wait < 0 ? Optional.empty() : Optional.of(Duration.ofSeconds(wait)));
    }

    /** What the client saw last: what it says when it comes again goes before what its address says. */
    private static OptionalLong after(Exchange exchange) {
        long after = exchange.parameters().wholeNumber("after", -1, 0, Long.MAX_VALUE);
        Optional<String> lastSeen = exchange.requestHeader(LAST_SEEN).filter(text -> !text.isBlank());
        if (lastSeen.isPresent()) {
            after = Parameters.wholeNumber(LAST_SEEN, lastSeen.get().strip(), 0, Long.MAX_VALUE);
        }
        return after < 0 ? OptionalLong.empty() : OptionalLong.of(after);
    }

    private static Set<LabEvent.Type> types(String words) {
        List<String> known = Stream.concat(Stream.of(LabEvent.Type.values()).map(LabEvent.Type::word),
            EventBatch.STREAM_TYPES.stream()).toList();
        Set<LabEvent.Type> types = EnumSet.noneOf(LabEvent.Type.class);
        for (String word : words.split(",", -1)) {
            if (!known.contains(word.strip())) {
                throw new ProblemException(Problem.VALUE_OUT_OF_RANGE, "Expected types to be some of "
                    + String.join(", ", known) + ", with commas between; got \"" + word.strip() + "\""
                    + Nearest.hint(word.strip(), known));
            }
            Stream.of(LabEvent.Type.values()).filter(type -> type.word().equals(word.strip())).forEach(types::add);
        }
        return types;
    }

    /** A ticket is asked for without a body, or with an empty object. */
    private void ticket(Exchange exchange) throws IOException {
        if (exchange.body().isSent()) {
            try (Body body = exchange.body().receive()) {
                EmptyJson.read(body.open());
            }
        }
        Tickets.Issued issued = tickets.issue(exchange.admission(), exchange.now());
        exchange.answer().header("Cache-Control", "no-store");
        exchange.answer().json(201, json -> {
            json.writeStartObject();
            json.writeStringField("ticket", issued.ticket());
            json.writeStringField("expires_time", issued.expires().toString());
            json.writeEndObject();
        });
    }
}
