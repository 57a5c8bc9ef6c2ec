package surfeit.http;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import surfeit.element.ElementTable;
import surfeit.http.json.InterpretationDocument;
import surfeit.http.json.JsonFormat;
import surfeit.lab.Segregation;
import surfeit.lab.StoredSample;
import surfeit.report.CsvReport;
import surfeit.report.MarkdownReport;
import surfeit.report.Provenance;
import surfeit.report.Signs;

/** An answer as JSON, CSV or Markdown, the same bytes over HTTP and from the command line. */
public final class AnswerFile {
    /** Text of an ordinary report, in characters; it grows where needed. */
    private static final int TEXT_LENGTH = 16 << 10;

    private AnswerFile() {
    }

    /** Writes the answer as JSON. */
    public static void json(Segregation answer, Instant computed, OutputStream out) throws IOException {
        try (JsonGenerator json = JsonFormat.generator(out)) {
            InterpretationDocument.write(json, answer, computed, ProgramVersion.VERSION);
        }
    }

    /** The answer as flat rows. */
    public static String csv(Segregation answer, Instant computed) throws IOException {
        StringBuilder text = new StringBuilder(TEXT_LENGTH);
        CsvReport.write(answer.interpretation(), provenance(answer, computed), text);
        return text.toString();
    }

    /** The answer as a report. */
    public static String markdown(Segregation answer, Instant computed) throws IOException {
        StringBuilder text = new StringBuilder(TEXT_LENGTH);
        MarkdownReport.write(answer.interpretation(), provenance(answer, computed), Signs.UNICODE, text);
        return text.toString();
    }

    private static Provenance provenance(Segregation answer, Instant computed) {
        Optional<StoredSample> stored = answer.stored();
        return new Provenance(ProgramVersion.VERSION, stored.map(StoredSample::name),
            stored.map(sample -> OptionalLong.of(sample.revision())).orElse(OptionalLong.empty()), computed.toString(),
            Map.of("elements.csv", ElementTable.standard().sha256()), Map.of());
    }
}
