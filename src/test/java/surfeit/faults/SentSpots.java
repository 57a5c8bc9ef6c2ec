package surfeit.faults;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;

/** One request with spots, and how to send it: an invented Ag-Cu powder, values as a workstation prints them. */
record SentSpots(String sample, String mediaType, String body, Optional<String> key,
                 Map<String, String> copperByLabel) {
    private static final String CSV = "text/csv";
    private static final String JSON = "application/json";

    /** A table of spots. */
    static SentSpots table(String sample, String prefix, int count, Random random) {
        Map<String, String> copper = values(prefix, count, random);
        return new SentSpots(sample, CSV, csv(copper), Optional.empty(), copper);
    }

    /** A single spot. */
    static SentSpots single(String sample, String label, Random random) {
        Map<String, String> copper = values(label, 1, random);
        return new SentSpots(sample, JSON, json(copper), Optional.empty(), copper);
    }

    /** A few spots under an {@code Idempotency-Key}. */
    static SentSpots keyed(String sample, String prefix, int count, Random random) {
        Map<String, String> copper = values(prefix, count, random);
        return new SentSpots(sample, JSON, json(copper), Optional.of(sample + "-" + prefix), copper);
    }

    private static Map<String, String> values(String prefix, int count, Random random) {
        Map<String, String> copper = new LinkedHashMap<>();
        for (int i = 0; i < count; i++) {
            copper.put(prefix + "." + i, String.format(Locale.ROOT, "%.1f", 60 + 30 * random.nextDouble()));
        }
        return copper;
    }

    /** The table of these spots: particles P0 to P3, features by the last digit of the label. */
    static String csv(Map<String, String> copperByLabel) {
        StringBuilder table = new StringBuilder("label,particle,feature,Ag at%,Cu at%\n");
        copperByLabel.forEach((label, copper) -> table.append(label).append(',').append(particle(label)).append(',')
            .append(feature(label)).append(',').append(silver(copper)).append(',').append(copper).append('\n'));
        return table.toString();
    }

    private static String json(Map<String, String> copperByLabel) {
        List<String> spots = new ArrayList<>();
        copperByLabel.forEach((label, copper) ->
            spots.add("{\"label\": \"" + label + "\", \"particle\": \"" + particle(label)
                + "\", \"feature\": \"" + feature(label) + "\", \"elements\": {\"Ag\": \"" + silver(copper)
                + "\", \"Cu\": \"" + copper + "\"}}"));
        return "{\"unit\": \"at%\", \"spots\": [" + String.join(", ", spots) + "]}";
    }

    private static String particle(String label) {
        return "P" + Math.floorMod(label.hashCode(), 4);
    }

    private static String feature(String label) {
        return Math.floorMod(label.hashCode(), 3) == 0 ? "dark patch" : "rim";
    }

    private static String silver(String copper) {
        return String.format(Locale.ROOT, "%.1f", 100 - Double.parseDouble(copper));
    }
}
