package surfeit.composition;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BasisTest {

    @ParameterizedTest
    @ValueSource(strings = {"at%", "At%", "at.%", "At. %", "atomic %", "Atomic Percent", "atomic_percent", "atom%"})
    void atomic_percent_is_known_by_its_usual_names(String unit) {
        assertThat(Basis.ofUnit(unit)).contains(Basis.ATOMIC);
    }

    @ParameterizedTest
    @ValueSource(strings = {"wt%", "Wt.%", "WT %", "mass%", "mass percent", "weight %", "mass_percent"})
    void mass_percent_is_known_by_its_usual_names(String unit) {
        assertThat(Basis.ofUnit(unit)).contains(Basis.MASS);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "%", "at", "wt", "vol%", "ppm", "normalised"})
    void what_does_not_name_a_basis_is_not_guessed(String unit) {
        assertThat(Basis.ofUnit(unit)).isEmpty();
    }
}
