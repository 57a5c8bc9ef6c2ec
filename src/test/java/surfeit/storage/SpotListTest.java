package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import surfeit.lab.Expectation;
import surfeit.lab.Laboratory;
import surfeit.lab.Page;
import surfeit.lab.PageRequest;
import surfeit.lab.Problem;
import surfeit.lab.SpotFilter;
import surfeit.lab.StoredSpot;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.Spot;
import surfeit.statistics.NumbersAside;

@OnBothEngines
class SpotListTest {
    @Parameter
    RecordEngine engine;
    @TempDir
    Path folder;
    private LabBench bench;
    private Laboratory lab;

    @BeforeEach
    void open() {
        bench = LabBench.in(engine, folder).describe("A7").describe("B1");
        lab = bench.laboratory();
    }

    @AfterEach
    void close() {
        bench.close();
    }

    @Test
    void pages_follow_the_order_of_record_and_do_not_shift_when_spots_arrive_between_them() {
        bench.post("A7", LabBench.spots("P", 5));
        Page<StoredSpot> first = lab.spots("A7", SpotFilter.ALL, PageRequest.first(3));
        bench.post("B1", LabBench.spots("P", 2));
        bench.post("A7", LabBench.spot("A-first-by-name", "70"));
        Page<StoredSpot> second = lab.spots("A7", SpotFilter.ALL, new PageRequest(3, first.next()));

        assertThat(labels(first)).containsExactly("P0", "P1", "P2");
        assertThat(labels(second)).containsExactly("P3", "P4", "A-first-by-name");
        assertThat(second.next()).isEmpty();
    }

    @Test
    void a_name_recorded_in_another_normal_form_is_found_by_either() {
        Spot spot = LabBench.spot("P1", "70");
        for (String name : new String[] {"Fla\u0308che", "Fl\u00E4che"}) {
            bench.post("A7", new Spot(name, Optional.of(name), Optional.of(name), Optional.of(name), spot.acquiredTime(),
                spot.conditions(), spot.reference(), spot.basis(), spot.values()));
        }
        for (String asked : new String[] {"Fla\u0308che", "Fl\u00E4che"}) {
            Optional<String> name = Optional.of(asked);
            for (SpotFilter filter : List.of(SpotFilter.ALL.withFeature(asked),
                new SpotFilter(Optional.empty(), name, Optional.empty(), Optional.empty(), Optional.empty(), false),
                new SpotFilter(Optional.empty(), Optional.empty(), name, Optional.empty(), Optional.empty(), false))) {
                assertThat(labels(lab.spots("A7", filter, PageRequest.first(5)))).hasSize(2);
                assertThat(lab.spots("A7", SpotFilter.ALL, PageRequest.first(5)).items()).allMatch(filter::matches);
            }
        }
    }

    @Test
    void a_large_sample_is_read_in_the_order_of_record_and_given_up_without_a_trace() {
        Spot[] spots = LabBench.spots("P", SqlSpotSource.ALONGSIDE_FROM + 300);
        bench.post("A7", spots);
        List<Spot> read = bench.store().read(access -> {
            SpotSource source = access.spotSource(lab.sample("A7"));
            List<Spot> given = new ArrayList<>();
            assertThatThrownBy(() -> source.forEachSpecimen(spot -> {
                given.add(spot);
                if (given.size() == 700) {
                    throw new IllegalStateException("enough");
                }
            })).hasMessage("enough");
            List<Spot> all = new ArrayList<>();
            source.forEachSpecimen(all::add);
            return all;
        });

        assertThat(read).containsExactly(spots);
    }

