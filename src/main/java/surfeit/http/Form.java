package surfeit.http;

import java.util.Locale;

/** A form an answer or a body can have, by its media type and the suffix that asks for it. */
public enum Form {
    JSON("application/json", "application/json"),
    CSV("text/csv", "text/csv; charset=utf-8; header=present"),
    NDJSON("application/x-ndjson", "application/x-ndjson"),
    MARKDOWN("text/markdown", "text/markdown; charset=utf-8"),
    HTML("text/html", "text/html; charset=utf-8"),
    SVG("image/svg+xml", "image/svg+xml; charset=utf-8"),
    YAML("application/yaml", "application/yaml"),
    /** Server-sent events; no address has a suffix for them. */
    EVENT_STREAM("text/event-stream", "text/event-stream"),
    PLAIN("text/plain", "text/plain; charset=utf-8"),
    /** The bytes of a file as they were sent or packed, whatever their media type. */
    FILE("*/*", "application/octet-stream");

    private final String mediaType;
    private final String contentType;

    Form(String mediaType, String contentType) {
        this.mediaType = mediaType;
        this.contentType = contentType;
    }

    /** Without parameters: {@code text/csv}. */
    public String mediaType() {
        return mediaType;
    }

    /** With parameters, as answers carry it. */
    String contentType() {
        return contentType;
    }

    /** The end of an address that asks for this form: {@code .csv}. */
    public String suffix() {
        return this == MARKDOWN ? ".md" : "." + name().toLowerCase(Locale.ROOT);
    }
}
