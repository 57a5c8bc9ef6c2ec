package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ResolutionTest {

    // Fiori & Newbury 1978 (formula from memory), worked out separately with the reference at 5895 eV.
    @ParameterizedTest
    @CsvSource({"130,C,Ka,53.4", "130,O,Ka,58.9", "130,Si,Ka,80.7", "130,Au,Ma,86.4", "130,Cu,Ka,149.3",
        "130,Au,La,162.6", "125,Si,Ka,72.4", "135,Si,Ka,88.5"})
    void width_follows_the_line_energy(double fwhm, String symbol, String line, double expected) {
        assertThat(new Resolution(fwhm).fwhmEv(Samples.line(symbol, line).energyKev())).isCloseTo(expected,
            within(0.15));
    }

    @Test
    void width_at_the_reference_is_the_stated_one() {
        assertThat(new Resolution(130).fwhmEv(5.895)).isCloseTo(130, within(1e-9));
    }

    @Test
    void a_width_the_formula_makes_too_narrow_is_held_and_flagged() {
        Resolution sharp = new Resolution(125);
        assertThat(sharp.clamped(0.277)).isTrue();
        assertThat(sharp.fwhmEv(0.277)).isEqualTo(40);
        assertThat(new Resolution(110).fwhmEv(0.277)).as("the root would be imaginary").isEqualTo(40);
        assertThat(Resolution.USUAL.clamped(0.277)).isFalse();
    }

    @Test
    void an_impossible_resolution_is_refused() {
        assertThatThrownBy(() -> new Resolution(0.13)).hasMessageContaining("0.13 eV")
            .hasMessageContaining("100 to 300");
    }
}
