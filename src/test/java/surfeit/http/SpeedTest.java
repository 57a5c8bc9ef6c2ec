package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.management.OperatingSystemMXBean;
import io.javalin.Javalin;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.lang.management.ManagementFactory;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/**
 * What an interpretation costs against an echo of the same bytes in the same run; printed, since a figure is no
 * verdict.
 */
class SpeedTest {
    private static final OperatingSystemMXBean PROCESS =
        (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    private static final int ROUNDS = 15;
    private static final int WARM_UP = 6000;
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
    void five_spots_of_four_elements_against_an_echo() throws IOException {
        ObjectMapper json = new ObjectMapper();
        Javalin echo = Javalin.create(config -> {
            config.startup.showJavalinBanner = false;
            config.routes.post("/echo", context ->
                context.result(json.writeValueAsBytes(json.readTree(context.bodyAsBytes()))));
        });
        try (RunningService service = RunningService.start()) {
            echo.start("127.0.0.1", 0);
            Cost[] echoes = new Cost[ROUNDS];
            Cost[] ours = new Cost[ROUNDS];
            round(echo.port(), "/echo", WARM_UP);
            round(service.server().port(), "/v1/interpretations", WARM_UP);
            for (int i = 0; i < ROUNDS; i++) {
                echoes[i] = round(echo.port(), "/echo", REQUESTS);
                ours[i] = round(service.server().port(), "/v1/interpretations", REQUESTS);
            }
            print("by the clock", median(ours, Cost::nanos), median(echoes, Cost::nanos));
            print("in processor time, sender included", median(ours, Cost::cpuNanos), median(echoes, Cost::cpuNanos));
            assertThat(median(echoes, Cost::nanos)).isPositive();
        } finally {
            echo.stop();
        }
    }

    /** Mean cost of one request: by the clock, and in processor time of this process, which other programs do not add to. */
    private record Cost(double nanos, double cpuNanos) {
    }

    private static void print(String how, double ours, double echo) {
        System.out.printf(Locale.ROOT, "interpretation of 5 spots x 4 elements %s: %.0f us, echo of the same bytes: "
            + "%.0f us, ratio %.2f%n", how, ours / 1000, echo / 1000, ours / echo);
    }

    /** Mean cost of one request over one connection. */
    private static Cost round(int port, String address, int requests) throws IOException {
        byte[] request = ("POST " + address
            + " HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: "
            + QUATERNARY.length() + "\r\n\r\n" + QUATERNARY).getBytes(StandardCharsets.US_ASCII);
        try (Socket socket = new Socket("127.0.0.1", port)) {
            socket.setTcpNoDelay(true);
            InputStream in = new BufferedInputStream(socket.getInputStream(), 1 << 16);
            long start = System.nanoTime();
            long cpu = PROCESS.getProcessCpuTime();
            for (int i = 0; i < requests; i++) {
                socket.getOutputStream().write(request);
                skipAnswer(in);
            }
            return new Cost((double) (System.nanoTime() - start) / requests,
                (double) (PROCESS.getProcessCpuTime() - cpu) / requests);
        }
    }

    private static void skipAnswer(InputStream in) throws IOException {
        int length = 0;
        String line = line(in);
        if (!line.contains(" 200")) {
            throw new IOException(line);
        }
        while (!line.isEmpty()) {
            if (line.toLowerCase(Locale.ROOT).startsWith("content-length:")) {
                length = Integer.parseInt(line.substring(15).strip());
            }
            line = line(in);
        }
        in.skipNBytes(length);
    }

    private static String line(InputStream in) throws IOException {
        StringBuilder line = new StringBuilder();
        for (int c = in.read(); c != '\n'; c = in.read()) {
            if (c != '\r') {
                line.append((char) c);
            }
        }
        return line.toString();
    }

    private static double median(Cost[] costs, ToDoubleFunction<Cost> part) {
        return Arrays.stream(costs).mapToDouble(part).sorted().toArray()[costs.length / 2];
    }
}
