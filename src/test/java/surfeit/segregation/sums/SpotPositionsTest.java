package surfeit.segregation.sums;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleSupplier;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.composition.Basis;
import surfeit.composition.NominalText;
import surfeit.composition.Phase;
import surfeit.composition.SourceRead;
import surfeit.element.Element;
import surfeit.segregation.answer.SpotSpread;

/** The pattern of single spots along a tie line; all positions are invented. */
class SpotPositionsTest {
    private static final List<Element> AG_CU = List.of(Element.of("Ag"), Element.of("Cu"));

    /** A tie line from pure silver to pure copper, so that a position is the copper fraction. */
    private static TieLine line(double nominalCopper, String role) {
        return TieLine.between(List.of(phase("(Ag)", "Ag:100,Cu:0", role), phase("(Cu)", "Ag:0,Cu:100", role)), AG_CU,
            new double[] {1 - nominalCopper, nominalCopper}).get(0);
    }

    private static Phase phase(String name, String composition, String role) {
        return Phase.of("Ag-Cu", name, NominalText.parse(composition, Basis.ATOMIC), OptionalDouble.empty(), role,
            OptionalDouble.empty(), "invented", SourceRead.NO);
    }

    private static SpotPositions tally(List<Double> positions) {
        SpotPositions tally = new SpotPositions(line(0.5, Phase.TERMINAL));
        positions.forEach(x -> tally.add(new double[] {1 - x, x}));
        return tally;
    }

    private static SpotSpread spread(double... positions) {
        return tally(IntStream.range(0, positions.length).mapToObj(i -> positions[i]).toList()).spread();
    }

    @Test
    void spots_within_half_the_line_are_together_whatever_their_number() {
        assertThat(spread(0.4).pattern()).isEqualTo(SpotSpread.Pattern.TOGETHER);
        assertThat(spread(0.1, 0.3, 0.55).pattern()).isEqualTo(SpotSpread.Pattern.TOGETHER);
    }

    @Test
    void two_tight_clusters_at_both_phases_are_named_with_their_counts_and_centres() {
        SpotSpread spread = spread(0.02, 0.96, -0.01, 1.01, 0.05, 0.98, 0.0, 1.0);
        assertThat(spread.pattern()).isEqualTo(SpotSpread.Pattern.TWO_CLUSTERS);
        SpotSpread.Clusters clusters = spread.clusters().orElseThrow();
        assertThat(clusters.lowerCount()).isEqualTo(4);
        assertThat(clusters.upperCount()).isEqualTo(4);
        assertThat(clusters.lowerCentre()).isCloseTo(0.015, within(1e-12));
        assertThat(clusters.upperCentre()).isCloseTo(0.9875, within(1e-12));
        assertThat(clusters.atBothPhases()).isTrue();
        assertThat(spread.atFrom()).isEqualTo(4);
        assertThat(spread.atTo()).isEqualTo(4);
        assertThat(spread.between()).isZero();
    }

    @Test
    void two_clusters_of_which_one_is_a_mixture_are_not_taken_for_two_phases() {
        SpotSpread.Clusters clusters = spread(0.02, 0.0, 0.03, 0.01, 0.61, 0.6, 0.62, 0.59).clusters().orElseThrow();
        assertThat(clusters.atBothPhases()).isFalse();
    }

    @Test
    void three_scattered_spots_or_one_odd_spot_do_not_tell() {
        assertThat(spread(0.0, 0.5, 1.0).pattern()).isEqualTo(SpotSpread.Pattern.CANNOT_TELL);
        assertThat(spread(0.0, 0.01, 0.02, 0.0, 0.98).pattern()).isEqualTo(SpotSpread.Pattern.CANNOT_TELL);
    }

    @Test
    void many_spots_all_along_the_line_are_spread() {
        double[] even = IntStream.range(0, 30).mapToDouble(i -> i / 29.0).toArray();
        assertThat(spread(even).pattern()).isEqualTo(SpotSpread.Pattern.SPREAD);
    }

    @Test
    void many_spots_with_a_few_far_out_are_still_together() {
        Random random = new Random(4);
        List<Double> positions = new ArrayList<>();
        for (int i = 0; i < 2000; i++) {
            positions.add(0.5 + 0.09 * random.nextGaussian());
        }
        assertThat(tally(positions).spread().pattern()).isEqualTo(SpotSpread.Pattern.TOGETHER);
    }

    @ParameterizedTest
    @CsvSource({"4", "6", "8", "12", "20", "60"})
    void an_even_spread_is_called_two_phases_in_at_most_five_of_a_hundred_groups(int spots) {
        Random random = new Random(20261124);
        assertThat(rate(spots, 4000, random::nextDouble)).isLessThan(0.05);
    }

    @ParameterizedTest
    @CsvSource({"4", "6", "8", "12", "20", "60"})
    void a_bell_shaped_spread_is_called_two_phases_in_at_most_one_of_a_hundred_groups(int spots) {
        Random random = new Random(20261124);
        assertThat(rate(spots, 4000, () -> 0.5 + 0.3 * random.nextGaussian())).isLessThan(0.01);
    }

