package surfeit.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The benchmark's own machinery. */
class BenchmarkTest {
    private static final Benchmark FEW = new Benchmark(Map.of(Truth.NOMINAL, 300, Truth.MARGIN, 300, Truth.SHIFTED, 100,
        Truth.OWN, 300, Truth.ANY, 300));

    @Test
    void a_cell_gives_the_same_figures_whatever_runs_beside_it() {
        List<Cell> cells = new ArrayList<>(ReferenceCells.all().subList(0, 3));
        String once = CsvTable.of(FEW.look(cells, 1, 1).subList(0, 1));
        Collections.reverse(cells);
        assertThat(CsvTable.of(FEW.look(cells, 1, 1).subList(2, 3))).isEqualTo(once);
        assertThat(CsvTable.of(FEW.look(cells, 2, 1).subList(2, 3))).as("a second look has other seeds")
            .isNotEqualTo(once);
    }

    @Test
    void no_two_cells_share_their_seeds() {
        List<String> keys = Cells.all().stream().map(cell -> cell.label().key()).toList();
        assertThat(new HashSet<>(keys)).hasSameSizeAs(keys);
    }

    @ParameterizedTest
    @EnumSource(Scatter.class)
    void scatter_has_mean_zero_and_variance_one(Scatter scatter) {
        Dice dice = Dice.of(scatter.word());
        int draws = 400_000;
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < draws; i++) {
            double z = scatter.draw(dice);
            sum += z;
            squares += z * z;
        }
        assertThat(sum / draws).isCloseTo(0, within(0.01));
        assertThat(squares / draws).isCloseTo(1, within(0.04));
    }

    @Test
    void the_mean_of_scattered_compositions_is_the_composition() {
        Composition alloy = Composition.braze(4);
        Dice dice = Dice.of("mean");
        double[] mean = new double[4];
        int draws = 100_000;
        for (int i = 0; i < draws; i++) {
            double[] z = Composition.draws(Scatter.HEAVY, 4, dice);
            double[] particle = Composition.scattered(alloy.fractions(), alloy.alike(0.1), z);
            for (int j = 0; j < 4; j++) {
                mean[j] += particle[j] / draws;
            }
        }
        assertThat(mean).containsExactly(alloy.fractions(), within(5e-4));
    }

    @Test
    void a_moved_element_has_the_asked_odds_ratio_and_the_others_keep_their_ratios() {
        Composition alloy = Composition.braze(3);
        Composition moved = alloy.shifted(1, Math.log(1.25));
        assertThat(moved.logit(1) - alloy.logit(1)).isCloseTo(Math.log(1.25), within(1e-12));
        assertThat(moved.fractions()[0] / moved.fractions()[2]).isCloseTo(0.45 / 0.24, within(1e-12));
    }

    /** 950 of 1000: binomial standard error 0.69 points, as sqrt(0.95 x 0.05 / 1000) is. */
    @Test
    void a_share_knows_its_monte_carlo_error() {
        Share share = new Share(950, 1000);
        assertThat(share.error()).isCloseTo(1.96 * 0.689, within(0.01));
        assertThat(share.isSurelyAbove(93.5)).isTrue();
        assertThat(share.isSurelyBelow(96)).isFalse();
    }
}
