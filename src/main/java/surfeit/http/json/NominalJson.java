package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.composition.Basis;
import surfeit.composition.CompositionException;
import surfeit.composition.Nominal;
import surfeit.composition.NominalPart;
import surfeit.element.Element;
import surfeit.element.UnknownElementException;
import surfeit.lab.Problem;

/** A nominal composition as JSON: {@code {"unit": "at%", "elements": {"Ag": 60.1, "Cu": "balance"}}}. */
final class NominalJson {
    private static final Keys<Fields> KEYS = new Keys<Fields>("a nominal composition")
        .key("unit", (in, fields) -> fields.basis = unit(in))
        .key("elements", (in, fields) -> {
            fields.elementsPointer = in.pointer() + "/elements";
            in.entries("an object of element symbols", symbol -> part(in, symbol, fields.parts));
        });
    private static final Keys<PartFields> PART = new Keys<PartFields>("an element of a nominal")
        .key("value", (in, part) -> part.value = in.percentAsFraction())
        .key("tolerance", (in, part) -> part.tolerance = in.percentAsFraction())
        .key("low", (in, part) -> part.low = in.percentAsFraction())
        .key("high", (in, part) -> part.high = in.percentAsFraction());

    private NominalJson() {
    }

    private static final class Fields {
        private Optional<Basis> basis = Optional.empty();
        private String elementsPointer = "";
        private final Map<Element, NominalPart> parts = new LinkedHashMap<>();
    }

    private static final class PartFields {
        private OptionalDouble value = OptionalDouble.empty();
        private OptionalDouble tolerance = OptionalDouble.empty();
        private OptionalDouble low = OptionalDouble.empty();
        private OptionalDouble high = OptionalDouble.empty();
    }

    /** Reads the value of a key {@code nominal} or {@code true_composition}. */
    static Optional<Nominal> read(JsonInput in) throws IOException {
        String pointer = in.pointer();
        long before = in.faults().count();
        Fields fields = new Fields();
        if (!in.object(KEYS, fields) || in.faults().count() > before) {
            return Optional.empty();
        }
        if (fields.basis.isEmpty()) {
            in.missing(pointer, "unit", Problem.UNIT_MISSING,
                "Expected \"unit\": \"at%\" or \"wt%\" beside the elements.");
            return Optional.empty();
        }
        try {
            return Optional.of(new Nominal(fields.basis.get(), fields.parts));
        } catch (CompositionException e) {
            in.faults().add(pointer + "/elements", Problem.of(e), "", e.getMessage());
            return Optional.empty();
        }
    }

    /** Reads {@code "at%"} or {@code "wt%"}. */
    static Optional<Basis> unit(JsonInput in) throws IOException {
        String text = in.isText() ? in.asWritten() : "";
        for (Basis basis : Basis.values()) {
            if (basis.unit().equals(text)) {
                return Optional.of(basis);
            }
        }
        in.fault(Problem.UNIT_MISSING, "Expected the unit at% or wt%, got "
            + (text.isEmpty() ? "something else" : "\"" + text + "\"") + "; \"%\" alone could be either.");
        in.skip();
        return Optional.empty();
    }

    /** The element of a key, or a fault that names the nearest symbol. */
    static Optional<Element> element(JsonInput in, String symbol) throws IOException {
        try {
            return Optional.of(Element.of(symbol));
        } catch (UnknownElementException e) {
            in.fault(Problem.UNKNOWN_ELEMENT, e.getMessage());
            return Optional.empty();
        }
    }

    private static void part(JsonInput in, String symbol, Map<Element, NominalPart> parts) throws IOException {
        Optional<Element> element = element(in, symbol);
        if (element.isPresent() && parts.containsKey(element.get())) {
            in.fault(Problem.MALFORMED_JSON, "\"" + symbol + "\" stands twice in one object.");
            in.skip();
            return;
        }
        Optional<NominalPart> part = part(in);
        if (element.isPresent() && part.isPresent()) {
            parts.put(element.get(), part.get());
        }
    }

    private static Optional<NominalPart> part(JsonInput in) throws IOException {
        String pointer = in.pointer();
        long before = in.faults().count();
        PartFields fields = new PartFields();
        if (in.isNumber()) {
            fields.value = in.percentAsFraction();
        } else if (in.isText() && in.asWritten().equals("balance")) {
            return Optional.of(new NominalPart.Balance());
        } else if (in.isObject()) {
            in.object(PART, fields);
        } else {
            in.wrongKind("a number, {\"value\", \"tolerance\"}, {\"low\", \"high\"} or \"balance\"");
        }
        return in.faults().count() > before ? Optional.empty() : part(in, pointer, fields);
    }

    private static Optional<NominalPart> part(JsonInput in, String pointer, PartFields fields) {
        boolean point = fields.value.isPresent() && fields.low.isEmpty() && fields.high.isEmpty();
        boolean range = fields.low.isPresent() && fields.high.isPresent() && fields.value.isEmpty()
            && fields.tolerance.isEmpty();
        if (!point && !range) {
            in.faults().add(pointer, Problem.MALFORMED_JSON, "",
                "Expected \"value\" with or without \"tolerance\", or \"low\" with \"high\".");
            return Optional.empty();
        }
        try {
            return Optional.of(point
                ? new NominalPart.Point(fields.value.getAsDouble(), fields.tolerance.orElse(0))
                : new NominalPart.Range(fields.low.getAsDouble(), fields.high.getAsDouble()));
        } catch (CompositionException e) {
            in.faults().add(pointer, Problem.of(e), "", e.getMessage());
            return Optional.empty();
        }
    }

    /** Writes the nominal in the form it is read in. */
    static void write(JsonGenerator json, Nominal nominal) throws IOException {
        json.writeStartObject();
        json.writeStringField("unit", nominal.basis().unit());
        json.writeObjectFieldStart("elements");
        for (Map.Entry<Element, NominalPart> entry : nominal.parts().entrySet()) {
            json.writeFieldName(entry.getKey().symbol());
            write(json, entry.getValue());
        }
        json.writeEndObject();
        json.writeEndObject();
    }

    private static void write(JsonGenerator json, NominalPart part) throws IOException {
        if (part instanceof NominalPart.Balance) {
            json.writeString("balance");
        } else if (part instanceof NominalPart.Range range) {
            json.writeStartObject();
            json.writeNumberField("low", Numbers.stated(range.low()));
            json.writeNumberField("high", Numbers.stated(range.high()));
            json.writeEndObject();
        } else if (part instanceof NominalPart.Point point && point.tolerance() > 0) {
            json.writeStartObject();
            json.writeNumberField("value", Numbers.stated(point.value()));
            json.writeNumberField("tolerance", Numbers.stated(point.tolerance()));
            json.writeEndObject();
        } else if (part instanceof NominalPart.Point point) {
            json.writeNumber(Numbers.stated(point.value()));
        }
    }
}
