package surfeit.http;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** A sample on record in a service that is asked for its segregation over HTTP. */
public final class AskedSample implements AutoCloseable {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final byte[] QUESTION =
        "GET /v1/samples/asked/segregation HTTP/1.1\r\nHost: localhost\r\n\r\n".getBytes(StandardCharsets.US_ASCII);
    private static final int TIMES = 200;

    private final RunningService service = RunningService.start();

    /**
     * @param description JSON of the sample; empty where the table holds it
     * @param table       JSON, or CSV
     */
    public AskedSample(byte[] description, byte[] table) throws IOException {
        String sample = new String(description, StandardCharsets.UTF_8);
        String spots = new String(table, StandardCharsets.UTF_8);
        String form = "text/csv";
        if (spots.startsWith("{")) {
            ObjectNode document = (ObjectNode) JSON.readTree(spots);
            sample = document.remove("sample").toString();
            spots = document.toString();
            form = "application/json";
        }
        service.put("/v1/samples/asked", sample);
        service.post("/v1/samples/asked/spots", form, spots);
    }

    /** Least time of one request over some rounds, in us by the clock. */
    public double leastMicroseconds(int warmUp, int rounds) throws IOException {
        OneConnection.send(service.server().port(), QUESTION, warmUp);
        double[] nanos = new double[rounds];
        for (int i = 0; i < rounds; i++) {
            nanos[i] = OneConnection.send(service.server().port(), QUESTION, TIMES).nanos();
        }
        return Arrays.stream(nanos).min().orElseThrow() / 1000;
    }

    @Override
    public void close() {
        service.close();
    }
}
