package surfeit.element;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ElementTableTest {

    /** Abridged standard atomic weights: Prohaska et al., Pure Appl. Chem. 94 (2022) 573-600, Table 1. */
    @ParameterizedTest
    @CsvSource({"H,1,1.0080,0.0002", "C,6,12.011,0.002", "O,8,15.999,0.001", "Al,13,26.982,0.001",
        "Si,14,28.085,0.001", "Ti,22,47.867,0.001", "Fe,26,55.845,0.002", "Ni,28,58.693,0.001", "Cu,29,63.546,0.003",
        "Zn,30,65.38,0.02", "Ge,32,72.630,0.008", "Ag,47,107.87,0.01", "In,49,114.82,0.01", "Sn,50,118.71,0.01",
        "Au,79,196.97,0.01", "Pb,82,207.2,1.1", "Bi,83,208.98,0.01"})
    void weights_are_those_published_for_2021(String symbol, int atomicNumber, double weight, double uncertainty) {
        Element element = Element.of(symbol);
        assertThat(element.atomicNumber()).isEqualTo(atomicNumber);
        assertThat(element.atomicWeight()).isCloseTo(weight, within(uncertainty / 2));
        assertThat(element.weightUncertainty()).hasValue(uncertainty);
    }

    /** Full-precision standard atomic weights of the same publication. */
    @ParameterizedTest
    @CsvSource({"Ag,107.8682", "Au,196.966570", "Sn,118.710", "Cu,63.546", "Al,26.9815384", "Ni,58.6934"})
    void the_full_published_precision_is_used(String symbol, double weight) {
        assertThat(Element.of(symbol).atomicWeight()).isEqualTo(weight);
    }

    @Test
    void ninety_eight_elements_stand_in_order_of_atomic_number_each_once() {
        assertThat(ElementTable.standard().all()).extracting(Element::atomicNumber)
            .containsExactlyElementsOf(IntStream.rangeClosed(1, 98).boxed().toList());
        assertThat(ElementTable.standard().all()).extracting(Element::symbol).doesNotHaveDuplicates()
            .startsWith("H", "He").endsWith("Bk", "Cf");
    }

    /** Names as IUPAC spells them (Principles of Chemical Nomenclature 2011, from memory). */
    @ParameterizedTest
    @CsvSource({"Al,aluminium", "S,sulfur", "Cs,caesium", "Nb,niobium", "W,tungsten", "Pr,praseodymium"})
    void names_are_spelt_as_iupac_does(String symbol, String name) {
        assertThat(Element.of(symbol).name()).isEqualTo(name);
    }

    @Test
    void elements_without_a_standard_weight_carry_a_mass_number_and_no_uncertainty() {
        assertThat(Element.of("Tc").atomicWeight()).isEqualTo(97);
        assertThat(Element.of("Tc").weightUncertainty()).isEmpty();
    }

    /** CRC Handbook, densities of the solids near 20 °C (from memory). */
    @ParameterizedTest
    @CsvSource({"Al,2.70", "Si,2.33", "Cu,8.96", "Ag,10.49", "Sn,7.27", "Au,19.3", "Pb,11.34", "Bi,9.79"})
    void densities_are_those_of_the_metals(String symbol, double density) {
        assertThat(Element.of(symbol).density().orElseThrow()).isCloseTo(density, within(0.011));
    }

    /** No element that is a gas at room temperature is heavier than radon, 0.0097 g/cm³ (from memory). */
    @Test
    void gases_have_the_density_of_a_gas() {
        assertThat(ElementTable.standard().all()).filteredOn(Element::gasAtRoomTemperature)
            .extracting(Element::symbol).containsExactly("H", "He", "N", "O", "F", "Ne", "Cl", "Ar", "Kr", "Xe", "Rn");
        assertThat(ElementTable.standard().all()).filteredOn(Element::gasAtRoomTemperature)
            .allSatisfy(gas -> assertThat(gas.density().orElseThrow()).isLessThan(0.01));
    }

    @ParameterizedTest
    @CsvSource({"AG,Ag", "silver,Ag", "silicone,Si", "aluminum,Al", "cesium,Cs", "Sulphur,S", "' cu ',Cu", "k,K",
        "Gx,Ga"})
    void a_mistyped_symbol_suggests_the_nearest(String text, String symbol) {
        assertThat(ElementTable.standard().nearestSymbol(text)).contains(symbol);
    }

    @Test
    void an_unknown_symbol_is_refused_with_what_was_expected_and_found() {
        assertThatThrownBy(() -> Element.of("AG"))
            .isInstanceOfSatisfying(UnknownElementException.class, e -> {
                assertThat(e.text()).isEqualTo("AG");
                assertThat(e.nearest()).contains("Ag");
            })
            .hasMessage("Expected an element symbol such as Ag or Cu, got \"AG\"; nearest known: Ag.");
        assertThatThrownBy(() -> Element.of("total"))
            .hasMessage("Expected an element symbol such as Ag or Cu, got \"total\".");
    }

    @Test
    void the_table_cannot_be_changed() {
        assertThatThrownBy(() -> ElementTable.standard().all().clear())
            .isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void an_element_with_an_impossible_value_cannot_exist() {
        OptionalDouble none = OptionalDouble.empty();
        assertThatThrownBy(() -> new Element(119, "Uue", "ununennium", 315, none, none, false))
            .hasMessage("Atomic number 119 is outside 1 to 118.");
        assertThatThrownBy(() -> new Element(47, "Ag", "silver", Double.NaN, none, none, false))
            .hasMessage("Atomic weight of Ag (g/mol) is a finite number above 0, got NaN.");
        assertThatThrownBy(() -> new Element(47, "Ag", "silver", 107.87, none, OptionalDouble.of(-1), false))
            .hasMessage("Density of Ag (g/cm3) is a finite number above 0, got -1.0.");
    }
}
