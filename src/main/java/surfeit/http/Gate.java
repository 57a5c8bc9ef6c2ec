package surfeit.http;

import io.javalin.http.Context;
import jakarta.servlet.http.HttpServletResponse;
import java.net.InetAddress;
import java.time.Clock;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import surfeit.lab.Access;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.Token;
import surfeit.lab.TokenRequest;
import surfeit.lab.TokenScope;

/**
 * Lets a request through to its route, or says why not. Thread-safe.
 *
 * <p>Until the first token is made, whoever reaches the service from its own machine may do everything; but only under
 * one of that machine's own names, or a page of a foreign site could reach it through the lab's browser by letting its
 * own name point here; and not through a proxy, which would let in whoever reaches that. Once there is a token, every
 * route with a scope needs one.
 */
final class Gate {
    private static final Logger LOG = LoggerFactory.getLogger(Gate.class);
    private static final int LOGGED_EACH = 100;
    private static final String CHALLENGE = "WWW-Authenticate";
    private static final String BEARER = "Bearer realm=\"surfeit\"";

    private final Access access;
    private final ServerSettings settings;
    private final Clock clock;
    private final Quota quota;
    private final FailureBrake brake = new FailureBrake(System::nanoTime);
    private final Tickets tickets;

    Gate(Access access, ServerSettings settings, Clock clock, Tickets tickets) {
        this.access = access;
        this.tickets = tickets;
        this.settings = settings;
        this.clock = clock;
        this.quota = new Quota(settings.requests().requestsPerSecondMax(), System::nanoTime);
    }

    /**
     * Who asks.
     *
     * @param counted whether the request counts against what the token may send
     * @throws ProblemException token-missing, token-rejected, scope-missing, quota-exceeded
     * @throws HeldRefusal      one of these, to be answered later
     */
    Admission admit(Context context, Route route, boolean counted) {
        ForeignPage.refuse(context.req(), settings.access().proxies());
        return admit(context, route.scope().needed(), route.parameters().contains(EventRoutes.TICKET), counted);
    }

    /** Whether who asks may read; false where no token is shown and one is needed. Else as {@link #admit}. */
    boolean reads(Context context) {
        boolean asksNobody = settings.access().noAuth() || access.isOpen() && isOwn(context);
        if (!asksNobody && (access.isOpen() || context.header("Authorization") == null)) {
            return false;
        }
        admit(context, Optional.of(TokenScope.READ), false, true);
        return true;
    }

    private Admission admit(Context context, Optional<TokenScope> needed, boolean takesTicket, boolean counted) {
        if (needed.isEmpty()) {
            return new Admission(TokenRequest.ANYONE, Optional.empty(), () -> true);
        }
        boolean asksNobody = settings.access().noAuth();
        if (!asksNobody && access.isOpen()) {
            requireOwn(context);
        }
        if (takesTicket && context.req().getQueryString() != null
            && context.queryParam(EventRoutes.TICKET) != null) {
            return byTicket(context, context.queryParam(EventRoutes.TICKET));
        }
        if (asksNobody || access.isOpen()) {
            return new Admission(TokenRequest.ANYONE, Optional.empty(),
                () -> asksNobody || access.isStillOpen(clock.instant()));
        }
        Token token = token(context);
        if (counted) {
            requireQuota(context, token);
        }
        requireScope(context, token, needed.get());
        return new Admission(token.name(), Optional.of(token.id()),
            () -> access.isValid(token.id(), clock.instant()));
    }

    /** A browser that is refused a stream must not ask its user for a password, so Basic is not offered. */
    private Admission byTicket(Context context, String ticket) {
        return tickets.redeem(ticket).orElseThrow(() -> {
            context.res().addHeader(CHALLENGE, BEARER + ", error=\"invalid_token\"");
            return braked(context, new ProblemException(Problem.TOKEN_REJECTED, "The ticket is not known here: it opens"
                + " one stream, within " + Tickets.VALID.toSeconds()
                + " s. Take a further one: POST /v1/event-tickets."));
        });
    }

