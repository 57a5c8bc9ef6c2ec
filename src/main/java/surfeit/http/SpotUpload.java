package surfeit.http;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import java.util.function.Supplier;
import surfeit.http.json.ImportDocument;
import surfeit.http.measure.ImportMeasures;
import surfeit.lab.ImportOptions;
import surfeit.lab.ImportReport;
import surfeit.lab.KeptAnswer;
import surfeit.lab.Laboratory;
import surfeit.lab.Occasion;
import surfeit.lab.ProblemException;
import surfeit.lab.RepeatKey;
import surfeit.lab.RowsReadAhead;
import surfeit.lab.SpotRows;
import surfeit.spot.Sample;

/**
 * An upload of spots on its way into the record. A large one is read and recorded while it arrives, as long as it comes about
 * as fast as it can be recorded. One that does not is received whole before anything is recorded, and so is one with an
 * Idempotency-Key, which may be a repeat, and a JSON document, whose last member may concern the first. For one use.
 */
final class SpotUpload {
    /** Uploads up to this size share their commits. Judgement: some tens of spots, recorded in about a millisecond. */
    private static final int SMALL_BYTES = 8 << 10;

    private final Laboratory laboratory;
    private final Exchange exchange;
    private final String sample;
    private final SpotRows rows;
    private final ImportOptions options;
    private final OngoingUpload progress;
    private final ImportMeasures measures;
    private final AtomicReference<Optional<ImportReport>> done = new AtomicReference<>(Optional.empty());
    private Body body;
    private Occasion occasion;
    private Optional<EarlyRecording> early = Optional.empty();

    SpotUpload(Laboratory laboratory, Exchange exchange, SpotRows rows, ImportOptions options, OngoingUpload progress,
               ImportMeasures measures) {
        this.laboratory = laboratory;
        this.exchange = exchange;
        this.sample = progress.sample();
        this.rows = rows;
        this.options = options;
        this.progress = progress;
        this.measures = measures;
    }

    /** Receives it to its end. @throws ProblemException as {@link RequestBody#receive} */
    void receive(Form form) throws IOException {
        try {
            body = exchange.body().receive(form, beginning -> begin(form, beginning));
            occasion = exchange.occasion();
            progress.received();
        } catch (IOException | RuntimeException e) {
            early.ifPresent(EarlyRecording::awaitEnd);
            measures.refused();
            progress.refusedUnlessOver();
            throw e;
        }
    }

    private void begin(Form form, Body beginning) {
        if (form != Form.JSON && beginning.isFast() && !exchange.mayRepeat()) {
            Occasion now = exchange.occasion();
            early = Optional.of(new EarlyRecording(() ->
                laboratory.imports().record(sample, beginning, rows, options, now, progress)));
        }
    }

    /** Whether it can be recorded together with others. */
    boolean isSmall() {
        return body.isWithin(SMALL_BYTES) && !options.validateOnly();
    }

    /** Records it, or does as if. @return the answer */
    KeptAnswer record() throws IOException {
        try {
            Optional<RepeatKey> key = exchange.repeatKey(body);
            KeptAnswer answer = key.isPresent() ? laboratory.once(key.get(), occasion, recording(rows))
                : early.flatMap(EarlyRecording::ended).map(this::answer).orElseGet(() -> recording(rows).apply(laboratory));
            over();
            return answer;
        } catch (ProblemException e) {
            measures.refused();
            throw e;
        } finally {
            end();
        }
    }

    /**
     * As {@link #record}, in a commit with others and without a thread that waits.
     *
     * @param described the sample as it was lately
     * @return what makes the answer
     */
    CompletableFuture<Supplier<KeptAnswer>> recordShared(Sample described) throws IOException {
        boolean waits = false;
        try {
            CompletableFuture<Supplier<KeptAnswer>> answer = shared(described).whenComplete((made, failure) -> {
                if (failure == null) {
                    over();
                } else if (Refusals.cause(failure) instanceof ProblemException) {
                    measures.refused();
                }
                end();
            });
            waits = true;
            return answer;
        } catch (ProblemException e) {
            measures.refused();
            throw e;
        } finally {
            if (!waits) {
                end();
            }
        }
    }

    private CompletableFuture<Supplier<KeptAnswer>> shared(Sample described) throws IOException {
        Optional<RepeatKey> key = exchange.repeatKey(body);
        RowsReadAhead ahead = RowsReadAhead.of(rows, body, described);
        if (key.isPresent()) {
            return laboratory.onceShared(key.get(), ahead.foreseen(sample), occasion, recording(ahead))
                .thenApply(kept -> () -> kept);
        }
        return laboratory.imports().recordShared(sample, body, ahead, options, occasion, progress)
            .thenApply(report -> {
                done.set(Optional.of(report));
                return () -> answer(report);
            });
    }

    private Function<Laboratory, KeptAnswer> recording(SpotRows from) {
        return lab -> answer(lab.imports().record(sample, body, from, options, occasion, progress));
    }

    private KeptAnswer answer(ImportReport report) {
        done.set(Optional.of(report));
        Map<String, String> headers = report.id().map(id -> Map.of("Location", "/v1/imports/" + id)).orElse(Map.of());
        byte[] bytes = Answer.bytes(json -> ImportDocument.write(json, report, options.validateOnly()));
        return new KeptAnswer(report.id().isPresent() ? 201 : 200, headers, bytes);
    }

    private void over() {
        progress.over(done.get(), options.validateOnly());
        done.get().filter(report -> !options.validateOnly()).ifPresent(measures::done);
    }

    private void end() {
        progress.refusedUnlessOver();
        body.close();
    }
}
