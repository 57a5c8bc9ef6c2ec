package surfeit.rival;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.Nominal;
import surfeit.http.json.InterpretationRequest;
import surfeit.intake.IntakeOptions;
import surfeit.lab.Upload;
import surfeit.segregation.Interpreter;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.blocks.SpotSource;

/**
 * An invented sample in short: groups of equal spots, spread over particles with a fixed scatter, in the words of a
 * request. Nothing here was measured.
 */
record InventedCase(String name, JsonNode node) {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Interpreter INTERPRETER = new Interpreter();
    /** Scatter between particles and, half of it, between spots, relative, unless the group states another. */
    private static final double SCATTER = 0.01;

    static List<InventedCase> read(String file) {
        List<InventedCase> cases = new ArrayList<>();
        try {
            JSON.readTree(Path.of("src/test/resources/rivals", file).toFile()).get("cases")
                .forEach(node -> cases.add(new InventedCase(node.get("name").asText(), node)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return cases;
    }

    @Override
    public String toString() {
        return name;
    }

    String expectedCode() {
        return node.get("expect").get("code").asText();
    }

    Rival.CouldExplain expectedStrength() {
        return node.get("expect").get("at_least").asText().equals("yes") ? Rival.CouldExplain.YES
            : Rival.CouldExplain.IN_PART;
    }

    Interpretation interpret() {
        return interpret(request());
    }

    static Interpretation interpret(InterpretationRequest request) {
        Nominal nominal = request.sample().nominal().or(() -> request.sample().alloy()
            .map(alloy -> AlloyCatalogue.packaged().require(alloy).nominal())).orElseThrow();
        return INTERPRETER.interpret(request.sample(), nominal, AlloyCatalogue.packaged().phasesOf(nominal),
            SpotSource.of(request.spots()), GroupBy.FEATURE, 0.003);
    }

    GroupFinding group(Interpretation interpretation) {
        String wanted = node.path("expect").path("group").asText("");
        return interpretation.groups().stream().filter(group -> wanted.isEmpty() || group.name().equals(wanted))
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException(name + ": no group " + wanted));
    }

    InterpretationRequest request() {
        ObjectNode body = JSON.createObjectNode();
        body.set("sample", node.get("sample"));
        body.set("unit", node.get("unit"));
        ArrayNode spots = body.putArray("spots");
        int number = 0;
        for (JsonNode group : node.get("groups")) {
            for (int p = 0; p < group.path("particles").asInt(4); p++) {
                for (int s = 0; s < group.path("spots").asInt(2); s++) {
                    spots.add(spot(group, p, s, ++number));
                }
            }
        }
        return read(body);
    }

    private static ObjectNode spot(JsonNode group, int p, int s, int number) {
        ObjectNode spot = JSON.createObjectNode();
        spot.put("label", "s" + number);
        spot.put("particle", group.path("prefix").asText("P") + (p + 1));
        group.properties().forEach(entry -> {
            if (!List.of("particles", "spots", "elements", "scatter", "prefix", "outlier").contains(entry.getKey())) {
                spot.set(entry.getKey(), entry.getValue());
            }
        });
        JsonNode values = group.has("outlier") && p == 0 ? group.get("outlier") : group.get("elements");
        ObjectNode elements = spot.putObject("elements");
        double scatter = group.path("scatter").asDouble(SCATTER);
        int place = 0;
        for (var entry : values.properties()) {
            place++;
            elements.set(entry.getKey(), scattered(entry.getValue(), scatter * pattern(p, s, place)));
        }
        return spot;
    }

    /** A fixed pattern between -1 and 1 with the particle's part twice that of the spot. */
    private static double pattern(int p, int s, int place) {
        return (2 * Math.sin(2.4 * (p + 1) + 1.7 * place) + Math.sin(4.1 * (s + 1) + 2.9 * (p + 1) + place)) / 3;
    }

    private static JsonNode scattered(JsonNode value, double relative) {
        if (value.isNumber()) {
            return JSON.getNodeFactory().numberNode(Math.round(value.asDouble() * (1 + relative) * 100) / 100.0);
        }
        if (value.isObject() && value.has("value")) {
            ObjectNode copy = value.deepCopy();
            copy.set("value", scattered(value.get("value"), relative));
            return copy;
        }
        return value;
    }

    private static InterpretationRequest read(ObjectNode body) {
        byte[] bytes = body.toString().getBytes(StandardCharsets.UTF_8);
        return read(bytes);
    }

    static InterpretationRequest read(byte[] bytes) {
        try {
            return InterpretationRequest.read(new Upload() {
                @Override
                public InputStream open() {
                    return new ByteArrayInputStream(bytes);
                }

                @Override
                public String mediaType() {
                    return "application/json";
                }

                @Override
                public Optional<String> fileName() {
                    return Optional.empty();
                }
            }, IntakeOptions.DEFAULT);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
