package surfeit.http;

import java.util.Optional;
import surfeit.http.json.SpotDocument;
import surfeit.http.json.SpotLines;
import surfeit.intake.IntakeLimits;
import surfeit.intake.IntakeOptions;
import surfeit.intake.SpotTable;
import surfeit.intake.StatedDialect;
import surfeit.lab.IntakeRows;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.SpotRows;

/** What the address of an upload says of how it is to be read. */
final class UploadOptions {
    /** The query parameters that say it. */
    static final String[] PARAMETERS = {"unit", "session", "time_zone", "delimiter", "decimal", "charset"};

    private UploadOptions() {
    }

    static IntakeOptions of(Exchange exchange) {
        return of(exchange.parameters(), exchange.body().charset(), exchange.facts().settings().intake());
    }

    /** @param charset what the media type says of the characters; a query parameter goes before it */
    static IntakeOptions of(Parameters parameters, Optional<String> charset, IntakeLimits limits) {
        StatedDialect stated = StatedDialect.NOTHING;
        try {
            stated = with(stated, parameters.text("unit"), StatedDialect::withUnit);
            stated = with(stated, parameters.text("time_zone"), StatedDialect::withTimeZone);
            stated = with(stated, parameters.text("delimiter"), StatedDialect::withDelimiter);
            stated = with(stated, parameters.text("decimal"), StatedDialect::withDecimal);
            stated = with(stated, parameters.text("charset").or(() -> charset), StatedDialect::withCharset);
        } catch (IllegalArgumentException e) {
            throw new ProblemException(Problem.VALUE_OUT_OF_RANGE, e.getMessage());
        }
        return IntakeOptions.DEFAULT.withStated(stated).withSession(parameters.text("session")).withLimits(limits);
    }

    /** Adds one statement to those before. */
    private interface Statement {
        StatedDialect add(StatedDialect before, String text);
    }

    private static StatedDialect with(StatedDialect before, Optional<String> text, Statement statement) {
        return text.isPresent() ? statement.add(before, text.get()) : before;
    }

    /** The reader for the form of the body. */
    static SpotRows rows(Form form, IntakeOptions options) {
        return new IntakeRows(options, switch (form) {
            case JSON -> SpotDocument::read;
            case NDJSON -> SpotLines::read;
            default -> SpotTable::read;
        });
    }
}
