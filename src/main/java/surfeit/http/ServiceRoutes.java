package surfeit.http;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import surfeit.element.ElementTable;
import surfeit.http.json.FaultDocuments;
import surfeit.intake.IntakeLimits;
import surfeit.lab.Laboratory;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.Store;

/** What is here, whether it runs, its documents, and the data packed with it. */
final class ServiceRoutes {
    private final Laboratory laboratory;
    private final Readiness readiness;
    private final PackedFiles packed = PackedFiles.load();
    private final Document docs = new Document("/docs/index.html");
    private final Document openApiJson = new Document("/openapi/openapi.json");
    private final Document openApiYaml = new Document("/openapi/openapi.yaml");

    ServiceRoutes(Laboratory laboratory, Readiness readiness) {
        this.laboratory = laboratory;
        this.readiness = readiness;
    }

    /**
     * A document, read when it is asked for: half a megabyte each, and few ask. Its fingerprint is that of its bytes,
     * which may change while the program's version does not. Thread-safe.
     */
    private static final class Document {
        private final String resource;
        private volatile Optional<String> fingerprint = Optional.empty();

        Document(String resource) {
            this.resource = resource;
        }

        byte[] bytes() {
            return PackedFiles.bytes(resource);
        }

        String fingerprint() {
            if (fingerprint.isEmpty()) {
                fingerprint = Optional.of(Fingerprint.shortName(bytes()));
            }
            return fingerprint.get();
        }
    }

    List<Route> routes() {
        return List.of(
            Route.get("/v1", Scope.OPEN).to(this::service),
            Route.get("/docs", Scope.OPEN).forms(Form.HTML).to(this::docs),
            Route.get("/openapi.json", Scope.OPEN).to(exchange -> document(exchange, openApiJson)),
            Route.get("/openapi.yaml", Scope.OPEN).forms(Form.YAML).to(exchange -> document(exchange, openApiYaml)),
            Route.get("/shared", Scope.OPEN).to(this::sharedList),
            Route.get("/shared/<path>", Scope.OPEN).forms(Form.FILE).to(this::shared),
            Route.get("/healthz", Scope.OPEN).to(exchange -> status(exchange, "ok")),
            Route.get("/readyz", Scope.OPEN).to(this::ready));
    }

    private void service(Exchange exchange) throws IOException {
        if (!exchange.answer().unchanged(0)) {
            exchange.answer().json(200, json -> write(json, exchange.facts()));
        }
    }

    private void write(JsonGenerator json, ServiceFacts facts) throws IOException {
        json.writeStartObject();
        json.writeStringField("name", "surfeit");
        json.writeStringField("version", facts.version());
        json.writeStringField("does", "Says where an alloy's surface is enriched or depleted, from EDS spot results.");
        FaultDocuments.writeLinks(json, Map.of("samples", "/v1/samples", "interpretations", "/v1/interpretations",
            "results", "/v1/results", "events", "/v1/events", "alloys", "/v1/alloys", "problems", "/v1/problems", "docs", "/docs",
            "openapi", "/openapi.json", "shared", "/shared", "board", "/"));
        json.writeArrayFieldStart("limits");
        writeLimits(json, facts.settings());
        limit(json, Store.WAITING_SETTING, laboratory.writesWaitingMax(), "changes that wait to be recorded");
        json.writeEndArray();
        json.writeObjectFieldStart("reference_tables");
        json.writeStringField("atomic_weights",
            ElementTable.WEIGHTS_YEAR + " sha256:" + ElementTable.standard().sha256());
        json.writeEndObject();
        json.writeEndObject();
    }

