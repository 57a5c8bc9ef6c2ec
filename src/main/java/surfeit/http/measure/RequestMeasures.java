package surfeit.http.measure;

import java.util.Comparator;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.LongAdder;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.RequestLog;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.NanoTime;

/**
 * Counts requests as they end, by route, method and class of status, and how long they took. What a client makes up
 * makes no label: paths without a route are together one, methods nobody serves another. Thread-safe.
 */
public final class RequestMeasures implements RequestLog {
    private static final String ROUTE = RequestMeasures.class.getName() + ".route";
    private static final String LASTING = RequestMeasures.class.getName() + ".lasting";
    private static final String NO_ROUTE = "none";
    private static final Set<String> METHODS = Set.of("GET", "HEAD", "PUT", "POST", "DELETE", "OPTIONS");
    private static final String NAME = "surfeit_http_request";

    private final Map<Answered, LongAdder> answered = new ConcurrentHashMap<>();
    private final Map<Asked, Histogram> durations = new ConcurrentHashMap<>();

    private record Asked(String route, String method) {
    }

    private record Answered(Asked asked, String statusClass) {
    }

    /**
     * Says which route a request belongs to.
     *
     * @param lasting true where the answer lasts as long as its client likes, so that its duration says nothing
     */
    public static void mark(Request request, String route, boolean lasting) {
        Request outermost = Request.unWrap(request);
        outermost.setAttribute(ROUTE, route);
        outermost.setAttribute(LASTING, lasting);
    }

    @Override
    public void log(Request request, Response response) {
        Object route = request.getAttribute(ROUTE);
        String method = METHODS.contains(request.getMethod()) ? request.getMethod() : "other";
        Asked asked = new Asked(route == null ? NO_ROUTE : route.toString(), method);
        answered.computeIfAbsent(new Answered(asked, response.getStatus() / 100 + "xx"), key -> new LongAdder())
            .increment();
        if (!Boolean.TRUE.equals(request.getAttribute(LASTING))) {
            durations.computeIfAbsent(asked, key -> new Histogram()).add(NanoTime.since(request.getBeginNanoTime()));
        }
    }

    void write(MetricsText text) {
        text.family(NAME + "s_total", MetricsText.Type.COUNTER, "Requests that were answered.");
        answered.keySet().stream().sorted(Comparator.comparing(Answered::toString)).forEach(key ->
            text.sample(NAME + "s_total", answered.get(key).sum(), "route", key.asked().route(),
                "method", key.asked().method(), "status_class", key.statusClass()));
        text.family(NAME + "_duration_seconds", MetricsText.Type.HISTOGRAM,
            "From the first byte of a request to the last one of its answer; event streams are not in here.");
        durations.keySet().stream().sorted(Comparator.comparing(Asked::toString)).forEach(key ->
            durations.get(key).write(text, NAME + "_duration_seconds", "route", key.route(), "method", key.method()));
    }
}
