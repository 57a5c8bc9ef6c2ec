package surfeit.segregation.blocks;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalText;
import surfeit.composition.Phase;
import surfeit.segregation.Answers;
import surfeit.segregation.Interpreter;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.Interpretation;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Judgement;
import surfeit.spot.Sample;
import surfeit.spot.Spot;
import surfeit.spot.SpotCentre;

/** Sums kept of the first spots and gone on from: they give what all spots give. All spots invented. */
class SampleSumsTest {
    private static final Sample SAMPLE = Answers.sample(RandomSpots.NOMINAL, AccuracyClass.STANDARDLESS, "");
    private static final List<Phase> PHASES = AlloyCatalogue.packaged().require("ag-cu-eutectic").phases();

    /** The spots of a list, with sums kept of the first of them. */
    private record Kept(List<Spot> spots, int summed, byte[] sums) implements SpotSource {
        @Override
        public List<Spot> references() {
            return SpotSource.of(spots).references();
        }

        @Override
        public void forEachPlace(SpotPlaces places) {
            SpotSource.of(spots).forEachPlace(places);
        }

        @Override
        public Optional<KeptSums> kept(GroupBy by) {
            return Optional.of(SampleSumsTest.kept(spots, summed, sums));
        }
    }

    /** Sums of fewer spots than a block has. */
    private static KeptSums kept(List<Spot> spots, int summed, byte[] sums) {
        return new KeptSums() {
            @Override
            public byte[] bytes() {
                return sums;
            }

            @Override
            public Optional<byte[]> fullBlocks() {
                return Optional.empty();
            }

            @Override
            public byte[] notes() {
                return new byte[0];
            }

            @Override
            public long mark() {
                return summed;
            }

            @Override
            public void forEachLater(SpotPlaces places) {
                SpotSource.of(spots.subList(summed, spots.size())).forEachPlace((place, spot, counts) ->
                    places.next(summed + place, spot, counts));
            }

            @Override
            public void forEachAfterFull(SpotPlaces places) {
                SpotSource.of(spots).forEachPlace(places);
            }

            @Override
            public List<Block> blocks() {
                return List.of();
            }
        };
    }

    private static SampleSums sums(Sample sample, Nominal nominal, SpotSource source, GroupBy by) {
        return all(sample, nominal, PHASES, source, Map.of(by, 1000), Answers.LIMIT).get(by);
    }

    private static Map<GroupBy, SampleSums> all(Sample sample, Nominal nominal, List<Phase> phases, SpotSource source,
                                                Map<GroupBy, Integer> mostParticles, double limit) {
        return GrowingSums.of(new GrowingSums.Inputs(sample, nominal, phases, limit), source, mostParticles)
            .finish(source);
    }

    private static SampleSums sums(SpotSource source, GroupBy by) {
        return sums(SAMPLE, RandomSpots.NOMINAL, source, by);
    }

    /** The answer, or why there is none: that too is the same with and without kept sums. */
    private static Object answer(SpotSource source, GroupBy by) {
        try {
            Interpretation answer =
                new Interpreter().interpret(SAMPLE, RandomSpots.NOMINAL, PHASES, source, by, Answers.LIMIT);
            return List.of(answer.groups(), answer.contrasts(), answer.caveats(), answer.depths(), answer.spotCount(),
                answer.particleCount(), answer.sessionCount());
        } catch (IllegalArgumentException e) {
            return e.getMessage();
        }
    }

    @Property(tries = 40)
    void sums_gone_on_from_again_and_again_give_the_answer_of_all_spots_to_the_last_bit(@ForAll long seed,
                                                                                       @ForAll GroupBy by) {
        RandomSpots invented = new RandomSpots(seed);
        List<Spot> spots = new ArrayList<>(invented.next(1 + (int) Math.floorMod(seed, 40L)));
        if (seed % 2 == 0) {
            spots.addAll(List.of(invented.onReference(), invented.onReference(), invented.onReference()));
        }
        byte[] kept = sums(SpotSource.of(spots), by).toBytes();
        for (int step = 0; step < 4; step++) {
            int summed = spots.size();
            spots.addAll(invented.next(1 + (int) Math.floorMod(seed >> 7 * step, 60L)));
            Kept source = new Kept(List.copyOf(spots), summed, kept);

            assertThat(answer(source, by)).isEqualTo(answer(SpotSource.of(spots), by));

            SampleSums gone = sums(source, by);
            assertThat(gone.wentOn()).isTrue();
            kept = gone.toBytes();
            assertThat(sums(SpotSource.of(spots), by).comparedWith(kept(spots, spots.size(), kept)).difference()).isEmpty();
        }
    }