    private static void writeLimits(JsonGenerator json, ServerSettings settings) throws IOException {
        RequestLimits requests = settings.requests();
        limit(json, RequestLimits.UPLOAD_BYTES_SETTING, requests.uploadBytesMax(),
            "bytes of one table or NDJSON, after inflation");
        limit(json, RequestLimits.JSON_BYTES_SETTING, requests.jsonBytesMax(),
            "bytes of one JSON body, after inflation");
        limit(json, RequestLimits.JSON_DEPTH_SETTING, requests.jsonDepthMax(), "levels of nesting in JSON");
        limit(json, RequestLimits.HEADER_BYTES_SETTING, requests.headerBytesMax(),
            "bytes of address and header fields together");
        limit(json, RequestLimits.STALL_SETTING, requests.bodyStall().toSeconds(), "seconds a body may pause");
        limit(json, RequestLimits.TOTAL_SETTING, requests.bodyTotal().toSeconds(), "seconds a whole body may take");
        limit(json, RequestLimits.REQUESTS_SETTING, requests.requestsPerSecondMax(), "requests a second of one token");
        limit(json, RequestLimits.STREAMS_SETTING, requests.openStreamsMax(), "event streams open at the same time");
        limit(json, RequestLimits.ARRIVING_SETTING, requests.arrivingBodiesMax(),
            "request bodies on their way at the same time");
        limit(json, RequestLimits.LARGE_SETTING, requests.largeAnswersMax(),
            "answers above " + RequestLimits.LARGE_BYTES + " bytes on their way at the same time");
        IntakeLimits intake = settings.intake();
        limit(json, IntakeLimits.ROWS_SETTING, intake.rowsMax(), "rows or spots of one upload");
        limit(json, IntakeLimits.ELEMENTS_SETTING, intake.elementsPerSpotMax(), "elements of one spot");
        limit(json, IntakeLimits.LABEL_SETTING, intake.labelLengthMax(),
            "characters of a label, particle, feature or session");
        limit(json, IntakeLimits.CELL_SETTING, intake.cellLengthMax(), "characters of one cell");
        limit(json, IntakeLimits.COLUMNS_SETTING, intake.columnsMax(), "columns of a table");
    }

    private static void limit(JsonGenerator json, String setting, long value, String meaning) throws IOException {
        json.writeStartObject();
        json.writeStringField("setting", setting);
        json.writeNumberField("value", value);
        json.writeStringField("meaning", meaning);
        json.writeEndObject();
    }

    private void docs(Exchange exchange) throws IOException {
        exchange.answer().header("Content-Security-Policy", PagePolicy.of(new String(docs.bytes(), StandardCharsets.UTF_8)));
        document(exchange, docs);
    }

    private static void document(Exchange exchange, Document document) throws IOException {
        if (!exchange.answer().unchangedContent(document.fingerprint())) {
            exchange.answer().bytes(exchange.form().contentType(), document.bytes());
        }
    }

    private void sharedList(Exchange exchange) throws IOException {
        if (exchange.answer().unchanged(0)) {
            return;
        }
        exchange.answer().json(200, json -> {
            json.writeStartObject();
            json.writeArrayFieldStart("items");
            for (Map.Entry<String, String> file : packed.shared().entrySet()) {
                json.writeStartObject();
                json.writeStringField("path", "/shared/" + file.getKey());
                json.writeStringField("sha256", file.getValue());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeNullField("next");
            json.writeEndObject();
        });
    }

    private void shared(Exchange exchange) throws IOException {
        String path = exchange.path("path");
        byte[] bytes = packed.shared(path).orElseThrow(() ->
            new ProblemException(Problem.NOT_FOUND, "There is no shared file \"" + path + "\"; /shared lists them."));
        if (!exchange.answer().unchangedContent(packed.shared().get(path).substring(0, 16))) {
            exchange.answer().bytes(PackedFiles.contentType(path), bytes);
        }
    }

    private void ready(Exchange exchange) throws IOException {
        if (!readiness.isReady()) {
            throw new ProblemException(
                Problem.SHUTTING_DOWN, "The service lets running requests end and takes no new ones.");
        }
        laboratory.eventLog().range();
        status(exchange, "ready");
    }

    private static void status(Exchange exchange, String word) throws IOException {
        exchange.answer().header("Cache-Control", "no-store");
        exchange.answer().json(200, json -> {
            json.writeStartObject();
            json.writeStringField("status", word);
            json.writeEndObject();
        });
    }
}
