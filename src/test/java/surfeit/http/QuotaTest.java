package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import surfeit.lab.TokenScope;

/** A token may send so many requests a second, and is told when to go on. */
class QuotaTest {
    private static final long SECOND = 1_000_000_000L;

    @Test
    void one_second_s_worth_may_come_at_once_and_then_as_many_as_the_rate() {
        AtomicLong now = new AtomicLong(Long.MAX_VALUE - SECOND / 2);
        Quota quota = new Quota(10, now::get);
        assertThat(taken(quota, "a", 20)).isEqualTo(10);
        assertThat(quota.take("a")).isEqualTo(Duration.ofMillis(100));
        now.addAndGet(SECOND / 4);
        assertThat(taken(quota, "a", 20)).isEqualTo(2);
        now.addAndGet(SECOND);
        assertThat(taken(quota, "a", 20)).isEqualTo(10);
    }

    @Test
    void a_steady_sender_at_the_rate_is_never_refused() {
        AtomicLong now = new AtomicLong();
        Quota quota = new Quota(100, now::get);
        for (int i = 0; i < 5_000; i++) {
            assertThat(quota.take("a")).isZero();
            now.addAndGet(SECOND / 100);
        }
    }

    @Test
    void tokens_do_not_use_up_each_other_s_allowance() {
        Quota quota = new Quota(3, () -> 0);
        assertThat(taken(quota, "a", 5)).isEqualTo(3);
        assertThat(taken(quota, "b", 5)).isEqualTo(3);
    }

    private static int taken(Quota quota, String token, int tries) {
        int taken = 0;
        for (int i = 0; i < tries; i++) {
            taken += quota.take(token).isZero() ? 1 : 0;
        }
        return taken;
    }

    @Test
    void a_token_that_sends_too_much_is_told_when_to_go_on_and_others_are_not_touched() throws InterruptedException {
        try (RunningService service = RunningService.start(
                ServerSettings.DEFAULT.withRequests(RequestLimits.DEFAULT.withRequestsPerSecond(2)))) {
            String[] greedy = RunningService.bearer(service.token("greedy", TokenScope.READ));
            String[] other = RunningService.bearer(service.token("other", TokenScope.READ));
            Reply refused = null;
            for (int i = 0; i < 50 && refused == null; i++) {
                Reply reply = service.get("/v1/samples", greedy);
                refused = reply.status() == 429 ? reply : null;
            }
            assertThat(refused).isNotNull();
            assertThat(refused.code()).isEqualTo("quota-exceeded");
            assertThat(refused.header("Retry-After")).hasValue("1");
            assertThat(refused.json().path("setting").asText()).isEqualTo("requests-per-second-max");
            assertThat(service.get("/v1/samples", other).status()).isEqualTo(200);
            assertThat(service.get("/healthz", greedy).status()).isEqualTo(200);
            Thread.sleep(1_000);
            assertThat(service.get("/v1/samples", greedy).status()).isEqualTo(200);
        }
    }

    @Test
    void without_tokens_there_is_no_quota() {
        try (RunningService service = RunningService.start(
                ServerSettings.DEFAULT.withRequests(RequestLimits.DEFAULT.withRequestsPerSecond(1)))) {
            for (int i = 0; i < 10; i++) {
                assertThat(service.get("/v1/samples").status()).isEqualTo(200);
            }
        }
    }
}
