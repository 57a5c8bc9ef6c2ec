package surfeit.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.composition.AlloyCatalogue;
import surfeit.http.FileQuestion;
import surfeit.intake.IntakeLimits;
import surfeit.lab.Segregation;
import surfeit.lab.UnrecordedAnswers;
import surfeit.report.Signs;
import surfeit.report.TerminalReport;
import surfeit.segregation.Interpreter;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.blocks.SpotSource;

/**
 * The invented samples and the answers kept beside them. After a wanted change of the method or its words, write the
 * answers anew with {@code -Dsurfeit.rewrite-expected=true} and look at every difference.
 */
class SampleResultsTest {
    private static final Path FOLDER = Path.of("sample-spectra-results");

    @ParameterizedTest
    @CsvSource({
        "ag-cu-braze-powder.csv, ag-cu-braze-powder.sample.json",
        "ag-cu-braze-powder-etched.csv, ag-cu-braze-powder-etched.sample.json",
        "sn-bi-solder-spheres.csv, sn-bi-solder-spheres.sample.json",
        "al-si-powder.json, ''", "al-si-patch-oil.json, ''"})
    void each_sample_has_the_answer_kept_beside_it(String file, String sample) throws IOException {
        Optional<byte[]> described = sample.isEmpty() ? Optional.empty()
            : Optional.of(Files.readAllBytes(FOLDER.resolve(sample)));
        FileQuestion question = FileQuestion.read(FOLDER.resolve(file), Map.of(), described,
            IntakeLimits.DEFAULT);
        Segregation answer = new UnrecordedAnswers(AlloyCatalogue.packaged(), new Interpreter(),
            MethodSettings.DEFAULT_DETECTION_LIMIT_MASS_FRACTION)
            .interpret(question.sample(), SpotSource.of(question.spots()), GroupBy.FEATURE);
        StringBuilder text = new StringBuilder();
        TerminalReport.write(answer.interpretation(), file, Signs.UNICODE, text);
        Path expected = FOLDER.resolve(file.substring(0, file.indexOf('.')) + ".expected.txt");
        if (Boolean.getBoolean("surfeit.rewrite-expected")) {
            Files.writeString(expected, text);
        }
        assertThat(text.toString()).isEqualTo(Files.readString(expected));
    }
}
