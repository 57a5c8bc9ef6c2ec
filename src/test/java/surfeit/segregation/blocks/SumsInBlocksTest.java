package surfeit.segregation.blocks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.statistics.Statistics;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.Basis;
import surfeit.composition.Phase;
import surfeit.element.Element;
import surfeit.segregation.Answers;
import surfeit.segregation.Interpreter;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Conditions;
import surfeit.spot.ReportedValue;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/** Sums kept in blocks of spots, of which one is read again where a spot changes. All spots invented. */
class SumsInBlocksTest {
    private static final Sample SAMPLE = Answers.sample(RandomSpots.NOMINAL, AccuracyClass.STANDARDLESS, "");
    private static final List<Phase> PHASES = AlloyCatalogue.packaged().require("ag-cu-eutectic").phases();
    static final GrowingSums.Inputs INPUTS =
        new GrowingSums.Inputs(SAMPLE, RandomSpots.NOMINAL, PHASES, Answers.LIMIT);
    static final int BLOCK = 16;
    /** Judgement: what another order of adding moves a number by is some 1e-14 of it. */
    private static final double ROUNDING = 1e-9;

    private static Interpretation interpret(SpotSource source, GroupBy by) {
        return new Interpreter().interpret(SAMPLE, RandomSpots.NOMINAL, PHASES, source, by, Answers.LIMIT);
    }

    /** The answer, or why there is none: that too is the same with and without kept sums. */
    static Object answer(SpotSource source, GroupBy by) {
        try {
            Interpretation answer = interpret(source, by);
            return List.of(answer.groups(), answer.contrasts(), answer.caveats(), answer.depths(), answer.spotCount(),
                answer.particleCount(), answer.sessionCount());
        } catch (IllegalArgumentException e) {
            return e.getMessage();
        }
    }

    /** The same spots in the same places, without any sums. */
    static Object answerFromSpots(BlockRecord record, GroupBy by) {
        return answer(new WithoutSums(record), by);
    }

    private record WithoutSums(BlockRecord record) implements SpotSource {
        @Override
        public List<Spot> references() {
            return record.references();
        }

        @Override
        public void forEachPlace(SpotPlaces places) {
            record.forEachPlace(places);
        }

        @Override
        public int placesInBlock() {
            return record.placesInBlock();
        }
    }

    /** One random history of a record; sums are kept of it in one way of grouping. */
    private static final class History {
        private final Random random;
        private final RandomSpots invented;
        private final GroupBy by;
        private final BlockRecord record = new BlockRecord(INPUTS, BLOCK);
        private int renewed;

        History(long seed, GroupBy by) {
            this.random = new Random(seed);
            this.invented = new RandomSpots(seed);
            this.by = by;
        }

        void step() {
            int kind = random.nextInt(10);
            if (kind < 4 || record.size() == 0) {
                List<Spot> more = invented.next(1 + random.nextInt(70));
                int way = random.nextInt(3);
                if (way == 0) {
                    record.addAlong(by, more);
                } else {
                    record.add(more);
                }
                if (way == 1) {
                    record.goOn(by);
                }
            } else if (kind == 4 && random.nextInt(4) == 0) {
                record.add(List.of(invented.onReference(), invented.onReference(), invented.onReference()));
                record.goOn(by);
            } else {
                change(random.nextInt(record.size()));
            }
        }

        private void change(int index) {
            if (random.nextBoolean() && !record.isWithdrawn(index)) {
                record.withdraw(index);
            } else {
                record.correct(index, invented.again(record.spot(index)));
            }
            if (record.summed(by) > 0) {
                long block = BLOCK + record.size() - record.summed(by);
                record.handedOver();
                record.changed(by, index);
                long read = record.handedOver();
                renewed += read <= block ? 1 : 0;
                if (!record.spot(index).isReference()) {
                    assertThat(read).as("all spots at most once").isLessThanOrEqualTo(block + record.size());
                }
                assertThat(record.summed(by)).isEqualTo(record.size());
            }
        }

        void check() {
            assertThat(answer(record, by)).isEqualTo(answerFromSpots(record, by));
            if (record.summed(by) == record.size() && record.size() > 0) {
                assertThat(record.recount(by).comparison().difference()).isEmpty();
            }
        }
    }

