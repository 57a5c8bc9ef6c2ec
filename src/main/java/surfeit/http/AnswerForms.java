package surfeit.http;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import surfeit.element.ElementTable;
import surfeit.http.json.InterpretationDocument;
import surfeit.lab.Segregation;
import surfeit.lab.StoredSample;
import surfeit.report.CsvReport;
import surfeit.report.MarkdownReport;
import surfeit.report.Provenance;
import surfeit.report.Signs;

/** Gives the answer in the form that was asked for. */
final class AnswerForms {
    /** Text of an ordinary report, in characters; it grows where needed. */
    private static final int TEXT_LENGTH = 16 << 10;

    private AnswerForms() {
    }

    static void answer(Exchange exchange, Segregation answer) throws IOException {
        if (exchange.form() == Form.JSON) {
            exchange.json(200, json ->
                InterpretationDocument.write(json, answer, exchange.now(), exchange.facts().version()));
            return;
        }
        StringBuilder text = new StringBuilder(TEXT_LENGTH);
        if (exchange.form() == Form.CSV) {
            CsvReport.write(answer.interpretation(), provenance(exchange, answer), text);
        } else {
            MarkdownReport.write(answer.interpretation(), provenance(exchange, answer), Signs.UNICODE, text);
        }
        exchange.text(text.toString());
    }

    private static Provenance provenance(Exchange exchange, Segregation answer) {
        Optional<StoredSample> stored = answer.stored();
        return new Provenance(exchange.facts().version(), stored.map(StoredSample::name),
            stored.map(sample -> OptionalLong.of(sample.revision())).orElse(OptionalLong.empty()), exchange.now().toString(),
            Map.of("elements.csv", ElementTable.standard().sha256()), Map.of());
    }
}
