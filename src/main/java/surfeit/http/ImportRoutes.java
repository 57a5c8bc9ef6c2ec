package surfeit.http;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import surfeit.http.json.ImportDocument;
import surfeit.http.measure.ImportMeasures;
import surfeit.lab.ImportOptions;
import surfeit.lab.ImportOptions.OnError;
import surfeit.lab.ImportReport;
import surfeit.lab.KeptAnswer;
import surfeit.lab.KeptFile;
import surfeit.lab.Laboratory;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.RepeatKey;
import surfeit.lab.SpotRows;

/** Spots on their way in, and what became of them. */
final class ImportRoutes {
    /** Query parameter that gives an upload a name. */
    private static final String NAME = "import";

    private final Laboratory laboratory;
    private final ImportMeasures measures;
    private final NamedUploads uploads;

    ImportRoutes(Laboratory laboratory, ServiceState state) {
        this.laboratory = laboratory;
        this.measures = state.measures().imports();
        this.uploads = state.uploads();
    }

    List<Route> routes() {
        return List.of(
            Route.post("/v1/samples/{sample}/spots", Scope.WRITE).takes(Form.JSON, Form.NDJSON, Form.CSV)
                .parameters(UploadOptions.PARAMETERS).parameters("on_error", "validate_only", NAME)
                .to(this::importSpots),
            Route.get("/v1/imports/{id}", Scope.READ).to(this::report),
            Route.get("/v1/imports/{id}/rejected.csv", Scope.READ).forms(Form.CSV).to(this::rejected),
            Route.get("/v1/imports/{id}/original", Scope.READ).forms(Form.FILE).to(this::original));
    }

    private void importSpots(Exchange exchange) throws IOException {
        String sample = exchange.path("sample");
        Parameters parameters = exchange.parameters();
        OnError onError = parameters.oneOf("on_error", OnError.values(), OnError::word).orElse(OnError.REFUSE);
        ImportOptions options = new ImportOptions(onError, parameters.flag("validate_only"));
        Form form = exchange.bodyForm();
        SpotRows rows = UploadOptions.rows(form, UploadOptions.of(exchange));
        laboratory.sample(sample);
        OngoingUpload upload = parameters.text(NAME).map(name -> uploads.begin(name, sample, exchange.now()))
            .orElseGet(() -> new OngoingUpload(sample, exchange.now()));
        try (Body body = exchange.body(form)) {
            upload.received();
            AtomicReference<Optional<ImportReport>> done = new AtomicReference<>(Optional.empty());
            Function<Laboratory, KeptAnswer> work = lab -> {
                ImportReport report = lab.importSpots(sample, body, rows, options, exchange.occasion(), upload);
                done.set(Optional.of(report));
                return answer(report, options.validateOnly());
            };
            Optional<RepeatKey> key = exchange.repeatKey(body);
            KeptAnswer answer = key.isPresent() ? laboratory.once(key.get(), exchange.occasion(), work)
                : work.apply(laboratory);
            upload.over(done.get(), options.validateOnly());
            done.get().filter(report -> !options.validateOnly()).ifPresent(measures::done);
            exchange.kept(answer);
        } catch (ProblemException e) {
            measures.refused();
            throw e;
        } finally {
            upload.refusedUnlessOver();
        }
    }

    private static KeptAnswer answer(ImportReport report, boolean rehearsal) {
        Map<String, String> headers = report.id().map(id -> Map.of("Location", "/v1/imports/" + id)).orElse(Map.of());
        byte[] body = Exchange.bytes(json -> ImportDocument.write(json, report, rehearsal));
        return new KeptAnswer(report.id().isPresent() ? 201 : 200, headers, body);
    }

    private void report(Exchange exchange) throws IOException {
        if (NamedUploads.isName(exchange.path("id"))) {
            progress(exchange, exchange.path("id"));
            return;
        }
        ImportReport report = laboratory.importReport(exchange.path("id"));
        if (!exchange.unchanged(1)) {
            exchange.json(200, json -> ImportDocument.write(json, report, false));
        }
    }

    private void progress(Exchange exchange, String name) throws IOException {
        OngoingUpload upload = uploads.find(name).orElseThrow(() -> new ProblemException(Problem.NOT_FOUND,
            "There is no import \"" + name + "\", and no upload of that name is under way or was lately."));
        OngoingUpload.Stand stand = upload.stand();
        if (!exchange.unchanged(upload.started().toEpochMilli(), stand.state().ordinal(), stand.spotCount())) {
            exchange.json(200, json -> ProgressDocument.write(json, name, upload, stand));
        }
    }

    private void rejected(Exchange exchange) throws IOException {
        answer(exchange, laboratory.rejected(exchange.path("id")), "rejected-" + exchange.path("id") + ".csv");
    }

    private void original(Exchange exchange) throws IOException {
        String id = exchange.path("id");
        KeptFile file = laboratory.original(id);
        answer(exchange, file, file.fileName().orElse("original-" + id));
    }

    /** An import never changes, so that its ETag is one for ever. */
    private static void answer(Exchange exchange, KeptFile file, String name) throws IOException {
        try (InputStream in = file.bytes()) {
            if (exchange.unchanged(1)) {
                return;
            }
            String plain = name.replaceAll("[^A-Za-z0-9._ -]", "_");
            exchange.header("Content-Disposition", "attachment; filename=\"" + plain + "\"");
            exchange.header("X-Content-Type-Options", "nosniff");
            try (OutputStream out = exchange.stream(file.mediaType())) {
                in.transferTo(out);
            }
        }
    }
}
