package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;

/** Cases of {@code src/test/resources/differential}: questions with what another program computed for them. */
final class ComputedOutside {
    private static final double ABSOLUTE = 1e-9;
    private static final ObjectMapper JSON = new ObjectMapper();

    private ComputedOutside() {
    }

    static List<JsonNode> cases(String name) throws IOException {
        try (InputStream file = ComputedOutside.class.getResourceAsStream("/differential/" + name + ".json")) {
            return list(JSON.readTree(file).path("cases"));
        }
    }

    static List<JsonNode> list(JsonNode array) {
        List<JsonNode> list = new ArrayList<>();
        array.forEach(list::add);
        return list;
    }

    /** Whatever is expected must be found, numbers within a relative difference; more may be found. */
    static void requireAll(double relative, String where, JsonNode expected, JsonNode found) {
        if (expected.isObject()) {
            expected.properties().forEach(field ->
                requireAll(relative, where + "/" + field.getKey(), field.getValue(), found.path(field.getKey())));
        } else if (expected.isArray()) {
            assertThat(found.size()).as(where).isEqualTo(expected.size());
            for (int i = 0; i < expected.size(); i++) {
                requireAll(relative, where + "/" + i, expected.get(i), found.get(i));
            }
        } else if (expected.isNumber() && found.isNumber()) {
            double number = expected.asDouble();
            assertThat(found.asDouble()).as(where).isCloseTo(number, within(ABSOLUTE + relative * Math.abs(number)));
        } else {
            assertThat(found).as(where).isEqualTo(expected);
        }
    }
}
