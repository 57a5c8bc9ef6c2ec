package surfeit.http.json;

import static surfeit.http.json.JsonFuzz.require;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import surfeit.element.Element;
import surfeit.element.Spelling;
import surfeit.intake.IntakeReport;
import surfeit.intake.Place;
import surfeit.intake.ReadSpot;
import surfeit.spot.Counts;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/** Holds the spots taken from a JSON body against the same body read as a tree of exact numbers. */
final class JsonOracle {
    private static final ObjectMapper JSON = JsonMapper.builder()
        .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
        .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES).build();

    private final byte[] body;
    private final boolean lines;

    JsonOracle(byte[] body, boolean lines) {
        this.body = body;
        this.lines = lines;
    }

    void check(List<ReadSpot> spots, IntakeReport report) throws IOException {
        String text = new String(body, StandardCharsets.UTF_8);
        List<String> documents = List.of(text.split("\n", -1));
        JsonNode whole = lines ? JSON.nullNode() : JSON.readTree(text);
        for (ReadSpot read : spots) {
            Place.Pointer place = (Place.Pointer) read.place();
            JsonNode node = lines ? JSON.readTree(documents.get((int) place.line().orElseThrow() - 1))
                : whole.at(place.pointer());
            checkSpot(read.spot(), node, whole);
        }
        long sent = lines ? documents.stream().filter(line -> !line.replaceAll("[ \t\r]", "").isEmpty()).count()
            : whole.path("spots").size();
        require(report.acceptedCount() + report.repeatedCount() + report.rejectedCount() == sent, sent + " spots sent, "
            + report.acceptedCount() + " taken, " + report.repeatedCount() + " repeated, " + report.rejectedCount()
            + " refused");
    }

    private static void checkSpot(Spot spot, JsonNode node, JsonNode whole) {
        requireName(node, "label", Optional.of(spot.label()));
        requireName(node, "particle", spot.particle());
        requireName(node, "feature", spot.feature());
        requireName(node.hasNonNull("session") ? node : whole, "session", spot.session());
        requireNumber(node, "beam_energy_kev", spot.conditions().beamEnergyKev());
        requireNumber(node, "live_time_s", spot.conditions().liveTimeS());
        requireNumber(node, "feature_size_um", spot.conditions().featureSizeUm());
        requireNumber(node, "tilt_deg", spot.conditions().tiltDeg());
        requirePercent(node, "total_percent", spot.conditions().rawTotal());
        Set<String> symbols = new HashSet<>();
        for (Map.Entry<String, JsonNode> entry : node.path("elements").properties()) {
            ReportedValue value = spot.values().get(Element.of(entry.getKey()));
            require(value != null, "nothing of " + entry.getKey());
            symbols.add(Element.of(entry.getKey()).symbol());
            checkValue(value, entry.getValue());
        }
        require(symbols.size() == spot.values().size(), "more elements than were sent");
    }

    private static void checkValue(ReportedValue value, JsonNode sent) {
        JsonNode plain = sent.isObject() ? sent.path("value") : sent;
        if (plain.isNull() || value instanceof ReportedValue.NotReported) {
            require(value instanceof ReportedValue.NotReported, "something of nothing");
            require(plain.isNull() || plain.isMissingNode() || plain.isTextual(), "nothing of " + plain);
            return;
        }
        if (plain.isTextual()) {
            require(stripped(plain.textValue()).equals(value.asReported()), "the text " + plain);
        } else {
            require(new BigDecimal(value.asReported()).equals(plain.decimalValue())
                || new BigDecimal(value.asReported()).compareTo(plain.decimalValue()) == 0, "the number " + plain);
            require(value instanceof ReportedValue.Measured, "a number became " + value);
        }
        if (value instanceof ReportedValue.Measured measured) {
            BigDecimal number = new BigDecimal(value.asReported().replace(',', '.').replace('\u2212', '-'));
            require(measured.fraction() == number.movePointLeft(2).doubleValue(), "the value of " + plain);
            requirePercent(sent, "u", measured.uncertainty());
            requirePercent(sent, "limit", measured.limit());
            requireNumber(sent, "net_counts", measured.counts().map(Counts::net).map(OptionalDouble::of)
                .orElse(OptionalDouble.empty()));
            requireText(sent, "line", measured.line());
        }
    }

    private static void requireName(JsonNode node, String key, Optional<String> value) {
        JsonNode sent = node.path(key);
        String text = sent.isTextual() ? Spelling.composed(stripped(sent.textValue())) : "";
        require(text.equals(value.orElse("")), key + " " + sent + " became " + value);
    }

    private static void requireText(JsonNode node, String key, Optional<String> value) {
        JsonNode sent = node.path(key);
        String text = sent.isTextual() ? stripped(sent.textValue()) : "";
        require(text.equals(value.orElse("")), key + " " + sent + " became " + value);
    }

    private static void requireNumber(JsonNode node, String key, OptionalDouble value) {
        JsonNode sent = node.path(key);
        boolean given = !sent.isMissingNode() && !sent.isNull();
        require(given == value.isPresent() || sent.isTextual(), key + " " + sent + " became " + value);
        if (sent.isNumber()) {
            require(sent.decimalValue().doubleValue() == value.getAsDouble(), key + " " + sent + " became " + value);
        }
    }

    private static void requirePercent(JsonNode node, String key, OptionalDouble fraction) {
        JsonNode sent = node.path(key);
        boolean given = !sent.isMissingNode() && !sent.isNull();
        require(given == fraction.isPresent() || sent.isTextual(), key + " " + sent + " became " + fraction);
        if (sent.isNumber()) {
            require(sent.decimalValue().movePointLeft(2).doubleValue() == fraction.getAsDouble(),
                key + " " + sent + " became " + fraction);
        }
    }

    private static String stripped(String text) {
        return text.replaceAll("^[\\s\\p{Z}\uFEFF\u000B]+|[\\s\\p{Z}\uFEFF\u000B]+$", "");
    }
}