    @Property(tries = 60)
    void after_any_history_the_answer_is_that_of_the_spots_to_the_last_bit(@ForAll long seed, @ForAll GroupBy by) {
        History history = new History(seed, by);
        for (int step = 0; step < 25; step++) {
            history.step();
            history.check();
        }
        Statistics.label("histories with blocks renewed").collect(history.renewed > 0)
            .coverage(coverage -> coverage.check(true).percentage(share -> share > 50));
    }

    @Property(tries = 40)
    void after_any_history_the_answer_is_that_of_a_fresh_record_with_the_same_spots(@ForAll long seed) {
        History history = new History(seed, GroupBy.FEATURE);
        for (int step = 0; step < 25; step++) {
            history.step();
        }
        BlockRecord fresh = history.record.fresh();
        assertThat(answer(fresh, GroupBy.FEATURE)).hasSameClassAs(answer(history.record, GroupBy.FEATURE));
        if (answer(fresh, GroupBy.FEATURE) instanceof String why) {
            assertThat(answer(history.record, GroupBy.FEATURE)).isEqualTo(why);
            return;
        }
        List<GroupFinding> groups = interpret(history.record, GroupBy.FEATURE).groups();
        List<GroupFinding> those = interpret(fresh, GroupBy.FEATURE).groups();
        assertThat(groups).extracting(GroupFinding::name)
            .containsExactlyElementsOf(those.stream().map(GroupFinding::name).toList());
        for (int i = 0; i < groups.size(); i++) {
            assertThat(groups.get(i).spotCount()).isEqualTo(those.get(i).spotCount());
            assertThat(groups.get(i).particles()).as("in the same order").isEqualTo(those.get(i).particles());
            for (int e = 0; e < groups.get(i).elements().size(); e++) {
                ElementFinding one = groups.get(i).elements().get(e);
                ElementFinding other = those.get(i).elements().get(e);
                assertThat(one.element()).isEqualTo(other.element());
                assertThat(one.outcome().verdict()).isEqualTo(other.outcome().verdict());
                assertThat(one.outcome().mean()).isCloseTo(other.outcome().mean(), within(ROUNDING));
                assertThat(one.outcome().low()).isCloseTo(other.outcome().low(), within(ROUNDING));
                assertThat(one.outcome().uncertainty()).isCloseTo(other.outcome().uncertainty(), within(ROUNDING));
            }
        }
    }

    static Spot spot(int number, String particle, String feature, double silver, Optional<Double> tin) {
        Map<Element, ReportedValue> values = new LinkedHashMap<>();
        values.put(Element.of("Ag"), ReportedValue.Measured.of(silver, "58.0"));
        values.put(Element.of("Cu"), ReportedValue.Measured.of(1 - silver - tin.orElse(0.0), "36.0"));
        tin.ifPresent(value -> values.put(Element.of("Sn"), ReportedValue.Measured.of(value, "6.0")));
        return new Spot("S" + number, Optional.of(particle), Optional.of(feature), Optional.of("s1"), Optional.empty(),
            Conditions.UNKNOWN, Optional.empty(), Basis.ATOMIC, values);
    }

    /** Silver of a spot: some even spread about the nominal. */
    static double silver(int number) {
        return 0.58 + 0.001 * (number * 7 % 11 - 5);
    }

