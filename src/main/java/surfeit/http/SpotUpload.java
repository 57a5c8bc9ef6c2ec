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

/** An upload of spots that was received, on its way into the record. For one use. */
final class SpotUpload {
    /** Uploads up to this size share their commits. Judgement: some tens of spots, recorded in about a millisecond. */
    private static final int SMALL_BYTES = 8 << 10;

    private final Laboratory laboratory;
    private final String sample;
    private final Sample described;
    private final Body body;
    private final SpotRows rows;
    private final ImportOptions options;
    private final Occasion occasion;
    private final OngoingUpload progress;
    private final ImportMeasures measures;
    private final AtomicReference<Optional<ImportReport>> done = new AtomicReference<>(Optional.empty());

    /**
     * @param described as the sample was lately
     * @param body      is closed when the upload is over
     */
    SpotUpload(Laboratory laboratory, String sample, Sample described, Body body, SpotRows rows, ImportOptions options,
               Occasion occasion, OngoingUpload progress, ImportMeasures measures) {
        this.laboratory = laboratory;
        this.sample = sample;
        this.described = described;
        this.body = body;
        this.rows = rows;
        this.options = options;
        this.occasion = occasion;
        this.progress = progress;
        this.measures = measures;
        progress.received();
    }

    /** Whether it can be recorded together with others. */
    boolean isSmall() {
        return body.isWithin(SMALL_BYTES) && !options.validateOnly();
    }

    /** Records it, or does as if. @return the answer */
    KeptAnswer record(Exchange exchange) throws IOException {
        try {
            Optional<RepeatKey> key = exchange.repeatKey(body);
            KeptAnswer answer = key.isPresent() ? laboratory.once(key.get(), occasion, recording(rows))
                : recording(rows).apply(laboratory);
            over();
            return answer;
        } catch (ProblemException e) {
            measures.refused();
            throw e;
        } finally {
            end();
        }
    }

    /** As {@link #record}, in a commit with others and without a thread that waits. @return what makes the answer */
    CompletableFuture<Supplier<KeptAnswer>> recordShared(Exchange exchange) throws IOException {
        boolean waits = false;
        try {
            CompletableFuture<Supplier<KeptAnswer>> answer = shared(exchange).whenComplete((made, failure) -> {
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

    private CompletableFuture<Supplier<KeptAnswer>> shared(Exchange exchange) throws IOException {
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
