package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/**
 * What an interpretation costs against an echo in the same run; printed, since a figure is no verdict. The echo of the
 * same bytes reads the same request and writes the same answer, both through Jackson, and does nothing between; the echo
 * of the request alone gives back the 0.9 KB it was sent where the interpretation gives 13 KB.
 */
class SpeedTest {
    private static final int ROUNDS = 15;
    private static final int WARM_UP = 20_000;
    private static final int REQUESTS = 400;
    private static final String QUATERNARY = "{\"sample\": {\"nominal\": {\"unit\": \"at%\", \"elements\": {\"Ag\": "
        + "56, \"Cu\": 22, \"Zn\": 17,"
        + " \"Sn\": 5}}}, \"unit\": \"at%\", \"session\": \"s1\", \"spots\": [" + spot("P1", 55.8, 22.3, 16.8, 5.1)
            + ", "
        + spot("P2", 54.9, 23.1, 17.0, 5.0) + ", " + spot("P3", 56.6, 21.2, 17.3, 4.9) + ", " + spot("P4", 55.2, 22.8,
            16.9, 5.1) + ", "
        + spot("P5", 56.1, 21.9, 17.1, 4.9) + "]}";

    private static String spot(String particle, double... values) {
        return String.format(
            Locale.ROOT, "{\"label\": \"%s-1\", \"particle\": \"%s\", \"feature\": \"matrix\", \"elements\": "
            + "{\"Ag\": %s, \"Cu\": %s,"
            + " \"Zn\": %s, \"Sn\": %s}}", particle, particle, values[0], values[1], values[2], values[3]);
    }

    @Test
    void five_spots_of_four_elements_against_an_echo() throws Exception {
        ObjectMapper json = new ObjectMapper();
        try (RunningService service = RunningService.start()) {
            JsonNode answer = json.readTree(service.post("/v1/interpretations", QUATERNARY).body());
            Javalin echo = Javalin.create(config -> {
                config.startup.showJavalinBanner = false;
                config.routes.post("/echo", context -> send(context, json, json.readTree(context.bodyAsBytes())));
                config.routes.post("/same", context -> {
                    json.readTree(context.bodyAsBytes());
                    send(context, json, answer);
                });
            }).start("127.0.0.1", 0);
            try {
                measure(new Address(echo.port(), "/echo"), new Address(echo.port(), "/same"),
                    new Address(service.server().port(), "/v1/interpretations"));
            } finally {
                echo.stop();
            }
        }
    }

    private static void send(Context context, ObjectMapper json, JsonNode document) throws IOException {
        byte[] bytes = json.writeValueAsBytes(document);
        context.res().setContentType("application/json");
        context.res().setContentLength(bytes.length);
        context.res().getOutputStream().write(bytes);
    }

    private static void measure(Address... addresses) throws IOException {
        OneConnection.Cost[][] costs = new OneConnection.Cost[addresses.length][ROUNDS];
        for (Address address : addresses) {
            round(address, WARM_UP);
        }
        for (int i = 0; i < ROUNDS; i++) {
            for (int j = 0; j < addresses.length; j++) {
                costs[j][i] = round(addresses[j], REQUESTS);
            }
        }
        print("by the clock", costs, OneConnection.Cost::nanos);
        print("in processor time, sender included", costs, OneConnection.Cost::cpuNanos);
        assertThat(median(costs[1], OneConnection.Cost::nanos)).isPositive();
    }

    private record Address(int port, String path) {
    }

    private static void print(String how, OneConnection.Cost[][] costs, ToDoubleFunction<OneConnection.Cost> part) {
        double request = median(costs[0], part);
        double same = median(costs[1], part);
        double ours = median(costs[2], part);
        System.out.printf(Locale.ROOT, "interpretation of 5 spots x 4 elements %s: %.0f us, echo of the same bytes: "
            + "%.0f us, ratio %.2f (echo of the request alone: %.0f us, ratio %.2f)%n", how, ours / 1000, same / 1000,
            ours / same, request / 1000, ours / request);
    }

    private static OneConnection.Cost round(Address address, int requests) throws IOException {
        return OneConnection.send(address.port(), ("POST " + address.path()
            + " HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: "
            + QUATERNARY.length() + "\r\n\r\n" + QUATERNARY).getBytes(StandardCharsets.US_ASCII), requests);
    }

    private static double median(OneConnection.Cost[] costs, ToDoubleFunction<OneConnection.Cost> part) {
        return Arrays.stream(costs).mapToDouble(part).sorted().toArray()[costs.length / 2];
    }
}
