package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ProfileCacheTest {

    @Test
    void the_same_question_gives_the_same_profile_object() {
        ProfileCache cache = new ProfileCache();
        Line line = Samples.line("Ag", "La");
        DepthProfile first = cache.profile(Samples.silverCopper(), line, 15);
        assertThat(cache.profile(Samples.silverCopper(), line, 15)).isSameAs(first);
        assertThat(cache.profile(Samples.silverCopper(), line, 16)).isNotEqualTo(first);
        assertThat(first).isEqualTo(DepthProfile.of(Samples.silverCopper(), line, 15));
        assertThat(cache.size()).isEqualTo(2);
    }

    @Test
    void it_never_holds_more_than_its_bound_and_forgets_the_least_used_first() {
        AtomicInteger calculations = new AtomicInteger();
        RecentResults<Integer, Integer> results = new RecentResults<>(2);
        for (int input : new int[] {1, 2, 1, 3, 1, 2}) {
            assertThat(results.get(input, () -> {
                calculations.incrementAndGet();
                return 10 * input;
            })).isEqualTo(10 * input);
        }
        assertThat(calculations).as("1, 2, 3 and 2 again").hasValue(4);
        assertThat(results.size()).isEqualTo(2);
    }

    @Test
    void many_threads_get_right_answers_and_the_bound_holds() {
        ProfileCache cache = new ProfileCache(16);
        Material host = Samples.silverCopper();
        Line line = Samples.line("Ag", "La");
        boolean right = IntStream.range(0, 20_000).parallel().allMatch(i -> {
            double beam = 5 + i % 40 * 0.5;
            return cache.profile(host, line, beam).beamEnergyKev() == beam;
        });
        assertThat(right).isTrue();
        assertThat(cache.size()).isLessThanOrEqualTo(16);
    }

    @Test
    void a_cache_without_room_is_refused() {
        assertThatThrownBy(() -> new ProfileCache(0)).hasMessageContaining("got 0");
    }
}