    static BlockRecord record(int count, int particles) {
        BlockRecord record = new BlockRecord(INPUTS, BLOCK);
        List<Spot> spots = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            spots.add(spot(i, "P" + i % particles, i % 3 == 0 ? "rim" : "core", silver(i), Optional.of(0.06)));
        }
        record.add(spots);
        for (GroupBy by : GroupBy.values()) {
            record.goOn(by);
        }
        return record;
    }

    @Example
    void groups_and_particles_stand_in_the_order_of_first_appearance_whichever_block_that_is_in() {
        BlockRecord record = new BlockRecord(INPUTS, BLOCK);
        List<Spot> spots = new ArrayList<>();
        Set<String> particles = new LinkedHashSet<>();
        Set<String> features = new LinkedHashSet<>();
        for (int i = 0; i < 5 * BLOCK; i++) {
            String particle = "P" + (i < 20 ? 9 - i % 3 : i % 10);
            String feature = i < 30 ? "rim" : i % 2 == 0 ? "core" : i < 60 ? "rim" : "axis";
            particles.add(particle);
            features.add(feature);
            spots.add(spot(i, particle, feature, silver(i), Optional.of(0.06)));
        }
        record.add(spots);
        record.goOn(GroupBy.FEATURE);
        record.goOn(GroupBy.PARTICLE);
        record.withdraw(3);
        record.changed(GroupBy.FEATURE, 3);
        record.changed(GroupBy.PARTICLE, 3);

        assertThat(interpret(record, GroupBy.FEATURE).groups()).extracting(GroupFinding::name)
            .containsExactlyElementsOf(features);
        assertThat(interpret(record, GroupBy.PARTICLE).groups()).extracting(GroupFinding::name)
            .containsExactlyElementsOf(particles);
        assertThat(answer(record, GroupBy.FEATURE)).isEqualTo(answerFromSpots(record, GroupBy.FEATURE));
    }

    @Example
    void a_changed_spot_has_its_own_block_read_again_and_no_other() {
        for (int index : new int[] {0, BLOCK - 1, BLOCK, 4 * BLOCK + 3, 5 * BLOCK, 5 * BLOCK + 6}) {
            BlockRecord record = record(5 * BLOCK + 7, 4);
            int inBlock = index < 5 * BLOCK ? BLOCK : 7;
            record.handedOver();

            record.withdraw(index);
            record.changed(GroupBy.FEATURE, index);
            assertThat(record.handedOver()).isEqualTo(inBlock);
            assertThat(answer(record, GroupBy.FEATURE)).isEqualTo(answerFromSpots(record, GroupBy.FEATURE));
            assertThat(interpret(record, GroupBy.SAMPLE).spotCount()).as("of another way of grouping, not told").isEqualTo(87);
            assertThat(interpret(record, GroupBy.FEATURE).spotCount()).isEqualTo(86);
            record.handedOver();
            record.correct(index, spot(index, "P0", "rim", 0.6, Optional.of(0.06)));
            record.changed(GroupBy.FEATURE, index);
            assertThat(record.handedOver()).as("taken up again, in another place").isEqualTo(inBlock);
            assertThat(answer(record, GroupBy.FEATURE)).isEqualTo(answerFromSpots(record, GroupBy.FEATURE));
            assertThat(record.recount(GroupBy.FEATURE).comparison().difference()).isEmpty();
        }
    }

    @Example
    void later_spots_are_added_to_the_open_block_and_fill_it() {
        BlockRecord record = record(3 * BLOCK - 2, 4);
        record.handedOver();
        record.add(List.of(spot(101, "P1", "rim", 0.57, Optional.of(0.06)), spot(102, "P9", "core", 0.59, Optional.of(0.06)),
            spot(103, "P1", "axis", 0.57, Optional.of(0.06))));

        assertThat(answer(record, GroupBy.FEATURE)).isEqualTo(answerFromSpots(record, GroupBy.FEATURE));
        record.handedOver();
        record.goOn(GroupBy.FEATURE);
        assertThat(record.handedOver()).isEqualTo(3);
        assertThat(record.blocksKept(GroupBy.FEATURE)).isEqualTo(3);
        assertThat(answer(record, GroupBy.FEATURE)).isEqualTo(answerFromSpots(record, GroupBy.FEATURE));
    }

    @Example
    void an_element_first_seen_in_a_later_block_has_all_spots_read_again_once() {
        BlockRecord record = new BlockRecord(INPUTS, BLOCK);
        List<Spot> spots = new ArrayList<>();
        for (int i = 0; i < 4 * BLOCK; i++) {
            spots.add(spot(i, "P" + i % 4, "rim", silver(i), i < 50 ? Optional.empty() : Optional.of(0.06)));
        }
        record.add(spots);
        record.goOn(GroupBy.FEATURE);
        assertThat(record.handedOver()).isEqualTo(2 * 4 * BLOCK);
        assertThat(answer(record, GroupBy.FEATURE)).isEqualTo(answerFromSpots(record, GroupBy.FEATURE));
        assertThat(interpret(record, GroupBy.FEATURE).groups().get(0).elements()).hasSize(3);
        record.handedOver();

        record.withdraw(60);
        record.changed(GroupBy.FEATURE, 60);
        assertThat(record.handedOver()).isEqualTo(BLOCK);
        for (int i = 50; i < 4 * BLOCK; i++) {
            record.withdraw(i);
        }
        record.changed(GroupBy.FEATURE, 63);
        assertThat(record.handedOver()).as("nobody lists tin any more").isEqualTo(BLOCK + 4 * BLOCK);
        assertThat(answer(record, GroupBy.FEATURE)).isEqualTo(answerFromSpots(record, GroupBy.FEATURE));
        assertThat(interpret(record, GroupBy.FEATURE).groups().get(0).elements()).hasSize(2);
    }

    @Example
    void particles_that_come_back_in_too_many_blocks_have_the_sums_kept_together_only() {
        Map<Boolean, Integer> blocks = new HashMap<>();
        for (boolean comesBack : new boolean[] {true, false}) {
            BlockRecord record = new BlockRecord(INPUTS, BLOCK, 12);
            List<Spot> spots = new ArrayList<>();
            for (int i = 0; i < 8 * BLOCK; i++) {
                spots.add(spot(i, "P" + (comesBack ? i % 8 : i / 16), "rim", silver(i), Optional.of(0.06)));
            }
            record.add(spots);
            record.goOn(GroupBy.FEATURE);
            blocks.put(comesBack, record.blocksKept(GroupBy.FEATURE));
            assertThat(answer(record, GroupBy.FEATURE)).isEqualTo(answerFromSpots(record, GroupBy.FEATURE));
            assertThat(record.recount(GroupBy.FEATURE).comparison().difference()).isEmpty();
            record.withdraw(5);
            record.handedOver();
            record.changed(GroupBy.FEATURE, 5);
            assertThat(record.handedOver()).isEqualTo(comesBack ? 8 * BLOCK : BLOCK);
            assertThat(answer(record, GroupBy.FEATURE)).isEqualTo(answerFromSpots(record, GroupBy.FEATURE));
        }
        assertThat(blocks).isEqualTo(Map.of(true, 0, false, 8));
    }

    @Example
    void a_recount_names_the_block_that_is_not_what_its_spots_give() {
        BlockRecord record = record(4 * BLOCK, 4);
        long compared = record.recount(GroupBy.SAMPLE).comparison().compared();
        record.spoil(GroupBy.SAMPLE, 3, record.block(GroupBy.SAMPLE, 2));

        GrowingSums.Recounted found = record.recount(GroupBy.SAMPLE);

        assertThat(found.spotCount()).isEqualTo(64);
        assertThat(found.comparison().difference().orElseThrow()).startsWith("in block 3, ");
        assertThat(found.comparison().compared()).isLessThan(compared);
        record.spoil(GroupBy.SAMPLE, 3, new byte[0]);
        assertThat(record.recount(GroupBy.SAMPLE).comparison().difference())
            .contains("in block 3, what is kept cannot be read: an early end");
    }

    @Example
    void sums_in_blocks_of_another_size_are_left_alone() {
        BlockRecord record = record(4 * BLOCK, 4);
        Map<GroupBy, KeptSums> kept = new EnumMap<>(GroupBy.class);
        kept.put(GroupBy.FEATURE, record.kept(GroupBy.FEATURE).orElseThrow());
        SpotSource others = new SpotSource() {
            @Override
            public List<Spot> references() {
                return List.of();
            }

            @Override
            public void forEachPlace(SpotPlaces places) {
                record.forEachPlace(places);
            }

            @Override
            public Optional<KeptSums> kept(GroupBy by) {
                return Optional.ofNullable(kept.get(by));
            }
        };

        assertThat(GrowingSums.of(INPUTS, others, Map.of(GroupBy.FEATURE, 1000)).finish(others).get(GroupBy.FEATURE)
            .wentOn()).isFalse();
    }
}
