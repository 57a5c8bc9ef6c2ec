package surfeit.http;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import surfeit.http.json.ImportDocument;
import surfeit.http.measure.ImportMeasures;
import surfeit.lab.ImportOptions;
import surfeit.lab.ImportOptions.OnError;
import surfeit.lab.ImportReport;
import surfeit.lab.KeptFile;
import surfeit.lab.Laboratory;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.SpotRows;
import surfeit.spot.Sample;

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
        Form form = exchange.body().form();
        SpotRows rows = UploadOptions.rows(form, UploadOptions.of(exchange));
        Sample described = laboratory.imports().lately(sample);
        OngoingUpload upload = parameters.text(NAME).map(name -> uploads.begin(name, sample, exchange.now()))
            .orElseGet(() -> new OngoingUpload(sample, exchange.now()));
        SpotUpload work = new SpotUpload(laboratory, exchange, rows, options, upload, measures);
        work.receive(form);
        if (work.isSmall()) {
            exchange.answerOnce(work.recordShared(described), answer -> exchange.answer().kept(answer.get()));
        } else {
            exchange.answer().kept(work.record());
        }
    }

    private void report(Exchange exchange) throws IOException {
        if (NamedUploads.isName(exchange.path("id"))) {
            progress(exchange, exchange.path("id"));
            return;
        }
        ImportReport report = laboratory.imports().report(exchange.path("id"));
        if (!exchange.answer().unchanged(1)) {
            exchange.answer().json(200, json -> ImportDocument.write(json, report, false));
        }
    }

    private void progress(Exchange exchange, String name) throws IOException {
        OngoingUpload upload = uploads.find(name).orElseThrow(() -> new ProblemException(Problem.NOT_FOUND,
            "There is no import \"" + name + "\", and no upload of that name is under way or was lately."));
        OngoingUpload.Stand stand = upload.stand();
        if (!exchange.answer().unchanged(upload.started().toEpochMilli(), stand.state().ordinal(), stand.spotCount())) {
            exchange.answer().json(200, json -> ProgressDocument.write(json, name, upload, stand));
        }
    }

    private void rejected(Exchange exchange) throws IOException {
        answer(exchange, laboratory.imports().rejected(exchange.path("id")), "rejected-" + exchange.path("id") + ".csv");
    }

    private void original(Exchange exchange) throws IOException {
        String id = exchange.path("id");
        KeptFile file = laboratory.imports().original(id);
        answer(exchange, file, file.fileName().orElse("original-" + id));
    }

    /** An import never changes, so that its ETag is one for ever. */
    private static void answer(Exchange exchange, KeptFile file, String name) throws IOException {
        try (InputStream in = file.bytes()) {
            if (exchange.answer().unchanged(1)) {
                return;
            }
            String plain = name.replaceAll("[^A-Za-z0-9._ -]", "_");
            // readers that know the second take it (RFC 6266, section 4.3)
            String whole = plain.equals(name) ? ""
                : "; filename*=UTF-8''" + URLEncoder.encode(name, StandardCharsets.UTF_8).replace("+", "%20").replace("*", "%2A");
            exchange.answer().header("Content-Disposition", "attachment; filename=\"" + plain + "\"" + whole);
            exchange.answer().header("X-Content-Type-Options", "nosniff");
            try (OutputStream out = exchange.answer().stream(file.mediaType())) {
                in.transferTo(out);
            }
        }
    }
}
