package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import surfeit.lab.Expectation;
import surfeit.lab.Laboratory;
import surfeit.lab.PublicId;
import surfeit.lab.Recounted;
import surfeit.lab.SumsMark;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.blocks.RandomSpots;
import surfeit.spot.Spot;

/** Sums of samples of several blocks of spots (16 384 each), which changes of single spots keep up. All spots invented. */
@OnBothEngines
class LargeSampleSumsTest {
    private static final int BLOCK = 16_384;
    private static final int SPOTS = 2 * BLOCK + 5_000;

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
    }

    @AfterEach
    void close() {
        bench.close();
    }

    private Map<GroupBy, SumsMark> marks() {
        return bench.marks("A7");
    }

    private List<Recounted.State> recount() {
        return bench.recount("A7");
    }

    private List<Object> answer(GroupBy by) {
        return bench.answer("A7", by);
    }

    private void forget(GroupBy... ways) {
        bench.store().write(access -> {
            for (GroupBy by : ways) {
                access.forgetSums(lab.sample("A7"), by);
            }
            return ways;
        });
    }

    private void withdraw(long spot) {
        lab.withdraw(PublicId.of(PublicId.SPOT, spot), "charging", Expectation.NONE, LabBench.ANNA);
    }

    private void correct(long spot, String copper) {
        lab.correct(PublicId.of(PublicId.SPOT, spot), "misread", Expectation.NONE,
            (present, sample) -> LabBench.spot(present.label(), copper), LabBench.ANNA);
    }

    /** Spots outside some numbers are not found by whoever reads spots; done again, they are. */
    private void hideAllBut(long first, long last, int sign) throws SQLException {
        engine.change(folder, "UPDATE spot_revision SET from_revision = from_revision + " + sign * 1_000_000
            + " WHERE spot < " + first + " OR spot > " + last);
    }

    private void sumsAreKeptBy(Runnable change, long first, long last) throws SQLException {
        hideAllBut(first, last, 1);
        change.run();
        hideAllBut(first, last, -1);
        assertThat(marks().values()).hasSize(3).allSatisfy(mark -> assertThat(mark)
            .returns(lab.sample("A7").revision(), SumsMark::revision).returns(true, SumsMark::hasSums)
            .returns(lab.sample("A7").spotCount(), SumsMark::spotCount));
        assertThat(recount()).as("made with the spots %d to %d alone in reach", first, last).hasSize(3)
            .containsOnly(Recounted.State.EQUAL);
    }

    @Test
    void a_withdrawal_and_a_correction_keep_the_sums_and_read_no_spot_of_another_block() throws SQLException {
        bench.post("A7", LabBench.spots("P", SPOTS));
        assertThat(marks().keySet()).as("made while the upload was read").containsExactly(GroupBy.values());
        assertThat(recount()).containsOnly(Recounted.State.EQUAL);

        sumsAreKeptBy(() -> withdraw(BLOCK + 1), BLOCK + 1, 2 * BLOCK);
        sumsAreKeptBy(() -> correct(2 * BLOCK, "71.5"), BLOCK + 1, 2 * BLOCK);
        sumsAreKeptBy(() -> correct(BLOCK, "71.5"), 1, BLOCK);
        sumsAreKeptBy(() -> withdraw(2 * BLOCK + 1), 2 * BLOCK + 1, SPOTS);
        sumsAreKeptBy(() -> withdraw(1), 1, BLOCK);

        List<Object> answer = answer(GroupBy.FEATURE);
        assertThat(answer.get(4)).isEqualTo(SPOTS - 3L);
        forget(GroupBy.values());
        assertThat(answer(GroupBy.FEATURE)).as("from all spots, to the last bit").isEqualTo(answer);
    }

    @Test
    void after_imports_corrections_and_withdrawals_the_answer_is_that_of_all_spots_to_the_last_bit() {
        Random random = new Random(11);
        RandomSpots invented = new RandomSpots(11);
        bench.post("A7", invented.next(SPOTS).toArray(Spot[]::new));
        int inTransaction = 0;
        for (int step = 0; step < 12; step++) {
            String id = PublicId.of(PublicId.SPOT, 1 + random.nextInt(SPOTS));
            if (step % 3 == 0) {
                lab.withdraw(id, "charging", Expectation.NONE, LabBench.ANNA);
            } else {
                lab.correct(id, "misread", Expectation.NONE, (present, sample) -> invented.again(present), LabBench.ANNA);
            }
            if (step % 4 == 3) {
                bench.post("A7", invented.next(step == 7 ? BLOCK : 40).toArray(Spot[]::new));
            }
            inTransaction += marks().size() == GroupBy.values().length ? 1 : 0;
        }
        assertThat(inTransaction).as("changes that left all sums in place").isEqualTo(12);
        assertThat(recount()).hasSize(3).containsOnly(Recounted.State.EQUAL);
        for (GroupBy by : GroupBy.values()) {
            List<Object> kept = answer(by);
            forget(by);
            assertThat(answer(by)).isEqualTo(kept);
        }
    }
}
