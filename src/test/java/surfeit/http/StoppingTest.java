package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import org.junit.jupiter.api.Test;

/** What a service that is told to stop does with a request under way and with new ones. */
class StoppingTest {
    private static final String BODY = "label,Ag at%,Cu at%\nP1-1,21.2,78.8\n";

    @Test
    void a_stopping_service_says_no_to_readiness_checks_and_new_work_and_answers_what_is_under_way() throws Exception {
        try (RunningService service = RunningService.start();
             Socket slow = new Socket("127.0.0.1", service.server().port())) {
            service.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
            OutputStream out = slow.getOutputStream();
            out.write(("POST /v1/samples/A7/spots HTTP/1.1\r\nHost: localhost\r\nContent-Type: text/csv\r\n"
                + "Content-Length: " + BODY.length() + "\r\nConnection: close\r\n\r\n" + BODY.substring(0, 20))
                .getBytes(StandardCharsets.US_ASCII));
            out.flush();
            Thread.sleep(200);
            Thread stop = new Thread(service.server()::stop);
            stop.start();
            Thread.sleep(200);

            assertThat(service.get("/readyz").code()).isEqualTo("shutting-down");
            assertThat(service.get("/healthz").status()).isEqualTo(200);
            assertThat(service.get("/v1/samples").code()).isEqualTo("shutting-down");
            assertThat(stop.isAlive()).isTrue();

            out.write(BODY.substring(20).getBytes(StandardCharsets.US_ASCII));
            out.flush();
            try (InputStream in = slow.getInputStream()) {
                assertThat(new String(in.readAllBytes(), StandardCharsets.UTF_8)).startsWith("HTTP/1.1 201 ");
            }
            stop.join(5000);
            assertThat(stop.isAlive()).isFalse();
            assertThat(service.laboratory().sample("A7").spotCount()).isEqualTo(1);
        }
    }

    @Test
    void a_service_without_work_stops_at_once() {
        try (RunningService service = RunningService.start()) {
            service.get("/v1");
            long start = System.nanoTime();
            service.server().stop();
            assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(5));
        }
    }
}
