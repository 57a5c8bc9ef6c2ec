package surfeit.http;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.LongStream;
import surfeit.http.board.GreetingPage;
import surfeit.http.board.Look;
import surfeit.http.board.NumberDisplay;
import surfeit.http.board.PreviewPage;
import surfeit.intake.IntakeOptions;
import surfeit.lab.Expectation;
import surfeit.lab.ImportOptions;
import surfeit.lab.ImportReport;
import surfeit.lab.InputRevisions;
import surfeit.lab.Laboratory;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.Segregation;
import surfeit.lab.StoredSample;
import surfeit.report.figure.AnswerFigure;
import surfeit.report.figure.Figure;
import surfeit.segregation.answer.GroupBy;
import surfeit.spot.Sample;

/** The board: pages of the service for eyes, made here and whole without a script. */
final class BoardRoutes {
    private static final Map<String, String> MEDIA_TYPES = Map.of("board.css", "text/css; charset=utf-8",
        "board.js", "text/javascript; charset=utf-8", "icon.svg", "image/svg+xml; charset=utf-8");

    /** Stands in the ETag of the page for those who may not read, where the number of the last event stands else. */
    private static final long NOBODY = -1;

    private final Laboratory laboratory;
    private final SamplesView samples;
    private final SampleView sample;
    /** Of style and script: a page changes with them. */
    private final long fingerprint;

    BoardRoutes(Laboratory laboratory) {
        this.laboratory = laboratory;
        this.samples = new SamplesView(laboratory);
        this.sample = new SampleView(laboratory);
        this.fingerprint = Fingerprint.shortName(new String(file("board.css"), StandardCharsets.UTF_8)
            + new String(file("board.js"), StandardCharsets.UTF_8)).hashCode() & 0xffff_ffffL;
    }

    List<Route> routes() {
        return List.of(
            Route.get("/", Scope.OPEN).forms(Form.HTML).parameters(SamplesView.PARAMETERS).to(this::door),
            Route.get("/samples", Scope.READ).forms(Form.HTML).parameters(SamplesView.PARAMETERS).to(this::list),
            Route.get("/samples/{sample}", Scope.READ).forms(Form.HTML).parameters("numbers").to(this::one),
            Route.post("/samples/{sample}/preview", Scope.WRITE).forms(Form.HTML).takes(Form.JSON, Form.NDJSON,
            Form.CSV)
                .parameters("numbers").parameters(UploadOptions.PARAMETERS).parameters(SampleOfAddress.PARAMETERS)
                .to(this::preview),
            Route.get("/board/{file}", Scope.OPEN).forms(Form.FILE).to(this::file));
    }

    private void door(Exchange exchange) throws IOException {
        if (exchange.mayRead()) {
            list(exchange);
        } else if (!unchanged(exchange, look(exchange), NOBODY)) {
            page(exchange, new GreetingPage(look(exchange)).html());
        }
    }

    private void list(Exchange exchange) throws IOException {
        Look look = look(exchange);
        long last = laboratory.eventLog().range().last();
        if (!unchanged(exchange, look, last)) {
            page(exchange, samples.page(exchange.parameters(), look, Long.toString(last)).html());
        }
    }

    private void one(Exchange exchange) throws IOException {
        Look look = look(exchange);
        StoredSample stored = laboratory.sample(exchange.path("sample"));
        Optional<InputRevisions> inputs = inputs(stored);
        long alloy = inputs.map(known -> known.alloy().orElse(0)).orElse(0L);
        int frozen = sample.frozen(stored.name()).size();
        if (!unchanged(exchange, look, inputs.map(InputRevisions::sample).orElse(stored.revision()), alloy, frozen)) {
            page(exchange, sample.page(exchange, stored, inputs, look).html());
        }
    }

    private Optional<InputRevisions> inputs(StoredSample stored) {
        try {
            return Optional.of(laboratory.inputRevisions(stored.name()));
        } catch (ProblemException alloyUnknown) {
            return Optional.empty();
        }
    }

