package surfeit.rival;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.segregation.InventedSpots;
import surfeit.segregation.answer.GroupFinding;

/**
 * When a mix-up of wt% and at% could explain a shift. Nominal 40.25 at% Cu beside silver is 28.41 wt%, half a unit of log
 * odds (0.529) apart; spots are invented and said to be in at%.
 */
class UnitsCauseTest {
    private static final String NOMINAL = "Ag:59.75,Cu:40.25";

    private static void add(InventedSpots spots, String feature, double copper) {
        for (String particle : List.of("P1", "P2", "P3")) {
            for (double off : new double[] {-0.1, 0.1}) {
                spots.add(feature, particle, "Ag " + (100 - copper + off) + ", Cu " + (copper - off));
            }
        }
    }

    private static Optional<Rival> swapped(double copper, Optional<Double> other) {
        InventedSpots spots = new InventedSpots();
        add(spots, "patch", copper);
        other.ifPresent(own -> add(spots, "matrix", own));
        GroupFinding patch = InventedSpots.group(spots.against(NOMINAL), "patch");
        return patch.rivals().stream().filter(rival -> rival.code() == Cause.SWAPPED_UNITS).findFirst();
    }

    /**
     * By hand, log odds from the swapped nominal over those from the stated one: 28.41 is 0 of 0.529; 24 is 0.229 of 0.758,
     * three tenths, but more than a standard uncertainty of 0.177 off: in part; 26 is 0.122 of 0.651 and within it: alone;
     * 33 is 0.216 of 0.313: not nearer by four tenths. The other way, were the nominal 40.25 wt%, 53.35 at%: 50 is 0.134 of
     * 0.395 and within it, 44 is 0.375 of 0.154.
     */
    @ParameterizedTest
    @CsvSource({"28.41, YES", "26, YES", "24, IN_PART", "33, ", "50, YES", "44, "})
    void a_mix_up_explains_what_lies_near_the_swapped_nominal(double copper, Rival.CouldExplain expected) {
        assertThat(swapped(copper, Optional.empty()).map(Rival::couldExplain)).isEqualTo(Optional.ofNullable(expected));
    }

    /** A matrix that reads nominal in the same unit refutes it; one that a swap does not bring nearer leaves it "in part". */
    @ParameterizedTest
    @CsvSource({"40.3, ", "36, ", "28.4, YES", "27, YES", "80, IN_PART"})
    void another_feature_in_the_same_table_speaks_for_or_against_it(double matrix, Rival.CouldExplain expected) {
        assertThat(swapped(28.41, Optional.of(matrix)).map(Rival::couldExplain)).isEqualTo(Optional.ofNullable(expected));
    }
}