    private Token token(Context context) {
        try {
            return access.admit(Credentials.token(context.req()), clock.instant());
        } catch (ProblemException refusal) {
            if (refusal.problem().status() == HttpServletResponse.SC_UNAUTHORIZED) {
                challenge(context, "");
            }
            if (refusal.problem() == Problem.TOKEN_REJECTED) {
                throw braked(context, refusal);
            }
            throw refusal;
        }
    }

    private RuntimeException braked(Context context, ProblemException refusal) {
        String client = Origin.of(context.req(), settings.access().proxies()).client();
        int count = brake.fail(Origin.machine(client));
        if (count == FailureBrake.FREE + 1 || count % LOGGED_EACH == 0) {
            LOG.warn("{} tokens in a row from {} were not valid; answers to it are held back.", count, client);
        }
        Duration hold = FailureBrake.hold(count);
        if (hold.isZero()) {
            return refusal;
        }
        if (!brake.enter()) {
            retryAfter(context, Duration.ofMillis(FailureBrake.LONGEST_MILLIS));
            return new ProblemException(Problem.QUOTA_EXCEEDED,
                "Too many requests with tokens that are not valid come at the same time.");
        }
        return new HeldRefusal(refusal, hold);
    }

    /** Gives back the place of an answer that was held back. */
    void answered() {
        brake.leave();
    }

    private void requireQuota(Context context, Token token) {
        Duration wait = quota.take(token.id());
        if (!wait.isZero()) {
            retryAfter(context, wait);
            throw new ProblemException(Problem.QUOTA_EXCEEDED, "The token \"" + token.name() + "\" sends more than "
                + settings.requests().requestsPerSecondMax() + " requests a second.")
                .withSetting(RequestLimits.REQUESTS_SETTING);
        }
    }

    private static void requireScope(Context context, Token token, TokenScope needed) {
        try {
            token.require(needed);
        } catch (ProblemException refusal) {
            challenge(context, ", error=\"insufficient_scope\", scope=\"" + needed.word() + "\"");
            throw refusal;
        }
    }

    /** Says how to show a token (RFC 9110, section 11.6.1); browsers then ask for it. */
    private static void challenge(Context context, String more) {
        context.res().addHeader(CHALLENGE, BEARER + more);
        if (more.isEmpty()) {
            context.res().addHeader(CHALLENGE, "Basic realm=\"surfeit\", charset=\"UTF-8\"");
        }
    }

    private static void retryAfter(Context context, Duration wait) {
        context.res().setHeader("Retry-After", Long.toString(Math.max(1, (wait.toMillis() + 999) / 1000)));
    }

    private boolean isOwn(Context context) {
        boolean forwarded = context.header("Forwarded") != null || context.header("X-Forwarded-For") != null;
        return isOwnName(context) && (!forwarded || isLoopback(Origin.forwardedFor(context.req(),
            settings.access().proxies())));
    }

    private static boolean isLoopback(Optional<String> client) {
        return client.flatMap(TrustedProxies::address).map(InetAddress::isLoopbackAddress).orElse(false);
    }

    private boolean isOwnName(Context context) {
        String name = context.req().getServerName().toLowerCase(Locale.ROOT);
        return name.equals("localhost") || name.endsWith(".localhost")
            || name.equals(settings.host().toLowerCase(Locale.ROOT))
            || isLoopback(Optional.of(name));
    }

    private void requireOwn(Context context) {
        if (!isOwn(context)) {
            challenge(context, "");
            throw new ProblemException(Problem.TOKEN_MISSING,
                "Without tokens the service answers only to its own machine, under the names"
                + " localhost, 127.0.0.1 or [::1] and not through a proxy. Make a token (token new), or start it with"
                + " --no-auth.");
        }
    }
}