    @Test
    void filters_let_through_what_they_name() {
        Spot spot = LabBench.spot("dark", "70");
        Spot bare = LabBench.withFeature(LabBench.spot("bare", "71"), Optional.empty());
        Spot named = LabBench.withFeature(LabBench.spot("named", "71"), Optional.of("unlabelled"));
        Spot timed = LabBench.acquired(LabBench.spot("timed", "72"), "2026-11-20T14:03:00+01:00");
        bench.post("A7", spot, bare, named, timed, LabBench.inSession(spot, Optional.of("b")));

        assertThat(labels(SpotFilter.ALL.withFeature("dark patch"))).containsExactly("dark", "timed", "dark");
        assertThat(labels(SpotFilter.ALL.withFeature("unlabelled"))).containsExactly("bare", "named");
        assertThat(labels(measured(Optional.of("P1"), Optional.of("b")))).containsExactly("dark");
        assertThat(labels(measured(Optional.of("P2"), Optional.empty()))).isEmpty();
        Instant acquired = Instant.parse("2026-11-20T13:03:00Z");
        assertThat(labels(acquired(Optional.of(acquired), Optional.empty()))).containsExactly("timed");
        assertThat(labels(acquired(Optional.empty(), Optional.of(acquired)))).isEmpty();
        assertThat(labels(acquired(Optional.of(Instant.MIN), Optional.of(Instant.MAX)))).containsExactly("timed");
    }

    private static SpotFilter measured(Optional<String> particle, Optional<String> session) {
        return new SpotFilter(Optional.empty(), particle, session, Optional.empty(), Optional.empty(), false);
    }

    private static SpotFilter acquired(Optional<Instant> from, Optional<Instant> to) {
        return new SpotFilter(Optional.empty(), Optional.empty(), Optional.empty(), from, to, false);
    }

    @Test
    void all_spots_are_handed_over_as_they_were_when_the_first_was_read() {
        bench.post("A7", LabBench.spots("P", 2500));
        List<String> ids = new ArrayList<>();

        lab.forEachSpot("A7", SpotFilter.ALL, spot -> {
            if (ids.isEmpty()) {
                bench.post("A7", LabBench.spot("late", "70"));
                lab.withdraw("spt_0200", "late", Expectation.NONE, LabBench.ANNA);
            }
            ids.add(spot.id());
        });

        assertThat(ids).hasSize(2500).doesNotHaveDuplicates().contains("spt_0200");
    }

    @Test
    void reference_spots_are_handed_over_apart_from_specimens() {
        Spot reference = LabBench.withReference(LabBench.spot("ref", "40"), LabBench.nominal("Ag", 0.6, "Cu", 0.4));
        bench.post("A7", LabBench.spot("P1-1", "78.8"), reference);

        bench.store().read(access -> {
            List<Spot> specimens = new ArrayList<>();
            var source = access.spotSource(access.sample("A7").orElseThrow());
            source.forEachSpecimen(specimens::add);
            assertThat(specimens).containsExactly(LabBench.spot("P1-1", "78.8"));
            assertThat(source.references()).containsExactly(reference);
            return specimens;
        });
    }

    @Test
    void a_key_of_another_list_is_refused() {
        LabBench.assertRefused(() -> lab.spots("A7", SpotFilter.ALL, new PageRequest(3, Optional.of("imp_0001"))),
            Problem.CURSOR_MISMATCH);
        LabBench.assertRefused(() -> lab.sampleRevisions("A7", new PageRequest(3, Optional.of("x"))),
            Problem.CURSOR_MISMATCH);
        LabBench.assertRefused(() -> lab.spots("C1", SpotFilter.ALL, PageRequest.first(3)), Problem.NOT_FOUND);
    }

    @Test
    void numbers_about_the_spots_of_a_sample_that_are_too_many_for_memory_go_to_the_disk() {
        try (NumbersAside aside = lab.spotSource(lab.sample("A7")).aside()) {
            assertThat(aside).isInstanceOf(NumbersFile.class);
        }
    }

    private List<String> labels(SpotFilter filter) {
        return labels(lab.spots("A7", filter, PageRequest.first(100)));
    }

    private static List<String> labels(Page<StoredSpot> page) {
        return page.items().stream().map(stored -> stored.spot().label()).toList();
    }
}
