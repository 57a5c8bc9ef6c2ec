package surfeit.lab;

import java.util.Arrays;
import java.util.Map;

/**
 * An answer as it was given, kept to be given again.
 *
 * @param status  its status number
 * @param headers its header fields worth repeating
 * @param body    its bytes
 */
public record KeptAnswer(int status, Map<String, String> headers, byte[] body) {
    public KeptAnswer {
        headers = Map.copyOf(headers);
        body = body.clone();
    }

    @Override
    public byte[] body() {
        return body.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof KeptAnswer answer && answer.status == status && answer.headers.equals(headers)
            && Arrays.equals(answer.body, body);
    }

    @Override
    public int hashCode() {
        return 31 * status + Arrays.hashCode(body);
    }
}
