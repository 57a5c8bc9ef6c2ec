package surfeit.segregation.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import surfeit.segregation.InventedSpots;
import surfeit.segregation.answer.ForeignElement;

/** Zinc in a silver-copper group; invented spots, numbers worked out with scipy 1.10.1 from the rule. */
class ForeignElementsTest {

    private static ForeignElement zinc(String... spots) {
        InventedSpots invented = new InventedSpots();
        for (int i = 0; i < spots.length; i++) {
            invented.add("matrix", "P" + i, spots[i]);
        }
        return invented.against("Ag:60,Cu:40").groups().get(0).foreign().get(0);
    }

    /**
     * Shares 0.029, 0.030 and 0.031 beside 0.582 silver and 0.388 copper: mean weight 89.3965; standardless, r0 0.125, floor
     * 0.1 % of the mass: u 0.0046766; s 0.001 / sqrt 3 on two degrees of freedom: half width 0.0092369. Limit 0.3 % of the mass.
     */
    @Test
    void its_mean_and_interval_are_those_of_the_linear_scale() {
        ForeignElement zinc =
            zinc("Ag 58.26, Cu 38.84, Zn 2.9", "Ag 58.2, Cu 38.8, Zn 3.0", "Ag 58.14, Cu 38.76, Zn 3.1");
        assertThat(zinc.mean()).isCloseTo(0.03, within(1e-12));
        assertThat(zinc.low().orElseThrow()).isCloseTo(0.0207631, within(2e-7));
        assertThat(zinc.high().orElseThrow()).isCloseTo(0.0392369, within(2e-7));
        assertThat(zinc.detectionLimit()).isCloseTo(0.0041020, within(2e-7));
        assertThat(zinc.limitAssumed()).isTrue();
        assertThat(zinc.present()).isTrue();
        assertThat(zinc.spotCount()).isEqualTo(3);
    }

    /** Below the limit of 0.41 at% nothing is called present, however well it repeats. */
    @Test
    void what_repeats_below_the_limit_is_not_called_present() {
        assertThat(zinc("Ag 59.76, Cu 39.84, Zn 0.40", "Ag 59.76, Cu 39.84, Zn 0.40", "Ag 59.76, Cu 39.84, Zn 0.40")
            .present()).isFalse();
        assertThat(zinc("Ag 58.2, Cu 38.8, Zn 3.0", "Ag 59.4, Cu 39.6, Zn 1.0", "Ag 59.94, Cu 39.96, Zn 0.1").present())
            .as("the interval reaches zero").isFalse();
    }

    /** One spot without an uncertainty has no interval; 3 at% less 1.96 x 0.0046766 is above zero. */
    @Test
    void one_spot_has_no_interval_and_the_calibration_error_alone_decides() {
        ForeignElement zinc = zinc("Ag 58.2, Cu 38.8, Zn 3.0");
        assertThat(zinc.low()).isEmpty();
        assertThat(zinc.high()).isEmpty();
        assertThat(zinc.present()).isTrue();
        assertThat(zinc("Ag 59.76, Cu 39.84, Zn 0.40").present()).isFalse();
    }
}
