package surfeit.http.json;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.intake.NumberReader;
import surfeit.intake.Refusal;
import surfeit.intake.ReportedValueReader;
import surfeit.lab.IntakeFaults;
import surfeit.lab.Problem;
import surfeit.spot.Counts;
import surfeit.spot.ReportedValue;

/**
 * Reads what was reported of one element: a number, a text as printed, or an object with what stands beside it.
 *
 * <p>Numbers of JSON itself have a decimal point; texts have one mark for the whole body, the first that is met.
 * Not thread-safe: one per body.
 */
final class ReadingReader {
    private static final String EXPECTED = "a number, a text such as \"<0.3\" or \"n.d.\", or an object with \"value\"";
    private static final Keys<Fields> KEYS = new Keys<Fields>("a reading")
        .key("value", (in, fields) -> {
            fields.given = true;
            fields.value = fields.reader.plain(in);
        })
        .key("u", (in, fields) -> fields.uncertainty = fields.reader.measure(in, ReportedValueReader::uncertainty))
        .key("net_counts", (in, fields) -> fields.net = fields.reader.measure(in, ReportedValueReader::netCounts))
        .key("background_counts",
            (in, fields) -> fields.background = fields.reader.measure(in, ReportedValueReader::backgroundCounts))
        .key("limit", (in, fields) -> fields.limit = fields.reader.measure(in, ReportedValueReader::limit))
        .key("line", (in, fields) -> fields.line = fields.reader.line(in));

    private final ReportedValueReader numbers;
    private final ReportedValueReader texts;
    private final List<NotKept> notKept = new ArrayList<>();

    /** Something beside a value that is no number. */
    record NotKept(String pointer, String words) {
    }

    ReadingReader(int uLevel) {
        numbers = new ReportedValueReader(NumberReader.withMark('.'), uLevel);
        texts = new ReportedValueReader(NumberReader.detecting(), uLevel);
    }

    private static final class Fields {
        private final ReadingReader reader;
        private boolean given;
        private Optional<ReportedValue> value = Optional.empty();
        private OptionalDouble uncertainty = OptionalDouble.empty();
        private OptionalDouble net = OptionalDouble.empty();
        private OptionalDouble background = OptionalDouble.empty();
        private OptionalDouble limit = OptionalDouble.empty();
        private Optional<String> line = Optional.empty();

        Fields(ReadingReader reader) {
            this.reader = reader;
        }
    }

    /** Turns a text into a number of its own unit. */
    private interface Measure {
        double read(ReportedValueReader reader, String text);
    }

    /** Reads the value the input stands on; empty where a fault was noted. */
    Optional<ReportedValue> read(JsonInput in) throws IOException {
        if (!in.isObject()) {
            return plain(in);
        }
        String pointer = in.pointer();
        long before = in.faults().count();
        Fields fields = new Fields(this);
        in.object(KEYS, fields);
        if (in.faults().count() > before) {
            return Optional.empty();
        }
        if (!fields.given) {
            in.missing(pointer, "value", Problem.MALFORMED_JSON, "Expected \"value\" in the object of a reading.");
            return Optional.empty();
        }
        if (fields.net.isPresent() != fields.background.isPresent()) {
            in.missing(pointer, fields.net.isPresent() ? "background_counts" : "net_counts", Problem.VALUE_OUT_OF_RANGE,
                "Expected net and background counts together.");
            return Optional.empty();
        }
        return fields.value.map(value -> kept(value, beside(fields), pointer));
    }

    private ReportedValue kept(ReportedValue value, ReportedValueReader.Beside beside, String pointer) {
        ReportedValue kept = ReportedValueReader.with(value, beside);
        ReportedValueReader.notKept(kept, beside).forEach(words -> notKept.add(new NotKept(pointer, words)));
        return kept;
    }

    /** What was said beside values that cannot keep it, since this was asked last. */
    List<NotKept> takeNotKept() {
        List<NotKept> taken = List.copyOf(notKept);
        notKept.clear();
        return taken;
    }

    private static ReportedValueReader.Beside beside(Fields fields) {
        Optional<Counts> counts = fields.net.isPresent()
            ? Optional.of(new Counts(fields.net.getAsDouble(), fields.background.getAsDouble())) : Optional.empty();
        return new ReportedValueReader.Beside(fields.uncertainty, counts, fields.limit, fields.line);
    }

    private Optional<ReportedValue> plain(JsonInput in) throws IOException {
        try {
            if (in.isNumber()) {
                return Optional.of(numbers.value(in.asWritten()));
            }
            if (in.isText()) {
                return Optional.of(texts.value(in.asWritten()));
            }
            if (in.isNull()) {
                return Optional.of(new ReportedValue.NotReported());
            }
            in.wrongKind(EXPECTED);
        } catch (Refusal refusal) {
            in.fault(IntakeFaults.problem(refusal.code()), refusal.getMessage());
        }
        return Optional.empty();
    }

    private OptionalDouble measure(JsonInput in, Measure measure) throws IOException {
        try {
            if (in.isNumber()) {
                return OptionalDouble.of(measure.read(numbers, in.asWritten()));
            }
            if (in.isText()) {
                return OptionalDouble.of(measure.read(texts, in.asWritten()));
            }
            in.wrongKind("a number");
        } catch (Refusal refusal) {
            in.fault(IntakeFaults.problem(refusal.code()), refusal.getMessage());
        }
        return OptionalDouble.empty();
    }

    private Optional<String> line(JsonInput in) throws IOException {
        Optional<String> text = in.text();
        try {
            return text.isPresent() ? texts.line(text.get()) : text;
        } catch (Refusal refusal) {
            in.fault(IntakeFaults.problem(refusal.code()), refusal.getMessage());
            return Optional.empty();
        }
    }
}
