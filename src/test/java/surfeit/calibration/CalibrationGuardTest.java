package surfeit.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import surfeit.calibration.Label.Promise;

/**
 * A small part of the benchmark, for every build: a gross fault of an interval, a flag or a verdict shows here.
 *
 * <p>With some hundred samples a cell the tolerances are wide, about five standard errors.
 */
class CalibrationGuardTest {
    private static final Benchmark SMALL = new Benchmark(Map.of(Truth.NOMINAL, 400, Truth.MARGIN, 300,
        Truth.SHIFTED, 100));
    private static final Set<String> PARTICLES = Set.of("3", "3+3");
    private static List<Result> promised;

    @BeforeAll
    static void run() {
        List<Cell> cells = Cells.all().stream().filter(cell -> cell.label().promise() == Promise.FULL
            && PARTICLES.contains(cell.label().particles()) && cell.label().elements() <= 4
            && !cell.label().block().equals(OtherCells.RELIABILITY)).toList();
        promised = SMALL.look(cells, 1, 1);
    }

    @Test
    void the_small_part_holds_particles_reference_spots_contrasts_comparisons_and_values_below_limits() {
        assertThat(promised).extracting(result -> result.label().block())
            .contains(GridCells.BLOCK, ReferenceCells.BLOCK, ContrastCells.BLOCK, ComparisonCells.BLOCK,
                MinorCells.NOT_DETECTED);
    }

    @Test
    void intervals_cover_the_truth_about_as_often_as_they_say() {
        assertThat(promised).allSatisfy(result -> {
            assertThat(result.lowestCoverage().percent()).as("lowest coverage").isGreaterThan(91);
            if (!result.label().block().equals(MinorCells.NOT_DETECTED)) {
                assertThat(result.lowestCoverage().percent()).as("not always covered").isLessThan(98.5);
            }
        });
    }

    @Test
    void flags_are_seldom_false_and_consistent_is_seldom_said_at_the_margin() {
        assertThat(promised).allSatisfy(result -> {
            assertThat(result.falseFlags().percent()).as("false flags").isLessThan(10.5);
            if (result.consistentAtMargin().isKnown()) {
                assertThat(result.consistentAtMargin().percent()).as("consistent at the margin").isLessThan(15);
            }
        });
    }

    @Test
    void a_flag_on_a_real_shift_points_the_right_way() {
        assertThat(promised).filteredOn(result -> result.wrongWay().isKnown())
            .allSatisfy(result -> assertThat(result.wrongWay().percent()).isLessThan(2));
    }
}
