package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.Collection;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;
import surfeit.segregation.answer.Estimate;

/**
 * Small pieces every answer is written from. What has no value, and what has no bound, is {@code null}: JSON knows no
 * infinity.
 */
final class Written {
    private Written() {
    }

    static void number(JsonGenerator json, String name, double value) throws IOException {
        json.writeFieldName(name);
        if (Double.isFinite(value)) {
            json.writeNumber(value);
        } else {
            json.writeNull();
        }
    }

    static void number(JsonGenerator json, String name, OptionalDouble value) throws IOException {
        number(json, name, value.orElse(Double.NaN));
    }

    /** A fraction as percent. */
    static void percent(JsonGenerator json, String name, double fraction) throws IOException {
        number(json, name, Numbers.inPercent(fraction));
    }

    static void percent(JsonGenerator json, String name, OptionalDouble fraction) throws IOException {
        number(json, name, fraction.isPresent() ? Numbers.inPercent(fraction.getAsDouble()) : Double.NaN);
    }

    /** A value and the ends of its interval, as {@code _low} and {@code _high}. */
    static void estimate(JsonGenerator json, String name, Estimate estimate) throws IOException {
        number(json, name, estimate.value());
        number(json, name + "_low", estimate.low());
        number(json, name + "_high", estimate.high());
    }

    /** The same of fractions, as percent. */
    static void percentEstimate(JsonGenerator json, String name, Estimate fraction) throws IOException {
        percent(json, name, fraction.value());
        percent(json, name + "_low", fraction.low());
        percent(json, name + "_high", fraction.high());
    }

    static void text(JsonGenerator json, String name, Optional<String> value) throws IOException {
        if (value.isPresent()) {
            json.writeStringField(name, value.get());
        } else {
            json.writeNullField(name);
        }
    }

    static void texts(JsonGenerator json, String name, Collection<String> values) throws IOException {
        json.writeArrayFieldStart(name);
        for (String value : values) {
            json.writeString(value);
        }
        json.writeEndArray();
    }

    static void symbols(JsonGenerator json, String name, Collection<Element> elements) throws IOException {
        json.writeArrayFieldStart(name);
        for (Element element : elements) {
            json.writeString(element.symbol());
        }
        json.writeEndArray();
    }
}
