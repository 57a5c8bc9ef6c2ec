package surfeit.http;

import java.io.IOException;
import surfeit.http.json.InterpretationDocument;
import surfeit.lab.Segregation;

/** Gives the answer in the form that was asked for. */
final class AnswerForms {
    private AnswerForms() {
    }

    static void answer(Exchange exchange, Segregation answer) throws IOException {
        switch (exchange.form()) {
            case CSV -> exchange.text(AnswerFile.csv(answer, exchange.now()));
            case MARKDOWN -> exchange.text(AnswerFile.markdown(answer, exchange.now()));
            default -> exchange.json(200, json ->
                InterpretationDocument.write(json, answer, exchange.now(), exchange.facts().version()));
        }
    }
}
