package surfeit.segregation.phase;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.composition.Basis;
import surfeit.composition.NominalText;
import surfeit.composition.Phase;
import surfeit.composition.SourceRead;
import surfeit.element.Element;
import surfeit.segregation.sums.PhaseField;

/** Mixtures of three phases among four elements: compositions made from shares by hand. All phases are invented. */
class ThreePhasesTest {
    private static final List<Element> FOUR = List.of(Element.of("Sn"), Element.of("Ag"), Element.of("Cu"), Element.of("Bi"));
    private static final PhaseField TIN = field("tin", "Sn:90,Ag:4,Cu:2,Bi:4");
    private static final PhaseField SILVER = field("silver", "Sn:20,Ag:70,Cu:6,Bi:4");
    private static final PhaseField COPPER = field("copper", "Sn:40,Ag:0,Cu:58,Bi:2");

    private static PhaseField field(String name, String composition) {
        return PhaseField.over(List.of(Phase.of("Ag-Bi-Cu-Sn", name, NominalText.parse(composition, Basis.ATOMIC),
            OptionalDouble.empty(), "compound", OptionalDouble.empty(), "invented", SourceRead.NO)), FOUR).get(0);
    }

    private static double[] mixed(double tin, double silver, double copper) {
        double[] mixed = new double[4];
        for (int i = 0; i < 4; i++) {
            mixed[i] = tin * TIN.composition()[i] + silver * SILVER.composition()[i] + copper * COPPER.composition()[i];
        }
        return mixed;
    }

    private static double[] uncertain(double each) {
        return new double[] {each, each, each, each};
    }

    @ParameterizedTest
    @CsvSource({"0.5, 0.3, 0.2", "0.2, 0.2, 0.6", "0.05, 0.9, 0.05", "0.9, 0.05, 0.05"})
    void a_mixture_gives_back_the_shares_it_was_made_of(double tin, double silver, double copper) {
        double[] shares = ThreePhases.of(mixed(tin, silver, copper), uncertain(0), List.of(TIN, SILVER, COPPER))
            .orElseThrow().ofAtoms();
        assertThat(shares).containsExactly(new double[] {tin, silver, copper}, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"1.2, -0.1, -0.1", "-0.2, 0.6, 0.6", "0.6, -0.2, 0.6", "0.6, 0.6, -0.2", "-0.02, 0.51, 0.51"})
    void what_would_need_less_than_nothing_of_a_phase_is_no_mixture(double tin, double silver, double copper) {
        assertThat(ThreePhases.of(mixed(tin, silver, copper), uncertain(0.5), List.of(TIN, SILVER, COPPER))).isEmpty();
    }

    /**
     * Bismuth 4 at% more than the mixture: 1.96 times hypot(u, 0.0029) is 0.0398 at u 0.0201 and 0.0594 at u 0.0302, and
     * the nearest mixture takes a little of the 4 at% away.
     */
    @ParameterizedTest
    @CsvSource({"0.0302, true", "0.015, false", "0, false"})
    void what_lies_beside_the_triangle_by_more_than_its_uncertainty_is_no_mixture(double uncertainty, boolean mixture) {
        double[] beside = mixed(0.5, 0.3, 0.2);
        beside[3] += 0.04;
        for (int i = 0; i < 3; i++) {
            beside[i] -= 0.04 / 3;
        }
        assertThat(ThreePhases.of(beside, uncertain(uncertainty), List.of(TIN, SILVER, COPPER)).isPresent())
            .isEqualTo(mixture);
    }

    @Test
    void phases_in_one_line_or_twice_the_same_span_nothing() {
        PhaseField between = field("between", "Sn:55,Ag:37,Cu:4,Bi:4");
        double[] mean = mixed(0.5, 0.5, 0);
        assertThat(ThreePhases.of(mean, uncertain(0.5), List.of(TIN, SILVER, between))).isEmpty();
        assertThat(ThreePhases.of(mean, uncertain(0.5), List.of(TIN, SILVER, SILVER))).isEmpty();
    }

    @Test
    void of_four_phases_the_three_that_hold_it_are_found_wherever_they_are_listed() {
        PhaseField bismuth = field("bismuth", "Sn:1,Ag:0,Cu:0,Bi:99");
        for (List<PhaseField> listed : List.of(List.of(bismuth, TIN, SILVER, COPPER), List.of(TIN, bismuth, SILVER, COPPER),
            List.of(TIN, SILVER, COPPER, bismuth))) {
            assertThat(ThreePhases.of(mixed(0.5, 0.3, 0.2), uncertain(0), listed).orElseThrow().phases())
                .extracting(Phase::name).containsExactly("tin", "silver", "copper");
        }
    }
}
