package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import surfeit.lab.Occasion;
import surfeit.lab.TokenRequest;
import surfeit.lab.TokenScope;
import surfeit.lab.TokenSecret;

/** Streams have a limit of their own, and are no requests to be counted. */
class StreamLimitTest {
    private static final RequestLimits TWO_STREAMS = new RequestLimits(1 << 20, 1 << 20, 20, 16 << 10, 1, 2, 100, 100,
        Duration.ofSeconds(60),
        Duration.ofSeconds(60));

    private final HttpClient client = HttpClient.newHttpClient();
    private final CountDownLatch end = new CountDownLatch(1);

    private void stream(Exchange exchange) throws IOException, InterruptedException {
        try (OutputStream out = exchange.answer().stream(Form.NDJSON.contentType())) {
            out.write("{}\n".repeat(100_000).getBytes(StandardCharsets.UTF_8));
            out.flush();
            end.await(20, TimeUnit.SECONDS);
        }
    }

    private HttpResponse<?> open(Server server, String token) throws IOException, InterruptedException {
        return client.send(HttpRequest.newBuilder(URI.create(server.address() + "/v1/stream"))
            .header("Authorization", "Bearer " + token).build(),
            HttpResponse.BodyHandlers.ofInputStream());
    }

    @Test
    void a_stream_more_than_allowed_is_refused_until_another_ends() throws Exception {
        try (RunningService lab = RunningService.start()) {
            RouteTable table = new RouteTable(List.of(Route.get("/v1/stream", Scope.READ).forms(Form.NDJSON).stream()
                .to(this::stream)));
            String token = lab.laboratory().access().issue(new TokenRequest("watcher", Set.of(TokenScope.READ),
                Optional.empty()),
                new byte[TokenSecret.RANDOM_BYTES], new Occasion("test", RunningService.NOW)).secret();
            Clock clock = Clock.fixed(RunningService.NOW, ZoneOffset.UTC);
            try (Server server = Server.start(ServerSettings.DEFAULT.withPort(0).withRequests(TWO_STREAMS), table,
                lab.laboratory(),
                    clock, RunningService.state(lab.laboratory()))) {
                assertThat(open(server, token).statusCode()).isEqualTo(200);
                assertThat(open(server, token).statusCode()).isEqualTo(200);
                HttpResponse<?> third = open(server, token);
                assertThat(third.statusCode()).isEqualTo(429);
                assertThat(third.headers().firstValue("Retry-After")).hasValue("5");
                end.countDown();
                assertThat(opensAgain(server, token)).isTrue();
            }
        }
    }

    private boolean opensAgain(Server server, String token) throws IOException, InterruptedException {
        for (int i = 0; i < 100; i++) {
            if (open(server, token).statusCode() == 200) {
                return true;
            }
            Thread.sleep(50);
        }
        return false;
    }
}