    @ParameterizedTest
    @CsvSource({"8, 0.87", "12, 0.98", "20, 0.999"})
    void two_phases_hit_at_random_are_found(int spots, double atLeast) {
        Random random = new Random(20261124);
        assertThat(rate(spots, 4000, () -> (random.nextBoolean() ? 1 : 0) + 0.1 * random.nextGaussian()))
            .isGreaterThan(atLeast);
    }

    private static double rate(int spots, int groups, DoubleSupplier position) {
        int found = 0;
        TieLine line = line(0.5, Phase.TERMINAL);
        for (int g = 0; g < groups; g++) {
            SpotPositions tally = new SpotPositions(line);
            for (int s = 0; s < spots; s++) {
                double x = position.getAsDouble();
                tally.add(new double[] {1 - x, x});
            }
            found += tally.spread().clusters().filter(SpotSpread.Clusters::atBothPhases).isPresent() ? 1 : 0;
        }
        return (double) found / groups;
    }

    @Test
    void memory_does_not_grow_with_spots() {
        Random random = new Random(1);
        List<Double> positions = new ArrayList<>();
        for (int i = 0; i < 20_000; i++) {
            positions.add(3 * random.nextDouble() - 1);
        }
        assertThat(tally(positions).binsInUse()).isEqualTo(64);
    }

    @Test
    void order_and_merging_change_nothing() {
        Random random = new Random(2);
        List<Double> positions = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            positions.add((random.nextInt(3) == 0 ? 1 : 0) + 0.08 * random.nextGaussian());
        }
        SpotSpread whole = tally(positions).spread();
        SpotPositions merged = tally(positions.subList(120, 200));
        merged.merge(tally(positions.subList(0, 120)));
        same(merged.spread(), whole);
        Collections.shuffle(positions, random);
        same(tally(positions).spread(), whole);
    }

    private static void same(SpotSpread found, SpotSpread expected) {
        assertThat(found.pattern()).isEqualTo(expected.pattern());
        assertThat(found.atFrom()).isEqualTo(expected.atFrom());
        assertThat(found.clusters().orElseThrow().lowerCount()).isEqualTo(expected.clusters().orElseThrow()
            .lowerCount());
        assertThat(found.clusters().orElseThrow().upperCentre())
            .isCloseTo(expected.clusters().orElseThrow().upperCentre(), within(1e-12));
        assertThat(found.clusters().orElseThrow().explained())
            .isCloseTo(expected.clusters().orElseThrow().explained(), within(1e-12));
    }

    @Test
    void a_spot_nearer_to_the_alloy_as_a_whole_than_to_a_phase_is_not_at_it() {
        SpotPositions tally = new SpotPositions(line(0.1, Phase.TERMINAL));
        for (double x : new double[] {0.02, 0.09, 0.1, 0.11, 0.98, 0.99, 1.0, 0.97}) {
            tally.add(new double[] {1 - x, x});
        }
        SpotSpread spread = tally.spread();
        assertThat(spread.atFrom()).isEqualTo(1);
        assertThat(spread.between()).isEqualTo(3);
        assertThat(spread.clusters().orElseThrow().atBothPhases()).isFalse();
    }

    @Test
    void a_cluster_far_beyond_a_compound_is_not_at_it_but_one_beyond_a_solid_solution_is() {
        for (String role : List.of(Phase.TERMINAL, "compound")) {
            SpotPositions tally = new SpotPositions(line(0.5, role));
            for (double x : new double[] {-0.3, -0.31, -0.29, -0.32, 0.98, 0.99, 1.0, 0.97}) {
                tally.add(new double[] {1 - x, x});
            }
            assertThat(tally.spread().clusters().orElseThrow().atBothPhases()).isEqualTo(role.equals(Phase.TERMINAL));
        }
    }

    @Test
    void spots_far_beside_the_line_are_on_another_one() {
        List<Element> three = List.of(Element.of("Ag"), Element.of("Cu"), Element.of("Sn"));
        TieLine line = TieLine.between(List.of(phase("(Ag)", "Ag:100,Cu:0", Phase.TERMINAL),
            phase("(Cu)", "Ag:0,Cu:100", Phase.TERMINAL)), three, new double[] {0.4, 0.4, 0.2}).get(0);
        for (double tin : new double[] {0.02, 0.6}) {
            SpotPositions tally = new SpotPositions(line);
            for (int i = 0; i < 8; i++) {
                tally.add(i % 2 == 0 ? new double[] {1 - tin, 0, tin} : new double[] {0, 1, 0});
            }
            boolean found = tally.spread().clusters().filter(SpotSpread.Clusters::atBothPhases).isPresent();
            assertThat(found).as("tin %s", tin).isEqualTo(tin < 0.1);
        }
    }
}
