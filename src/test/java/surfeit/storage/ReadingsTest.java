package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.composition.Alloy;
import surfeit.composition.AlloyCatalogue;
import surfeit.lab.Expectation;
import surfeit.lab.Laboratory;
import surfeit.lab.PublicId;
import surfeit.lab.StoredReading;
import surfeit.segregation.Interpreter;
import surfeit.segregation.screening.SpotReading;

/** What each spot shows by itself, page by page. */
class ReadingsTest {
    private static final int SPOTS = 5000;

    @TempDir
    Path folder;
    private LabBench bench;
    private CountedReads reads;
    private Laboratory lab;

    @BeforeEach
    void open() {
        bench = LabBench.in(folder);
        reads = new CountedReads(bench.store());
        lab = new Laboratory(reads.counted(), AlloyCatalogue.packaged(), new Interpreter(), 0.003);
        bench.describe("A7");
        bench.post("A7", LabBench.spots("P1-", SPOTS));
    }

    @AfterEach
    void close() {
        bench.close();
    }

    private List<StoredReading> page(long after, int size) {
        List<StoredReading> found = new ArrayList<>();
        lab.readings().forEach("A7", after, reading -> {
            found.add(reading);
            return found.size() < size;
        });
        return found;
    }

    private static long number(StoredReading reading) {
        return PublicId.number(PublicId.SPOT, reading.stored().id()).orElseThrow();
    }

    @Test
    void pages_hold_what_all_of_it_holds_and_a_further_page_reads_only_its_own_spots() {
        List<SpotReading> all = new ArrayList<>();
        lab.readings().forEach("A7", reading -> all.add(reading.reading()));
        assertThat(all).hasSize(SPOTS);
        reads.take();

        List<SpotReading> paged = new ArrayList<>();
        for (long after = 0; paged.size() < SPOTS;) {
            List<StoredReading> page = page(after, 100);
            page.forEach(reading -> paged.add(reading.reading()));
            after = number(page.get(page.size() - 1));
            assertThat(reads.take()).isLessThan(300);
        }
        assertThat(paged).isEqualTo(all);
    }

    @Test
    void what_changed_in_between_is_seen_at_the_next_page() {
        List<StoredReading> first = page(0, 10);
        lab.withdraw(first.get(0).stored().id(), "wrong stage position", Expectation.NONE, LabBench.ANNA);
        lab.correct(first.get(1).stored().id(), "misread", Expectation.NONE,
            (present, sample) -> LabBench.spot(present.label(), "12.5"), LabBench.ANNA);

        List<StoredReading> again = page(0, 10);
        assertThat(again.get(0).stored().id()).isEqualTo(first.get(1).stored().id());
        assertThat(again.get(0).reading().elements().get(1).atomicFraction()).isEqualTo(0.125);
        reads.take();
        assertThat(page(number(again.get(9)), 10)).hasSize(10);
        assertThat(reads.take()).isLessThan(100);
    }

    @Test
    void the_nominal_of_an_alloy_that_was_restated_counts_at_once() {
        double before = page(0, 1).get(0).reading().elements().get(0).nominalLow();
        Alloy packaged = lab.alloy(LabBench.AG_CU).alloy();
        lab.defineAlloy(new Alloy(packaged.id(), packaged.name(), LabBench.nominal("Ag", 0.5, "Cu", 0.5),
            packaged.temperature(), "invented", packaged.sourceRead(), packaged.phases()), Expectation.EXISTING,
            LabBench.ANNA);

        assertThat(before).isNotEqualTo(0.5);
        assertThat(page(0, 1).get(0).reading().elements().get(0).nominalLow()).isEqualTo(0.5);
        assertThat(page(SPOTS, 10)).isEmpty();
    }
}
