package surfeit.http;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Requests to begin with, made of the OpenAPI document: every operation, with its examples for path, query, header and
 * body. A request is its first line, header lines, an empty line and the body, with LF at line ends.
 */
final class RequestSeeds {
    private RequestSeeds() {
    }

    static List<byte[]> all() {
        List<byte[]> seeds = new ArrayList<>();
        for (OpenApi.Operation operation : OpenApi.DOCUMENT.operations()) {
            List<JsonNode> parameters = new ArrayList<>();
            JsonNode path = OpenApi.DOCUMENT.root().path("paths").path(operation.path());
            path.path("parameters").forEach(each -> parameters.add(OpenApi.DOCUMENT.followed(each)));
            operation.node().path("parameters").forEach(each -> parameters.add(OpenApi.DOCUMENT.followed(each)));
            String head = operation.method() + " " + address(operation.path(), parameters) + "\n";
            String fields = fields(parameters);
            JsonNode body = OpenApi.DOCUMENT.followed(operation.node().path("requestBody"));
            if (!body.has("content")) {
                seeds.add(bytes(head + fields + "\n"));
            }
            for (Map.Entry<String, JsonNode> content : body.path("content").properties()) {
                for (String example : examples(content.getValue())) {
                    seeds.add(bytes(head + "Content-Type: " + content.getKey() + "\n" + fields + "\n" + example));
                }
            }
        }
        return seeds;
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static String address(String path, List<JsonNode> parameters) {
        String address = path;
        StringBuilder query = new StringBuilder();
        for (JsonNode parameter : parameters) {
            String name = parameter.path("name").asText();
            String value = URLEncoder.encode(example(parameter), StandardCharsets.UTF_8);
            if (parameter.path("in").asText().equals("path")) {
                address = address.replace("{" + name + "}", example(parameter));
            } else if (parameter.path("in").asText().equals("query") && !value.isEmpty() && !name.equals("cursor")) {
                query.append(query.isEmpty() ? '?' : '&').append(name).append('=').append(value);
            }
        }
        return address + query;
    }

    private static String fields(List<JsonNode> parameters) {
        StringBuilder fields = new StringBuilder("Accept: */*\n");
        for (JsonNode parameter : parameters) {
            String name = parameter.path("name").asText();
            if (parameter.path("in").asText().equals("header") && !name.startsWith("If-")) {
                fields.append(name).append(": ").append(example(parameter)).append('\n');
            }
        }
        return fields.toString();
    }

    private static String example(JsonNode parameter) {
        JsonNode found = parameter.path("example");
        return found.isMissingNode() ? parameter.path("schema").path("default").asText("") : found.asText();
    }

    private static List<String> examples(JsonNode content) {
        List<String> all = new ArrayList<>();
        if (content.has("example")) {
            all.add(text(content.path("example")));
        }
        content.path("examples").forEach(each -> all.add(text(OpenApi.DOCUMENT.followed(each).path("value"))));
        return all;
    }

    private static String text(JsonNode example) {
        return example.isTextual() ? example.textValue() : example.toString();
    }
}
