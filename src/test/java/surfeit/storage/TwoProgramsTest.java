package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.stream.LongStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.composition.AlloyCatalogue;
import surfeit.lab.EventFilter;
import surfeit.lab.Expectation;
import surfeit.lab.FrozenAnswer;
import surfeit.lab.ImportOptions;
import surfeit.lab.ImportProgress;
import surfeit.lab.ImportReport;
import surfeit.lab.LabEvent;
import surfeit.lab.MadeWith;
import surfeit.lab.Recount;
import surfeit.lab.Recounted;
import surfeit.lab.RowsReadAhead;
import surfeit.lab.StoredSample;
import surfeit.lab.Upload;
import surfeit.segregation.answer.GroupBy;
import surfeit.spot.Spot;

/** Two programs that write to one database, each of which remembers what it knew when it wrote last. Invented values. */
class TwoProgramsTest {
    @TempDir
    Path folder;
    private LabBench one;
    private LabBench other;

    @BeforeEach
    void open() {
        one = LabBench.in(RecordEngine.POSTGRESQL, folder).describe("A7");
        other = LabBench.in(RecordEngine.POSTGRESQL, folder);
    }

    @AfterEach
    void close() {
        one.close();
        other.close();
    }

    private static CompletableFuture<ImportReport> post(LabBench bench, String label) {
        try {
            Spot spot = LabBench.spot(label, "78.8");
            Upload upload = LabBench.upload("the file as sent");
            return bench.laboratory().imports().recordShared("A7", upload, RowsReadAhead.of(LabBench.rows(spot), upload,
                LabBench.agCuSample()), ImportOptions.DEFAULT, LabBench.ANNA, ImportProgress.UNHEARD);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void posts_through_both_get_numbers_revisions_and_events_without_gap_or_repeat() {
        List<CompletableFuture<ImportReport>> posts = new ArrayList<>();
        for (int i = 0; i < 400; i++) {
            posts.add(post(i % 3 == 0 ? other : one, "P-" + i));
        }
        List<ImportReport> reports = posts.stream().map(CompletableFuture::join).toList();

        assertThat(reports).extracting(ImportReport::sampleRevision)
            .containsExactlyInAnyOrderElementsOf(LongStream.rangeClosed(2, 401).boxed().toList());
        assertThat(reports).extracting(report -> report.id().orElseThrow()).doesNotHaveDuplicates();
        assertThat(one.laboratory().events(EventFilter.ALL, 0, 1000)).extracting(LabEvent::id)
            .containsExactlyElementsOf(LongStream.rangeClosed(1, 401).boxed().toList());
        assertThat(other.laboratory().sample("A7").spotCount()).isEqualTo(400);
        assertThat(other.laboratory().auditLog().check().broken()).isEmpty();
        assertThat(one.rowCounts()).containsEntry("spot", 400L).containsEntry("import", 400L);
    }

    @Test
    void what_the_other_recorded_meanwhile_is_known_to_the_next_post() {
        post(one, "P-1").join();
        post(other, "P-2").join();
        other.laboratory().describe("A7", LabBench.described("annealed"), Expectation.revision(3), LabBench.ANNA);

        assertThat(post(one, "P-2").join()).returns(1L, ImportReport::unchangedCount);
        post(one, "P-3").join();

        StoredSample now = one.laboratory().sample("A7");
        assertThat(now.sample().description()).isEqualTo("annealed");
        assertThat(now).returns(3L, StoredSample::spotCount).returns(5L, StoredSample::revision);
        assertThat(one.laboratory().auditLog().check().broken()).isEmpty();
    }

    @Test
    void an_answer_that_the_other_froze_goes_out_of_date_with_the_next_post() {
        post(one, "P-1").join();
        post(one, "P-2").join();
        other.laboratory().interpretations().freeze("A7", GroupBy.FEATURE, (answer, spots) -> new FrozenAnswer(
            MadeWith.of("a method", 1, "0", Map.of()), new TreeMap<>(Map.of("json", "{}"))), LabBench.ANNA);

        post(one, "P-3").join();

        assertThat(one.laboratory().interpretations().find("int_0001").stale()).isPresent();
        assertThat(one.laboratory().auditLog().check().broken()).isEmpty();
    }

    @Test
    void sums_that_the_other_kept_or_forgot_are_gone_on_from_or_made_anew() {
        one.post("A7", LabBench.spots("Q", 300));
        post(one, "P-1").join();
        other.laboratory().withdraw("spt_0001", "charging", Expectation.NONE, LabBench.ANNA);
        List<CompletableFuture<ImportReport>> posts = new ArrayList<>();
        for (int i = 2; i < 600; i++) {
            posts.add(post(i % 2 == 0 ? other : one, "P-" + i));
        }
        posts.forEach(CompletableFuture::join);

        assertThat(one.laboratory().sample("A7").spotCount()).isEqualTo(300 - 1 + 599);
        List<Recounted> recounted = new ArrayList<>();
        one.store().read(access -> {
            new Recount(AlloyCatalogue.packaged(), 0.003).of(access, "A7", recounted::add);
            return recounted;
        });
        assertThat(recounted).isNotEmpty().extracting(Recounted::state).containsOnly(Recounted.State.EQUAL);
    }
}
