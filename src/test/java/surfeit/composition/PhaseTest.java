package surfeit.composition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import surfeit.element.Element;

class PhaseTest {
    private static final Element AG = Element.of("Ag");
    private static final Element CU = Element.of("Cu");
    private static final Element ZN = Element.of("Zn");

    @Test
    void fractions_come_in_the_order_asked_for_with_absent_elements_as_nothing() {
        Phase phase = phase("Ag-Cu", "Ag:90,Cu:10");
        assertThat(phase.over(List.of(CU, ZN, AG)).orElseThrow())
            .containsExactly(new double[] {0.1, 0, 0.9}, within(1e-15));
    }

    @Test
    void fractions_are_closed_over_the_elements_asked_for() {
        Phase phase = phase("Ag-Cu-Zn", "Ag:60,Cu:20,Zn:20");
        assertThat(phase.over(List.of(AG, CU)).orElseThrow()).containsExactly(new double[] {0.75, 0.25}, within(1e-15));
        assertThat(phase.over(List.of(Element.of("Sn")))).isEmpty();
    }

    @Test
    void the_mean_atomic_weight_is_that_of_its_atoms() {
        assertThat(phase("Ag-Cu", "Ag:50,Cu:50").meanAtomicWeight())
            .isCloseTo((107.8682 + 63.546) / 2, within(1e-9));
    }

    @Test
    void a_phase_has_one_composition_over_the_elements_of_its_system() {
        assertThatThrownBy(() -> phase("Ag-Cu", "Ag:bal,Cu:5-10"))
            .hasMessage("Phase (Ag) has one composition, got a range for Ag.");
        assertThatThrownBy(() -> phase("Ag-Cu", "Ag:90,Zn:10"))
            .hasMessage("Phase (Ag) holds fractions from 0 to 1 of the elements of Ag-Cu, got 0.1 of Zn.");
        assertThatThrownBy(() -> phase("silver", "Ag:90,Zn:10"))
            .hasMessage("Expected an element symbol such as Ag or Cu, got \"silver\"; nearest known: Ag.");
    }

    @Test
    void fractions_that_do_not_add_up_to_one_are_refused() {
        assertThatThrownBy(() -> phase(Map.of(AG, 0.9, CU, 0.2), 10.3, "invented"))
            .hasMessageStartingWith("The fractions of phase (Ag) add up to 1, got 1.1");
        assertThatThrownBy(() -> phase(Map.of(AG, 1.1, CU, -0.1), 10.3, "invented"))
            .hasMessageStartingWith("Phase (Ag) holds fractions from 0 to 1");
    }

    @Test
    void a_phase_without_a_source_or_with_an_impossible_density_is_refused() {
        assertThatThrownBy(() -> phase(Map.of(AG, 1.0), 10.3, " "))
            .hasMessage("A phase needs a name and a source, got name \"(Ag)\" and source \" \".");
        assertThatThrownBy(() -> phase(Map.of(AG, 1.0), 0, "invented"))
            .hasMessage("The density of phase (Ag) (g/cm3) is a finite number above 0, got 0.0.");
    }

    private static Phase phase(String system, String composition) {
        return Phase.of(system, "(Ag)", NominalText.parse(composition, Basis.ATOMIC), OptionalDouble.of(10.3),
            "terminal", OptionalDouble.of(779), "invented", SourceRead.NO);
    }

    private static Phase phase(Map<Element, Double> fractions, double density, String source) {
        return new Phase("Ag-Cu", "(Ag)", fractions, OptionalDouble.of(density), "terminal", OptionalDouble.empty(),
            source, SourceRead.NO);
    }
}
