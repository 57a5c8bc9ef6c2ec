package surfeit.http;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import surfeit.http.json.FaultDocuments;
import surfeit.http.json.JsonFormat;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/** A refusal as {@code application/problem+json} (RFC 9457). */
final class ProblemJson {
    static final String MEDIA_TYPE = "application/problem+json";

    private ProblemJson() {
    }

    static byte[] of(ProblemException refusal, String requestId) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(512);
        try (JsonGenerator json = JsonFormat.generator(bytes)) {
            Problem problem = refusal.problem();
            json.writeStartObject();
            json.writeStringField("type", address(problem));
            json.writeStringField("title", problem.title());
            json.writeNumberField("status", problem.status());
            json.writeStringField("code", problem.code());
            json.writeStringField("detail", refusal.detail());
            json.writeStringField("request_id", requestId);
            if (refusal.setting().isPresent()) {
                json.writeStringField("setting", refusal.setting().get());
            }
            if (refusal.faultCount() > 0) {
                json.writeNumberField("fault_count", refusal.faultCount());
                FaultDocuments.write(json, "errors", refusal.faults());
            }
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException("Writing to memory failed.", e);
        }
        return bytes.toByteArray();
    }

    static String address(Problem problem) {
        return "/v1/problems/" + problem.code();
    }
}
