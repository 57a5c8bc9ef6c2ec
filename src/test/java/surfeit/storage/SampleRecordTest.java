package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.lab.Change;
import surfeit.lab.Expectation;
import surfeit.lab.Laboratory;
import surfeit.lab.Page;
import surfeit.lab.PageRequest;
import surfeit.lab.Problem;
import surfeit.lab.SampleFilter;
import surfeit.lab.SampleRevision;
import surfeit.lab.StoredSample;
import surfeit.spot.Sample;

@OnBothEngines
class SampleRecordTest {
    @Parameter
    RecordEngine engine;
    @TempDir
    Path folder;
    private LabBench bench;
    private Laboratory lab;

    @BeforeEach
    void open() {
        bench = LabBench.in(engine, folder);
        lab = bench.laboratory();
    }

    @AfterEach
    void close() {
        bench.close();
    }

    @Test
    void a_new_sample_is_at_revision_one() {
        Change<StoredSample> change = put("A7", LabBench.agCuSample(), Expectation.NONE);

        assertThat(change.kind()).isEqualTo(Change.Kind.CREATED);
        assertThat(change.now()).isEqualTo(lab.sample("A7"))
            .isEqualTo(new StoredSample("A7", 1, LabBench.agCuSample(), 1, 0, LabBench.NOON, LabBench.NOON));
    }

    @Test
    void the_same_description_again_changes_nothing_even_from_an_old_revision() {
        put("A7", LabBench.agCuSample(), Expectation.NONE);

        assertThat(put("A7", LabBench.agCuSample(), Expectation.NONE).kind()).isEqualTo(Change.Kind.UNCHANGED);
        assertThat(put("A7", LabBench.agCuSample(), Expectation.revision(99)).kind()).isEqualTo(Change.Kind.UNCHANGED);
        assertThat(lab.eventLog().range().last()).isEqualTo(1);
        assertThat(lab.auditLog().head().count()).isEqualTo(1);
    }

    @Test
    void another_description_needs_the_revision_it_starts_from() {
        put("A7", LabBench.agCuSample(), Expectation.NONE);
        Sample other = described("lot 7");

        LabBench.assertRefused(() -> put("A7", other, Expectation.NONE), Problem.REVISION_REQUIRED);
        LabBench.assertRefused(() -> put("A7", other, Expectation.revision(2)), Problem.REVISION_MISMATCH);
        LabBench.assertRefused(() -> put("A7", other, Expectation.NEW), Problem.REVISION_MISMATCH);
        LabBench.assertRefused(() -> put("B1", other, Expectation.EXISTING), Problem.REVISION_MISMATCH);
        LabBench.assertRefused(() -> put("B1", other, Expectation.revision(1)), Problem.REVISION_MISMATCH);

        assertThat(put("A7", other, Expectation.revision(1)).now().revision()).isEqualTo(2);
        assertThat(put("A7", described("lot 8"), Expectation.EXISTING).now().revision()).isEqualTo(3);
        assertThat(put("B1", other, Expectation.NEW).kind()).isEqualTo(Change.Kind.CREATED);
    }

    @Test
    void a_sample_can_be_read_as_it_was_at_every_revision() {
        put("A7", described("first"), Expectation.NONE);
        bench.post("A7", LabBench.spot("P1-1", "78.8"), LabBench.spot("P1-2", "77.9"));
        put("A7", described("second"), Expectation.revision(2));

        assertThat(lab.sample("A7", 1)).returns("first", stored -> stored.sample().description())
            .returns(0L, StoredSample::spotCount);
        assertThat(lab.sample("A7", 2)).returns("first", stored -> stored.sample().description())
            .returns(2L, StoredSample::spotCount).returns(1L, StoredSample::described);
        assertThat(lab.sample("A7", 3)).isEqualTo(lab.sample("A7"))
            .returns("second", stored -> stored.sample().description()).returns(2L, StoredSample::spotCount);
        LabBench.assertRefused(() -> lab.sample("A7", 4), Problem.NOT_FOUND);
        LabBench.assertRefused(() -> lab.sample("A7", 0), Problem.NOT_FOUND);
    }

