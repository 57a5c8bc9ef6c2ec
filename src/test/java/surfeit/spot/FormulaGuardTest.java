package surfeit.spot;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Words that no spreadsheet runs, and that come back as they were. */
class FormulaGuardTest {

    /** The characters: OWASP Application Security Verification Standard 5, 1.2.10, and "CSV Injection", from memory. */
    @ParameterizedTest
    @ValueSource(strings = {"=SUM(A1)", "+cmd", "-cmd", "@home", "\t=1", "\r=1", "\n=1", "\u0000=1", " =1+1",
        "\u00A0=1+1", "\uFF1D1+1", "\uFF0B1", "\uFF0D1", "\uFF20home", "'=1", "-"})
    void a_word_that_could_run_gets_an_apostrophe(String word) {
        assertThat(FormulaGuard.guarded(word)).isEqualTo("'" + word);
        assertThat(FormulaGuard.undone("'" + word)).isEqualTo(word);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "dark patch", "P1-2", "'n' phase", "<0.3", "a=b", "\u22120.2"})
    void other_words_stay_as_they_are(String word) {
        assertThat(FormulaGuard.guarded(word)).isEqualTo(word);
        assertThat(FormulaGuard.undone(word)).isEqualTo(word);
    }

    @Property
    void whatever_the_word_it_comes_back(@ForAll("words") String word) {
        assertThat(FormulaGuard.undone(FormulaGuard.guarded(word))).isEqualTo(word);
    }

    @Provide
    Arbitrary<String> words() {
        return Arbitraries.strings().withChars("'=+-@ \t\n\u0000\uFF1DaP1").ofMaxLength(6);
    }
}
