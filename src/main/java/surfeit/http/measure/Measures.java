package surfeit.http.measure;

import surfeit.http.feed.EventFeed;
import surfeit.lab.Laboratory;

/** All that the service tells of itself to a collector of metrics. Thread-safe. */
public final class Measures {
    private final RequestMeasures requests = new RequestMeasures();
    private final ImportMeasures imports = new ImportMeasures();
    private final Laboratory laboratory;
    private final EventFeed feed;
    private final String version;

    public Measures(Laboratory laboratory, EventFeed feed, String version) {
        this.laboratory = laboratory;
        this.feed = feed;
        this.version = version;
    }

    public RequestMeasures requests() {
        return requests;
    }

    public ImportMeasures imports() {
        return imports;
    }

    /** Everything as it stands now, in the text format 0.0.4. */
    public byte[] text() {
        MetricsText text = new MetricsText();
        text.family("surfeit_build_info", MetricsText.Type.GAUGE, "The version that runs; always 1.")
            .sample("surfeit_build_info", 1, "version", version);
        requests.write(text);
        imports.write(text);
        text.single("surfeit_open_streams", MetricsText.Type.GAUGE,
            "Event streams that are open and requests that wait for an event.", feed.listenerCount());
        text.single("surfeit_event_lag_seconds", MetricsText.Type.GAUGE,
            "From the commit of the newest event to when it was handed to everybody who listens.",
            feed.lag().toNanos() / 1e9);
        text.single("surfeit_last_event_id", MetricsText.Type.GAUGE, "Number of the newest event on record.",
            laboratory.eventLog().range().last());
        text.single("surfeit_store_bytes", MetricsText.Type.GAUGE, "Size of the record where it is kept.",
            laboratory.byteCount());
        VirtualMachine.write(text);
        return text.bytes();
    }
}
