package surfeit.http.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Suggestions in refusals. */
class NearestTest {
    private static final List<String> KNOWN =
        List.of("label", "particle", "beam_energy_kev", "tilt_deg", "total_percent");

    @Test
    void a_slip_of_the_pen_a_missing_unit_and_another_spelling_lead_to_the_known_word() {
        assertThat(Nearest.hint("lable", KNOWN)).isEqualTo("; nearest known: label.");
        assertThat(Nearest.hint("beam_energy", KNOWN)).isEqualTo("; nearest known: beam_energy_kev.");
        assertThat(Nearest.hint("Total-Percent", KNOWN)).isEqualTo("; nearest known: total_percent.");
    }

    @Test
    void a_word_like_none_lists_them_all() {
        assertThat(Nearest.hint("colour", KNOWN))
            .isEqualTo("; known: label, particle, beam_energy_kev, tilt_deg, total_percent.");
        assertThat(Nearest.hint("x", List.of())).isEqualTo("; none is known here.");
    }
}
