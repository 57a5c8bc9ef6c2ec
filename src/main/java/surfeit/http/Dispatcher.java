package surfeit.http;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;
import surfeit.http.measure.RequestMeasures;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/**
 * Hands each request to its route: asks who it is, picks the form, checks the parameters, and turns every failure into
 * a refusal.
 */
final class Dispatcher {
    private final RouteTable table;
    private final ServiceFacts facts;
    private final Gate gate;
    private final OpenStreams streams;
    private final Readiness readiness;
    private final Refusals refusals;

    Dispatcher(RouteTable table, ServiceFacts facts, Gate gate, ServiceState state) {
        this.table = table;
        this.facts = facts;
        this.gate = gate;
        this.streams = new OpenStreams(facts.settings().requests().openStreamsMax(), state.feed()::probe);
        this.readiness = state.readiness();
        this.refusals = new Refusals(table);
    }

    /**
     * Registers every route of the table, and what happens beside them. Suffixes go first: the first path that fits is
     * taken, and a name at the end of a path would take a suffix for its own.
     */
    void register(JavalinConfig config) {
        for (Route route : table.routes()) {
            if (route.suffixed()) {
                for (Form form : route.forms()) {
                    add(config, route, route.path() + form.suffix(), Optional.of(form));
                }
            }
            add(config, route, route.path(), route.formOfPath());
        }
        config.routes.exception(HttpResponseException.class, (cause, context) -> refuse(context, cause));
        config.routes.exception(Exception.class, (cause, context) -> refuseBefore(context, cause));
    }

    /** Refuses what never reached a route; of all addresses, the router fails on one it cannot decode. */
    private void refuseBefore(Context context, Exception cause) {
        refuse(context, cause instanceof IllegalArgumentException ? new ProblemException(Problem.MALFORMED_REQUEST,
            "Expected an address with two hexadecimal digits after each %, got \"" + context.path() + "\".") : cause);
    }

    private void refuse(Context context, Exception cause) {
        try {
            refusals.refuse(context, cause);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void add(JavalinConfig config, Route route, String path, Optional<Form> form) {
        config.routes.addHttpHandler(HandlerType.findOrCreate(route.method()), path,
            context -> answer(context, route, form));
        if (route.method().equals("GET")) {
            config.routes.addHttpHandler(HandlerType.HEAD, path, context -> answer(context, route, form));
        }
    }

    private void answer(Context context, Route route, Optional<Form> bySuffix) throws IOException {
        RequestMeasures.mark(ServletContextRequest.getServletContextRequest(context.req()), route.pattern(),
            route.isStream());
        boolean counted = readiness.begin();
        boolean pending = false;
        try {
            if (!counted && route.scope() != Scope.OPEN) {
                throw new ProblemException(Problem.SHUTTING_DOWN,
                    "The service lets running requests end and takes no new ones.");
            }
            Optional<Form> accepted = bySuffix.or(() -> Negotiation.choose(route.forms(), FieldLines.of(context, "Accept")));
            boolean opensStream = route.isStream() && !accepted.equals(Optional.of(Form.JSON));
            Admission admission = gate.admit(context, route, !opensStream);
            Form form = accepted.orElseThrow(() -> new ProblemException(Problem.NOT_ACCEPTABLE,
                "This answer comes as " + Exchange.offered(route.forms()) + "; Accept names none of them."));
            if (route.isStream()) {
                streams.enter(context);
            }
            Exchange exchange = new Exchange(context, route, form, facts, admission, () -> gate.reads(context));
            route.handler().answer(exchange);
            pending = counted && exchange.pending().isPresent();
            exchange.pending().ifPresent(answer -> answerOnce(context, answer, counted));
        } catch (HeldRefusal held) {
            answerLater(context, held);
        } catch (Exception e) {
            refusals.refuse(context, e);
        } finally {
            if (counted && !pending) {
                readiness.done();
            }
        }
    }

    /** Answers in a thread of the service once there is something to answer, or a failure to tell. */
    private void answerOnce(Context context, CompletableFuture<PendingAnswer> there, boolean counted) {
        Executor threads = work -> context.req().getAsyncContext().start(work);
        context.future(() -> there.handleAsync((answer, failure) -> {
            give(context, answer, failure);
            return answer;
        }, threads).whenComplete((answer, brokenOff) -> {
            if (counted) {
                readiness.done();
            }
        }));
    }

    private void give(Context context, PendingAnswer answer, Throwable failure) {
        try {
            if (failure == null) {
                answer.give();
            } else {
                refuse(context, Refusals.cause(failure));
            }
        } catch (Exception e) {
            refuse(context, e);
        }
    }

    /** Answers after a while, without a thread that waits. */
    private void answerLater(Context context, HeldRefusal held) {
        Executor later = CompletableFuture.delayedExecutor(held.hold().toMillis(), TimeUnit.MILLISECONDS);
        context.future(() -> CompletableFuture.runAsync(() -> refuse(context, held.refusal()), later)
            .whenComplete((done, brokenOff) -> gate.answered()));
    }
}
