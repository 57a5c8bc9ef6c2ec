package surfeit.http;

import java.io.IOException;
import java.util.List;
import surfeit.http.measure.Measures;

/** What the service counts of itself, for a collector that asks every few seconds. */
final class MetricsRoutes {
    /** Media type of the text format 0.0.4. */
    private static final String MEDIA_TYPE = "text/plain; version=0.0.4; charset=utf-8";

    private final Measures measures;

    MetricsRoutes(Measures measures) {
        this.measures = measures;
    }

    List<Route> routes() {
        return List.of(Route.get("/metrics", Scope.METRICS).forms(Form.PLAIN).to(this::metrics));
    }

    private void metrics(Exchange exchange) throws IOException {
        exchange.answer().header("Cache-Control", "no-store");
        exchange.answer().bytes(MEDIA_TYPE, measures.text());
    }
}
