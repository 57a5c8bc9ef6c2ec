package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import surfeit.lab.TokenScope;

/** One wrong token after another is answered slower and slower; a right one is not. */
class FailureBrakeTest {
    private static final String WRONG = "lab_" + "x".repeat(43);

    @Test
    void the_first_failures_are_answered_at_once_and_then_each_takes_twice_as_long_up_to_a_bound() {
        for (int count = 1; count <= FailureBrake.FREE; count++) {
            assertThat(FailureBrake.hold(count)).isZero();
        }
        assertThat(FailureBrake.hold(6)).isEqualTo(Duration.ofMillis(100));
        assertThat(FailureBrake.hold(7)).isEqualTo(Duration.ofMillis(200));
        assertThat(FailureBrake.hold(10)).isEqualTo(Duration.ofMillis(1600));
        assertThat(FailureBrake.hold(11)).isEqualTo(Duration.ofMillis(2000));
        assertThat(FailureBrake.hold(Integer.MAX_VALUE)).isEqualTo(Duration.ofMillis(2000));
    }

    @Test
    void failures_are_counted_by_machine_and_forgotten_after_a_quarter_of_an_hour() {
        AtomicLong now = new AtomicLong();
        FailureBrake brake = new FailureBrake(now::get);
        assertThat(brake.fail("a")).isEqualTo(1);
        assertThat(brake.fail("a")).isEqualTo(2);
        assertThat(brake.fail("b")).isEqualTo(1);
        now.addAndGet(Duration.ofMinutes(15).toNanos());
        assertThat(brake.fail("a")).isEqualTo(3);
        now.addAndGet(Duration.ofMinutes(15).toNanos() + 1);
        assertThat(brake.fail("a")).isEqualTo(1);
    }

    @Test
    void no_number_of_machines_takes_more_than_a_bounded_memory() {
        FailureBrake brake = new FailureBrake(() -> 0);
        brake.fail("first");
        for (int i = 0; i < FailureBrake.MACHINES_MAX + 100; i++) {
            brake.fail("m" + i);
        }
        assertThat(brake.machinesKnown()).isEqualTo(FailureBrake.MACHINES_MAX);
        assertThat(brake.fail("first")).isEqualTo(1);
        assertThat(brake.fail("m" + (FailureBrake.MACHINES_MAX + 99))).isEqualTo(2);
    }

    @Test
    void only_so_many_answers_are_held_at_the_same_time() {
        FailureBrake brake = new FailureBrake(() -> 0);
        for (int i = 0; i < FailureBrake.HELD_MAX; i++) {
            assertThat(brake.enter()).isTrue();
        }
        assertThat(brake.enter()).isFalse();
        brake.leave();
        assertThat(brake.enter()).isTrue();
    }

    @Test
    void guessing_gets_slower_while_a_right_token_and_a_missing_one_are_answered_at_once() {
        try (RunningService service = RunningService.start()) {
            String right = service.token("reader", TokenScope.READ);
            for (int i = 0; i < 8; i++) {
                assertThat(service.get("/v1/samples").code()).isEqualTo("token-missing");
            }
            Duration[] took = new Duration[9];
            for (int i = 0; i < took.length; i++) {
                long start = System.nanoTime();
                assertThat(service.get("/v1/samples", RunningService.bearer(WRONG)).code()).isEqualTo("token-rejected");
                took[i] = Duration.ofNanos(System.nanoTime() - start);
            }
            assertThat(took[8]).isGreaterThanOrEqualTo(FailureBrake.hold(9));
            assertThat(took[7]).isGreaterThanOrEqualTo(FailureBrake.hold(8));
            long start = System.nanoTime();
            assertThat(service.get("/v1/samples", RunningService.bearer(right)).status()).isEqualTo(200);
            assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(FailureBrake.hold(9));
        }
    }

    @Test
    void a_client_behind_a_proxy_is_counted_by_its_own_address_only_where_the_proxy_is_trusted() {
        AccessRules behindProxy = new AccessRules(false, TrustedProxies.of("127.0.0.1"));
        try (RunningService trusting = RunningService.start(ServerSettings.DEFAULT.withAccess(behindProxy));
             RunningService plain = RunningService.start()) {
            trusting.token("reader", TokenScope.READ);
            plain.token("reader", TokenScope.READ);
            assertThat(lastOfEight(trusting)).isLessThan(FailureBrake.hold(8));
            assertThat(lastOfEight(plain)).isGreaterThanOrEqualTo(FailureBrake.hold(8));
        }
    }

    /** How long the eighth of eight wrong tokens takes, each said to come from another machine. */
    private static Duration lastOfEight(RunningService service) {
        long start = 0;
        for (int i = 0; i < 8; i++) {
            start = System.nanoTime();
            service.get("/v1/samples", "Authorization", "Bearer " + WRONG, "X-Forwarded-For", "10.0.0." + i);
        }
        return Duration.ofNanos(System.nanoTime() - start);
    }
}