    @Test
    void every_change_of_a_sample_is_listed_with_its_cause() {
        put("A7", described("first"), Expectation.NONE);
        bench.post("A7", LabBench.spot("P1-1", "78.8"));
        lab.correct("spt_0001", "misread", Expectation.NONE,
            (spot, sample) -> LabBench.spot("P1-1", "77.8"), LabBench.ANNA);
        lab.withdraw("spt_0001", "charging", Expectation.NONE, LabBench.ANNA);

        Page<SampleRevision> all = lab.sampleRevisions("A7", PageRequest.first(10));

        assertThat(all.items()).containsExactly(
            new SampleRevision(1, SampleRevision.What.DESCRIBED, LabBench.ANNA, Optional.empty(), 0),
            new SampleRevision(2, SampleRevision.What.SPOTS_IMPORTED, LabBench.ANNA, Optional.of("imp_0001"), 1),
            new SampleRevision(3, SampleRevision.What.SPOT_CORRECTED, LabBench.ANNA, Optional.of("spt_0001"), 1),
            new SampleRevision(4, SampleRevision.What.SPOT_WITHDRAWN, LabBench.ANNA, Optional.of("spt_0001"), 0));
        Page<SampleRevision> first = lab.sampleRevisions("A7", PageRequest.first(3));
        assertThat(first.items()).isEqualTo(all.items().subList(0, 3));
        assertThat(lab.sampleRevisions("A7", new PageRequest(3, first.next())))
            .isEqualTo(new Page<>(all.items().subList(3, 4), Optional.empty()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", ".", "..", "...", "A 7", "A/7", "Ä7", "A7\n",
        "12345678901234567890123456789012345678901234567890123456789012345"})
    void other_names_are_refused(String name) {
        LabBench.assertRefused(() -> put(name, LabBench.agCuSample(), Expectation.NONE), Problem.NAME_INVALID);
    }

    @Test
    void a_sample_of_an_alloy_nobody_knows_is_refused_with_the_nearest() {
        Sample sample = Sample.of(Optional.of("ag-cu-eutectik"), Optional.empty());

        assertThat(LabBench.assertRefused(() -> put("A7", sample, Expectation.NONE), Problem.ALLOY_UNKNOWN).detail())
            .contains("\"ag-cu-eutectik\"").contains("nearest known: ag-cu-eutectic");
        LabBench.assertRefused(() -> lab.sample("A7"), Problem.NOT_FOUND);
    }

    @Test
    void lists_go_by_name_and_pages_do_not_shift_when_samples_arrive_between_them() {
        List.of("B2", "A1", "C3", "D4").forEach(bench::describe);

        Page<StoredSample> first = lab.samples(SampleFilter.ALL, PageRequest.first(2));
        bench.describe("A0").describe("C0");
        Page<StoredSample> second = lab.samples(SampleFilter.ALL, new PageRequest(2, first.next()));
        Page<StoredSample> third = lab.samples(SampleFilter.ALL, new PageRequest(2, second.next()));

        assertThat(names(first)).containsExactly("A1", "B2");
        assertThat(names(second)).containsExactly("C0", "C3");
        assertThat(names(third)).containsExactly("D4");
        assertThat(third.next()).isEmpty();
    }

    @Test
    void lists_can_be_narrowed_by_alloy_and_by_words_taken_literally() {
        put("A1", described("Lot 7, 100 % gas atomised"), Expectation.NONE);
        put("A2", described("Lot 8, 100 g"), Expectation.NONE);
        put("sn_bi", Sample.of(Optional.of("bi-sn-eutectic"), Optional.empty()), Expectation.NONE);

        assertThat(found(Optional.of(LabBench.AG_CU), Optional.empty())).containsExactly("A1", "A2");
        assertThat(found(Optional.empty(), Optional.of("lOT 7"))).containsExactly("A1");
        assertThat(found(Optional.empty(), Optional.of("100 %"))).containsExactly("A1");
        assertThat(found(Optional.empty(), Optional.of("N_B"))).containsExactly("sn_bi");
        assertThat(found(Optional.empty(), Optional.of("!"))).isEmpty();
        assertThat(found(Optional.of(LabBench.AG_CU), Optional.of("sn"))).isEmpty();
    }

    private List<String> found(Optional<String> alloy, Optional<String> text) {
        return names(lab.samples(new SampleFilter(alloy, text), PageRequest.first(10)));
    }

    private static List<String> names(Page<StoredSample> page) {
        return page.items().stream().map(StoredSample::name).toList();
    }

    private Change<StoredSample> put(String name, Sample sample, Expectation expectation) {
        return lab.describe(name, sample, expectation, LabBench.ANNA);
    }

    private static Sample described(String description) {
        return LabBench.described(description);
    }
}
