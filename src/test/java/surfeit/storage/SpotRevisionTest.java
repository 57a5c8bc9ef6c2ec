package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import surfeit.lab.Expectation;
import surfeit.lab.Laboratory;
import surfeit.lab.Occasion;
import surfeit.lab.PageRequest;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.SpotFilter;
import surfeit.lab.StoredSample;
import surfeit.lab.StoredSpot;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.Spot;

@OnBothEngines
class SpotRevisionTest {
    private static final Occasion BEN = new Occasion("ben", Instant.parse("2026-11-21T08:00:00Z"));

    @Parameter
    RecordEngine engine;
    @TempDir
    Path folder;
    private LabBench bench;
    private Laboratory lab;

    @BeforeEach
    void open() {
        bench = LabBench.in(engine, folder).describe("A7");
        lab = bench.laboratory();
        bench.post("A7", LabBench.spot("P1-1", "78.8"), LabBench.spot("P1-2", "77.9"));
    }

    @AfterEach
    void close() {
        bench.close();
    }

    @Test
    void a_corrected_spot_keeps_its_first_value() {
        StoredSpot corrected = correct("spt_0001", "misread", "77.8");

        assertThat(corrected).isEqualTo(lab.spot("spt_0001")).returns(2L, StoredSpot::revision)
            .returns(3L, StoredSpot::sampleRevision).returns(Optional.of("misread"), StoredSpot::reason)
            .returns(BEN, StoredSpot::recorded).returns(LabBench.spot("P1-1", "77.8"), StoredSpot::spot);
        assertThat(lab.spotRevisions("spt_0001")).extracting(StoredSpot::spot)
            .containsExactly(LabBench.spot("P1-1", "78.8"), LabBench.spot("P1-1", "77.8"));
        assertThat(lab.spotRevisions("spt_0001").get(0)).returns(LabBench.ANNA, StoredSpot::recorded)
            .returns(Optional.empty(), StoredSpot::reason);
    }

    @Test
    void a_correction_without_a_reason_or_without_a_change_records_nothing() {
        Map<String, Long> before = bench.rowCounts();

        LabBench.assertRefused(() -> correct("spt_0001", " \n", "77.8"), Problem.REASON_REQUIRED);
        LabBench.assertRefused(() -> correct("spt_0001", "x".repeat(2001), "77.8"), Problem.REASON_REQUIRED);
        assertThat(correct("spt_0001", "nothing to mend", "78.8").revision()).isEqualTo(1);

        assertThat(bench.rowCounts()).isEqualTo(before);
    }

    @Test
    void what_tells_a_spot_from_others_cannot_be_corrected() {
        for (Spot renamed : List.of(LabBench.spot("P1-9", "78.8"),
            LabBench.inSession(LabBench.spot("P1-1", "78.8"), Optional.of("other")),
            LabBench.acquired(LabBench.spot("P1-1", "78.8"), "2026-11-20T14:03:00+01:00"))) {
            LabBench.assertRefused(() -> lab.correct("spt_0001", "renamed", Expectation.NONE,
                (spot, sample) -> renamed, BEN), Problem.NAME_INVALID);
        }
    }

    @Test
    void a_correction_from_an_old_revision_is_refused() {
        correct("spt_0001", "misread", "77.8");

        LabBench.assertRefused(() -> lab.correct("spt_0001", "misread", Expectation.revision(1),
            (spot, sample) -> LabBench.spot("P1-1", "70"), BEN), Problem.REVISION_MISMATCH);
        assertThat(lab.correct("spt_0001", "misread", Expectation.revision(2),
            (spot, sample) -> LabBench.spot("P1-1", "70"), BEN).revision()).isEqualTo(3);
    }

    @Test
    void an_unknown_spot_is_not_found_whatever_its_id_looks_like() {
        for (String id : List.of("spt_0003", "spt_1", "imp_0001", "", "1; DROP TABLE spot")) {
            LabBench.assertRefused(() -> lab.spot(id), Problem.NOT_FOUND);
            LabBench.assertRefused(() -> lab.spotRevisions(id), Problem.NOT_FOUND);
            LabBench.assertRefused(() -> lab.withdraw(id, "gone", Expectation.NONE, BEN), Problem.NOT_FOUND);
        }
    }

