package surfeit.http.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;

/**
 * A body that {@code POST /v1/interpretations} takes, taken apart: what puts its sample on record, and what adds its spots.
 *
 * @param sample body of {@code PUT /v1/samples/{sample}}
 * @param spots  body of {@code POST /v1/samples/{sample}/spots}
 */
public record RequestParts(byte[] sample, byte[] spots) {
    private static final String SAMPLE = "sample";

    /** @throws IOException where it is no JSON object with a sample */
    public static RequestParts of(byte[] request) throws IOException {
        ObjectMapper json = new ObjectMapper();
        JsonNode whole = json.readTree(request);
        if (!(whole instanceof ObjectNode rest) || !whole.path(SAMPLE).isObject()) {
            throw new IOException("Expected a JSON object with \"" + SAMPLE + "\" and \"spots\".");
        }
        JsonNode sample = rest.remove(SAMPLE);
        return new RequestParts(json.writeValueAsBytes(sample), json.writeValueAsBytes(rest));
    }
}
