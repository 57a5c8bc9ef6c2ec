package surfeit.segregation.blocks;

import static org.assertj.core.api.Assertions.assertThat;
import static surfeit.segregation.blocks.SumsInBlocksTest.BLOCK;
import static surfeit.segregation.blocks.SumsInBlocksTest.INPUTS;
import static surfeit.segregation.blocks.SumsInBlocksTest.answer;
import static surfeit.segregation.blocks.SumsInBlocksTest.answerFromSpots;
import static surfeit.segregation.blocks.SumsInBlocksTest.record;
import static surfeit.segregation.blocks.SumsInBlocksTest.silver;
import static surfeit.segregation.blocks.SumsInBlocksTest.spot;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import surfeit.segregation.answer.GroupBy;
import surfeit.spot.Conditions;
import surfeit.spot.Spot;

/** Changes that concern every spot have all of them read, once for all ways of grouping. All spots invented. */
class SpotsReadAgainTest {
    private static List<Spot> tinFrom(int first, int count) {
        List<Spot> spots = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            spots.add(spot(i, "P" + i % 4, "rim", silver(i), i < first ? Optional.empty() : Optional.of(0.06)));
        }
        return spots;
    }

    @Test
    void a_first_negative_value_has_all_spots_read_once_behind_its_block() {
        BlockRecord record = record(3 * BLOCK, 4);
        record.handedOver();
        record.correct(20, spot(20, "P0", "core", 0.95, Optional.of(0.06)));

        record.changed(GroupBy.FEATURE, 20);
        assertThat(record.handedOver()).isEqualTo(BLOCK + 3 * BLOCK);
        assertThat(answer(record, GroupBy.FEATURE)).isEqualTo(answerFromSpots(record, GroupBy.FEATURE));
        assertThat(record.recount(GroupBy.FEATURE).comparison().difference()).isEmpty();
    }

    @Test
    void reference_spots_have_all_spots_read_once_where_they_correct_otherwise_and_none_where_they_do_not() {
        BlockRecord record = new BlockRecord(INPUTS, BLOCK);
        record.add(tinFrom(20, 3 * BLOCK));
        record.goOn(GroupBy.FEATURE);
        Spot piece = new RandomSpots(5).onReference();
        Spot elsewhere = new Spot("R1", Optional.empty(), Optional.empty(), Optional.of("s9"), Optional.empty(),
            Conditions.UNKNOWN, piece.reference(), piece.basis(), piece.values());
        Spot here = new Spot("R2", Optional.empty(), Optional.empty(), Optional.of("s1"), Optional.empty(),
            Conditions.UNKNOWN, piece.reference(), piece.basis(), piece.values());
        record.handedOver();

        record.add(List.of(elsewhere));
        record.goOn(GroupBy.FEATURE);
        assertThat(record.handedOver()).as("of another session").isEqualTo(1);
        record.add(List.of(here));
        record.goOn(GroupBy.FEATURE);
        assertThat(record.handedOver()).as("tin is known to come later").isEqualTo(3 * BLOCK + 2);
        assertThat(answer(record, GroupBy.FEATURE)).isEqualTo(answerFromSpots(record, GroupBy.FEATURE));
        record.handedOver();
        record.withdraw(3 * BLOCK);
        record.changed(GroupBy.FEATURE, 3 * BLOCK);
        assertThat(record.handedOver()).as("its block alone").isEqualTo(2);
        record.withdraw(3 * BLOCK + 1);
        record.changed(GroupBy.FEATURE, 3 * BLOCK + 1);
        assertThat(record.handedOver()).isEqualTo(3 * BLOCK + 2);
        assertThat(answer(record, GroupBy.FEATURE)).isEqualTo(answerFromSpots(record, GroupBy.FEATURE));
    }

    @Test
    void spots_are_read_once_for_all_ways_of_grouping() {
        BlockRecord record = new BlockRecord(INPUTS, BLOCK);
        record.add(tinFrom(50, 4 * BLOCK));
        Map<GroupBy, Integer> ways = Map.of(GroupBy.FEATURE, 99, GroupBy.PARTICLE, 99, GroupBy.SAMPLE, 99);

        assertThat(GrowingSums.of(INPUTS, record, ways).finish(record)).hasSize(3);
        assertThat(record.handedOver()).as("and once more, for tin shows late").isEqualTo(2 * 4 * BLOCK);
    }
}