    @Test
    void a_withdrawn_spot_leaves_lists_and_calculations_but_stays_readable() {
        StoredSpot withdrawn = lab.withdraw("spt_0001", "charging", Expectation.NONE, BEN);

        assertThat(withdrawn).isEqualTo(lab.spot("spt_0001")).returns(true, StoredSpot::withdrawn)
            .returns(LabBench.spot("P1-1", "78.8"), StoredSpot::spot);
        assertThat(labels(SpotFilter.ALL)).containsExactly("P1-2");
        assertThat(labels(SpotFilter.ALL.withWithdrawn())).containsExactly("P1-1", "P1-2");
        assertThat(specimens(lab.sample("A7"))).containsExactly(LabBench.spot("P1-2", "77.9"));
        assertThat(lab.sample("A7").spotCount()).isEqualTo(1);
    }

    @Test
    void withdrawing_again_changes_nothing_and_a_correction_does_not_bring_it_back() {
        lab.withdraw("spt_0001", "charging", Expectation.NONE, BEN);

        assertThat(lab.withdraw("spt_0001", "charging", Expectation.NONE, BEN).revision()).isEqualTo(2);
        assertThat(correct("spt_0001", "misread", "77.8")).returns(3L, StoredSpot::revision)
            .returns(true, StoredSpot::withdrawn);
        assertThat(lab.sample("A7").spotCount()).isEqualTo(1);
    }

    @Test
    void posting_the_first_values_of_a_corrected_spot_again_is_a_collision_not_a_way_back() {
        correct("spt_0001", "misread", "77.8");

        ProblemException refusal = LabBench.assertRefused(() -> bench.post("A7", LabBench.spot("P1-1", "78.8")),
            Problem.SPOT_ALREADY_RECORDED);

        assertThat(refusal.detail()).contains("\"77.8\" -> \"78.8\"");
        assertThat(bench.post("A7", LabBench.spot("P1-1", "77.8")).unchangedCount()).isEqualTo(1);
    }

    @Test
    void the_spots_can_be_read_as_they_were_at_every_revision_of_the_sample() {
        correct("spt_0001", "misread", "77.8");
        lab.withdraw("spt_0002", "charging", Expectation.NONE, BEN);
        bench.post("A7", LabBench.spot("P1-3", "76"));
        correct("spt_0001", "misread again", "77.7");

        assertThat(specimens(lab.sample("A7", 1))).isEmpty();
        assertThat(specimens(lab.sample("A7", 2)))
            .containsExactly(LabBench.spot("P1-1", "78.8"), LabBench.spot("P1-2", "77.9"));
        assertThat(specimens(lab.sample("A7", 3)))
            .containsExactly(LabBench.spot("P1-1", "77.8"), LabBench.spot("P1-2", "77.9"));
        assertThat(specimens(lab.sample("A7", 4))).containsExactly(LabBench.spot("P1-1", "77.8"));
        assertThat(specimens(lab.sample("A7", 5)))
            .containsExactly(LabBench.spot("P1-1", "77.8"), LabBench.spot("P1-3", "76"));
        assertThat(specimens(lab.sample("A7", 6)))
            .containsExactly(LabBench.spot("P1-1", "77.7"), LabBench.spot("P1-3", "76"));
        for (int revision = 1; revision <= 6; revision++) {
            StoredSample sample = lab.sample("A7", revision);
            assertThat(specimens(sample)).hasSize((int) sample.spotCount());
        }
    }

    private List<Spot> specimens(StoredSample sample) {
        return bench.store().read(access -> {
            List<Spot> spots = new ArrayList<>();
            SpotSource source = access.spotSource(sample);
            source.forEachSpecimen(spots::add);
            List<Spot> again = new ArrayList<>();
            source.forEachSpecimen(again::add);
            assertThat(again).isEqualTo(spots);
            return spots;
        });
    }

    private List<String> labels(SpotFilter filter) {
        return lab.spots("A7", filter, PageRequest.first(100)).items().stream()
            .map(spot -> spot.spot().label()).toList();
    }

    private StoredSpot correct(String id, String reason, String copper) {
        return lab.correct(id, reason, Expectation.NONE, (spot, sample) -> LabBench.spot(spot.label(), copper), BEN);
    }
}
