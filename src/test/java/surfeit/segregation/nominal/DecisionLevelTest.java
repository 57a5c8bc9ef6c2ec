package surfeit.segregation.nominal;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import surfeit.statistics.CombinedError;

class DecisionLevelTest {

    @Property
    void what_is_surely_above_alpha_is_above_it(@ForAll @DoubleRange(min = -5, max = 5) double d,
                                                @ForAll @DoubleRange(min = 0.01, max = 3) double s,
                                                @ForAll @DoubleRange(min = 0.5, max = 500) double df,
                                                @ForAll @DoubleRange(max = 3) double u,
                                                @ForAll @DoubleRange(min = 0.01, max = 0.4) double alpha) {
        DecisionLevel level = DecisionLevel.of(alpha);
        if (level.surelyAboveTwoSided(d, s, df, u)) {
            assertThat(CombinedError.twoSidedP(d, s, df, u)).isGreaterThan(alpha);
        }
        if (level.surelyAboveOneSided(d, Math.hypot(s, u))) {
            assertThat(CombinedError.oneSidedP(d, s, df, u)).isGreaterThan(alpha);
        }
    }

    @Property
    void what_is_surely_above_a_small_p_is_above_it(@ForAll @DoubleRange(max = 1000) double d,
                                                    @ForAll @DoubleRange(min = 0.01, max = 3) double s,
                                                    @ForAll @DoubleRange(min = 0.5, max = 500) double df,
                                                    @ForAll @DoubleRange(max = 3) double u,
                                                    @ForAll @DoubleRange(min = 0.1, max = 280) double power) {
        double p = Math.pow(10, -power);
        if (DecisionLevel.ofTwoSided(p).surelyAboveTwoSided(d, s, df, u)) {
            assertThat(CombinedError.twoSidedP(d, s, df, u)).isGreaterThan(p);
        }
    }

    @Test
    void at_five_percent_the_limits_are_those_of_every_table() {
        // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1: 1.960 and 1.645
        DecisionLevel level = DecisionLevel.of(0.05);
        assertThat(level.surelyAboveTwoSided(1.9599, 0, 1, 1)).isTrue();
        assertThat(level.surelyAboveTwoSided(1.9601, 0, 1, 1)).isFalse();
        assertThat(level.surelyAboveOneSided(1.6448, 1)).isTrue();
        assertThat(level.surelyAboveOneSided(1.6449, 1)).isFalse();
    }

    @Test
    void where_every_value_is_asked_none_is_cut_short() {
        assertThat(DecisionLevel.EVERY_VALUE.surelyAboveTwoSided(0, 0, 1, 1)).isFalse();
        assertThat(DecisionLevel.EVERY_VALUE.surelyAboveOneSided(-9, 1)).isFalse();
    }
}
