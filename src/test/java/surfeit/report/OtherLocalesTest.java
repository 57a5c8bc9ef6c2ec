package surfeit.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.report.figure.Illustrations;
import surfeit.report.html.HtmlReport;
import surfeit.segregation.answer.Interpretation;

/** Reports read the same on a German, Turkish or Arabic machine. */
class OtherLocalesTest {
    private final Locale before = Locale.getDefault();

    @AfterEach
    void restore() {
        Locale.setDefault(before);
    }

    @ParameterizedTest
    @ValueSource(strings = {"de-DE", "tr-TR", "ar-EG", "fa-IR", "hi-IN-u-nu-deva"})
    void numbers_and_words_do_not_follow_the_machine(String tag) throws IOException {
        Locale.setDefault(Locale.ROOT);
        String plain = everything();
        Locale.setDefault(Locale.forLanguageTag(tag));
        assertThat(everything()).isEqualTo(plain).contains("x1.96 (1.71 to 2.15)").contains("78.1 \u00b1 1.2");
    }

    private static String everything() throws IOException {
        Interpretation answer = Invented.answer(Invented.AG_CU, List.of(Invented.copperContrast()),
            Invented.copperRichPatches().build(),
            Invented.matrix().build());
        StringBuilder out = new StringBuilder();
        TerminalReport.write(answer, "Sample A7", Signs.ASCII, out);
        MarkdownReport.write(answer, Invented.PROVENANCE, Signs.UNICODE, out);
        CsvReport.write(answer, Invented.PROVENANCE, out);
        HtmlReport.write(answer, Invented.PROVENANCE, Illustrations.NONE, out);
        return out.toString();
    }
}
