package surfeit.http.measure;

import java.nio.charset.StandardCharsets;
import java.util.Locale;

/**
 * Writes metrics in the text format 0.0.4 of Prometheus: families, each with help, type and samples. Not thread-safe.
 */
final class MetricsText {
    /** How the values of a family behave. */
    enum Type { COUNTER, GAUGE, HISTOGRAM }

    private final StringBuilder text = new StringBuilder(16 << 10);

    /** Begins a family; its samples follow. */
    MetricsText family(String name, Type type, String help) {
        text.append("# HELP ").append(name).append(' ').append(escaped(help)).append('\n');
        text.append("# TYPE ").append(name).append(' ').append(type.name().toLowerCase(Locale.ROOT)).append('\n');
        return this;
    }

    /** @param labels names and values in turn */
    MetricsText sample(String name, double value, String... labels) {
        text.append(name);
        for (int i = 0; i < labels.length; i += 2) {
            text.append(i == 0 ? '{' : ',').append(labels[i]).append("=\"")
                .append(escaped(labels[i + 1]).replace("\"", "\\\"")).append('"');
        }
        text.append(labels.length > 0 ? "} " : " ").append(number(value)).append('\n');
        return this;
    }

    /** A family of one sample. */
    MetricsText single(String name, Type type, String help, double value) {
        return family(name, type, help).sample(name, value);
    }

    private static String escaped(String plain) {
        return plain.replace("\\", "\\\\").replace("\n", "\\n");
    }

    private static String number(double value) {
        if (value == Math.rint(value) && Math.abs(value) < 1L << 53) {
            return Long.toString((long) value);
        }
        return Double.isInfinite(value) ? (value > 0 ? "+Inf" : "-Inf") : Double.toString(value);
    }

    byte[] bytes() {
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }
}