    @Example
    void sums_are_left_alone_where_an_input_they_hold_is_another() {
        RandomSpots invented = new RandomSpots(3);
        List<Spot> spots = new ArrayList<>(invented.next(50));
        spots.addAll(List.of(invented.onReference(), invented.onReference()));
        byte[] kept = sums(SpotSource.of(spots), GroupBy.FEATURE).toBytes();
        Kept same = new Kept(spots, spots.size(), kept);

        assertThat(sums(same, GroupBy.FEATURE).wentOn()).isTrue();
        assertThat(sums(same, GroupBy.SAMPLE).wentOn()).isFalse();
        assertThat(sums(Answers.sample(RandomSpots.NOMINAL, AccuracyClass.STANDARDLESS, "O"), RandomSpots.NOMINAL, same,
            GroupBy.FEATURE).wentOn()).isFalse();
        assertThat(sums(SAMPLE, NominalText.parse("Ag:58,Cu:42", Basis.ATOMIC), same, GroupBy.FEATURE).wentOn()).isFalse();
        assertThat(all(SAMPLE, RandomSpots.NOMINAL, PHASES, same, Map.of(GroupBy.FEATURE, 1000), 0.002)
            .get(GroupBy.FEATURE).wentOn()).isFalse();
        assertThat(all(SAMPLE, RandomSpots.NOMINAL, PHASES.subList(1, PHASES.size()), same,
            Map.of(GroupBy.FEATURE, 1000), Answers.LIMIT).get(GroupBy.FEATURE).wentOn()).isFalse();
        byte[] older = kept.clone();
        older[Long.BYTES - 1]--;
        assertThat(sums(new Kept(spots, spots.size(), older), GroupBy.FEATURE).wentOn()).as("of an older form").isFalse();
        List<Spot> more = new ArrayList<>(spots);
        more.add(invented.onReference());
        assertThat(sums(new Kept(more, spots.size(), kept), GroupBy.FEATURE).wentOn())
            .as("another reference spot moves the gain").isFalse();
    }

    @Example
    void bytes_that_are_no_sums_are_left_alone() {
        List<Spot> spots = new RandomSpots(5).next(60);
        byte[] kept = sums(SpotSource.of(spots), GroupBy.FEATURE).toBytes();
        for (int length = 0; length < kept.length; length += 7) {
            byte[] cut = Arrays.copyOf(kept, length);
            assertThat(sums(new Kept(spots, spots.size(), cut), GroupBy.FEATURE).wentOn()).isFalse();
        }
        assertThat(sums(new Kept(spots, spots.size(), Arrays.copyOf(kept, kept.length + 1)), GroupBy.FEATURE)
            .wentOn()).isFalse();
    }

    @Example
    void a_recount_names_the_first_sum_that_differs() {
        List<Spot> spots = new RandomSpots(8).next(60);
        byte[] kept = sums(SpotSource.of(spots.subList(0, 59)), GroupBy.SAMPLE).toBytes();

        SampleSums.Comparison comparison =
            sums(SpotSource.of(spots), GroupBy.SAMPLE).comparedWith(kept(spots, 59, kept));

        assertThat(comparison.difference()).contains("spots is kept as 59, recounted as 60");
    }

    @Example
    void too_many_particles_and_a_median_leave_nothing_to_keep() {
        SpotSource source = SpotSource.of(new RandomSpots(1).next(100));
        Judgement plain = Judgement.DEFAULT;
        Judgement median = new Judgement(plain.marginOddsRatio(), plain.alpha(), plain.uLevel(),
            plain.referenceCorrelation(), SpotCentre.MEDIAN);

        assertThat(all(SAMPLE, RandomSpots.NOMINAL, PHASES, source,
            Map.of(GroupBy.FEATURE, 3, GroupBy.SAMPLE, 1000), Answers.LIMIT)).containsOnlyKeys(GroupBy.SAMPLE);
        assertThat(SampleSums.canBeKept(SAMPLE)).isTrue();
        assertThat(SampleSums.canBeKept(Answers.sample(RandomSpots.NOMINAL, AccuracyClass.STANDARDLESS, "", median)))
            .isFalse();
    }

    @Example
    void sums_do_not_grow_with_spots() {
        RandomSpots invented = new RandomSpots(13);
        List<Spot> spots = new ArrayList<>(invented.next(2000));
        int few = sums(SpotSource.of(spots), GroupBy.PARTICLE).toBytes().length;
        spots.addAll(invented.next(8000));

        assertThat(sums(SpotSource.of(spots), GroupBy.PARTICLE).toBytes().length).isLessThan(few + few / 4);
    }
}
