package surfeit.http;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads metrics strictly by the rules of Prometheus' text format 0.0.4 (prometheus.io, "Exposition formats", section
 * "Text format details", and "Data model" for names).
 */
final class ExpositionFormat {
    private static final Pattern COMMENT = Pattern.compile("# (HELP|TYPE) ([a-zA-Z_:][a-zA-Z0-9_:]*) (.+)");
    private static final Pattern SAMPLE =
        Pattern.compile("([a-zA-Z_:][a-zA-Z0-9_:]*)(?:\\{(.*)})? (\\S+)(?: (-?\\d+))?");
    private static final Pattern LABEL =
        Pattern.compile("([a-zA-Z_][a-zA-Z0-9_]*)=\"((?:[^\"\\\\\\n]|\\\\[\\\\\"n])*)\"(,|$)");
    private static final Set<String> TYPES = Set.of("counter", "gauge", "histogram", "summary", "untyped");

    /** One sample: its name, its labels and its value. */
    record Sample(String name, Map<String, String> labels, double value) {
    }

    private final Map<String, String> types = new LinkedHashMap<>();
    private final Set<String> helped = new HashSet<>();
    private final List<Sample> samples = new ArrayList<>();
    private final Set<String> closed = new HashSet<>();
    private String family = "";

    static List<Sample> read(String text) {
        ExpositionFormat format = new ExpositionFormat();
        require(text.endsWith("\n"), "the last line ends with a line feed");
        for (String line : text.split("\n")) {
            require(!line.isBlank(), "no blank line is expected here");
            if (line.startsWith("#")) {
                format.comment(line);
            } else {
                format.sample(line);
            }
        }
        format.types.forEach((name, type) -> {
            if (type.equals("histogram")) {
                format.requireHistogram(name);
            }
        });
        return format.samples;
    }

    private static void require(boolean holds, String rule) {
        if (!holds) {
            throw new AssertionError(rule);
        }
    }

    private void comment(String line) {
        Matcher matcher = COMMENT.matcher(line);
        require(matcher.matches(), "HELP or TYPE, a name and a text: " + line);
        String name = matcher.group(2);
        if (!name.equals(family)) {
            closed.add(family);
            family = name;
            require(!closed.contains(name), "all lines of a metric stand together: " + line);
        }
        if (matcher.group(1).equals("HELP")) {
            require(helped.add(name), "one HELP a metric: " + line);
        } else {
            require(TYPES.contains(matcher.group(3)), "a known type: " + line);
            require(types.put(name, matcher.group(3)) == null, "one TYPE a metric, before its samples: " + line);
        }
    }

    private void sample(String line) {
        Matcher matcher = SAMPLE.matcher(line);
        require(matcher.matches(), "name, labels, value: " + line);
        String name = matcher.group(1);
        String type = types.get(family);
        require(name.equals(family) || "histogram".equals(type)
            && name.matches(Pattern.quote(family) + "_(bucket|sum|count)"),
            "samples follow the TYPE of their metric: " + line);
        Sample sample = new Sample(name, labels(matcher.group(2), line), value(matcher.group(3)));
        require(samples.stream().noneMatch(other -> other.name().equals(name) && other.labels()
            .equals(sample.labels())),
            "a combination of name and labels stands once: " + line);
        require(!"counter".equals(type) || sample.value() >= 0, "counters are not negative: " + line);
        samples.add(sample);
    }

    private static Map<String, String> labels(String text, String line) {
        Map<String, String> labels = new TreeMap<>();
        String rest = text == null ? "" : text;
        while (!rest.isEmpty()) {
            Matcher matcher = LABEL.matcher(rest);
            require(matcher.lookingAt(), "label=\"value\" with commas between: " + line);
            require(labels.put(matcher.group(1), matcher.group(2)) == null, "a label stands once: " + line);
            rest = rest.substring(matcher.end());
        }
        return labels;
    }

    private static double value(String text) {
        return switch (text) {
            case "+Inf" -> Double.POSITIVE_INFINITY;
            case "-Inf" -> Double.NEGATIVE_INFINITY;
            default -> Double.parseDouble(text);
        };
    }

    /** Buckets grow, end with {@code le="+Inf"}, and that one equals the count. */
    private void requireHistogram(String name) {
        Map<Map<String, String>, TreeMap<Double, Double>> buckets = new HashMap<>();
        for (Sample sample : samples) {
            if (sample.name().equals(name + "_bucket")) {
                Map<String, String> labels = new TreeMap<>(sample.labels());
                double end = value(labels.remove("le"));
                buckets.computeIfAbsent(labels, key -> new TreeMap<>()).put(end, sample.value());
            }
        }
        buckets.forEach((labels, ends) -> {
            double before = 0;
            for (double count : ends.values()) {
                require(count >= before, "a bucket holds those below it: " + name + labels);
                before = count;
            }
            require(ends.lastKey() == Double.POSITIVE_INFINITY, "a last bucket +Inf: " + name + labels);
            require(samples.contains(new Sample(name + "_count", labels, before)), "count is that of +Inf: " + name
                + labels);
            require(samples.stream().anyMatch(sample -> sample.name().equals(name + "_sum") && sample.labels()
                .equals(labels)),
                "a sum: " + name + labels);
        });
    }
}
