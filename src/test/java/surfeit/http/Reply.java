package surfeit.http;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.http.HttpHeaders;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** An answer of the service in a test. */
record Reply(int status, HttpHeaders headers, byte[] body) {
    private static final ObjectMapper JSON = new ObjectMapper();

    String text() {
        return new String(body, StandardCharsets.UTF_8);
    }

    JsonNode json() {
        try {
            return JSON.readTree(body);
        } catch (IOException e) {
            throw new UncheckedIOException(text(), e);
        }
    }

    Optional<String> header(String name) {
        return headers.firstValue(name);
    }

    String etag() {
        return header("ETag").orElseThrow();
    }

    /** Media type without parameters; empty where there is no body. */
    String mediaType() {
        return header("Content-Type").map(type -> type.split(";")[0].strip()).orElse("");
    }

    /** The problem code of a refusal. */
    String code() {
        return json().path("code").asText();
    }
}
