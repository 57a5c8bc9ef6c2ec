package surfeit.xray;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import surfeit.element.Element;

/** Reads the Monte Carlo cases of shared/vectors/physics-*.json. */
final class PhysicsVectors {

    private PhysicsVectors() {
    }

    static List<JsonNode> cases(String name) {
        try {
            List<JsonNode> cases = new ArrayList<>();
            new ObjectMapper().readTree(Path.of("shared/vectors/physics-" + name + ".json").toFile()).get("cases")
                .forEach(cases::add);
            return cases;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** SiK, CuL, AuM ... of the cases as an analytical line. */
    static Line line(String caseName) {
        String symbol = caseName.substring(0, caseName.length() - 1);
        return Samples.line(symbol, caseName.charAt(caseName.length() - 1) + "a");
    }

    static Map<Element, Double> massFractions(JsonNode node) {
        Map<Element, Double> fractions = new TreeMap<>();
        node.properties().forEach(field -> fractions.put(Element.of(field.getKey()), field.getValue().asDouble()));
        return fractions;
    }
}