    private void preview(Exchange exchange) throws IOException {
        String name = exchange.path("sample");
        Form form = exchange.body().form();
        IntakeOptions options = UploadOptions.of(exchange);
        Optional<Sample> described = described(exchange, options);
        try (Body body = exchange.body().receive(form)) {
            String html = laboratory.rehearse(lab -> {
                try {
                    boolean isNew = described.isPresent() && isNew(name, lab);
                    if (isNew) {
                        lab.describe(name, described.get(), Expectation.NONE, exchange.occasion());
                    }
                    ImportReport report = lab.importSpots(name, body, UploadOptions.rows(form, options),
                        ImportOptions.DEFAULT, exchange.occasion());
                    return preview(exchange, lab, isNew, report);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
            exchange.answer().header("Cache-Control", "no-store");
            page(exchange, html);
        }
    }

    private static String preview(Exchange exchange, Laboratory lab, boolean isNew, ImportReport report)
            throws IOException {
        Segregation answer = lab.segregation(report.sample(), GroupBy.FEATURE);
        StringBuilder sections = new StringBuilder();
        new AnswerFile(answer, lab.spotSource(answer.stored().orElseThrow()), exchange.now())
            .sections(SampleView.ANSWER, EnumSet.allOf(AnswerFigure.class), reading -> { }, sections);
        return new PreviewPage(look(exchange), report.sample(), isNew, report, sections.toString(),
            SampleView.names(answer)).html();
    }

    /** The sample that the address describes; empty where it says nothing of one. */
    private static Optional<Sample> described(Exchange exchange, IntakeOptions options) throws IOException {
        Parameters parameters = exchange.parameters();
        boolean said = parameters.text("alloy").isPresent() || parameters.text("nominal").isPresent();
        return said ? Optional.of(SampleOfAddress.read(parameters, options.stated().unit())) : Optional.empty();
    }

    private static boolean isNew(String name, Laboratory lab) {
        try {
            lab.sample(name);
            return false;
        } catch (ProblemException missing) {
            return missing.problem() == Problem.NOT_FOUND;
        }
    }

    private void file(Exchange exchange) throws IOException {
        String name = exchange.path("file");
        if (!MEDIA_TYPES.containsKey(name)) {
            throw new ProblemException(Problem.NOT_FOUND, "The board has no file \"" + name + "\".");
        }
        byte[] bytes = file(name);
        if (!exchange.answer().unchangedContent(Fingerprint.shortName(bytes))) {
            exchange.answer().bytes(MEDIA_TYPES.get(name), bytes);
        }
    }

    /** The style carries the colours of the figures, so that they are dark where the page is. */
    private static byte[] file(String name) {
        byte[] packed = PackedFiles.bytes("/board/" + name);
        return name.equals("board.css")
            ? (new String(packed, StandardCharsets.UTF_8) + Figure.STYLE + "\n").getBytes(StandardCharsets.UTF_8)
            : packed;
    }

    private boolean unchanged(Exchange exchange, Look look, long revision, long... others) throws IOException {
        LongStream all = LongStream.of(revision, look.numbers().ordinal() + (look.chosen() ? 2 : 0), fingerprint);
        exchange.answer().header("Vary", "Accept, Accept-Language, Authorization");
        return exchange.answer().unchanged(LongStream.concat(all, LongStream.of(others)).toArray());
    }

    private static Look look(Exchange exchange) {
        Optional<NumberDisplay> chosen = exchange.parameters().oneOf("numbers", NumberDisplay.values(),
            NumberDisplay::word);
        return new Look(chosen.orElseGet(() -> NumberDisplay.of(exchange.acceptLanguage())), chosen.isPresent());
    }

    private static void page(Exchange exchange, String html) throws IOException {
        exchange.answer().header(SecurityHeaders.POLICY, PagePolicy.BOARD);
        exchange.answer().text(html);
    }
}
