package surfeit.lab;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** How a guess is compared with what is kept of a token. */
class KeptTokenTest {
    private static final String HASH = TokenSecret.sha256("lab_" + "A".repeat(43));
    private static final Instant NOON = Instant.parse("2026-11-20T12:00:00Z");
    private static final KeptToken KEPT = new KeptToken(new Token("tok_0001", "bench", Set.of(TokenScope.READ),
        new Occasion("anna", NOON), NOON.plusSeconds(60), Optional.empty()), HASH);

    @Test
    void only_the_whole_hash_will_do() {
        assertThat(KEPT.hasHash(HASH)).isTrue();
        for (int i = 0; i < HASH.length(); i++) {
            char other = HASH.charAt(i) == '0' ? '1' : '0';
            assertThat(KEPT.hasHash(HASH.substring(0, i) + other + HASH.substring(i + 1))).as("digit " + i).isFalse();
        }
        assertThat(KEPT.hasHash(HASH.substring(0, 63))).isFalse();
        assertThat(KEPT.hasHash("")).isFalse();
    }

    /** Times cannot be asserted; what is compared by can: the class names one method that takes the same for any guess. */
    @Test
    void hashes_are_compared_by_the_platform_s_own_method_that_takes_the_same_time_for_any_guess() throws IOException {
        assertThat(constants(KeptToken.class)).contains("java/security/MessageDigest", "isEqual");
        assertThat(constants(Access.class)).contains("hasHash").doesNotContain("java/security/MessageDigest");
    }

    private static String constants(Class<?> type) throws IOException {
        try (InputStream in = type.getResourceAsStream(type.getSimpleName() + ".class")) {
            return new String(in.readAllBytes(), StandardCharsets.ISO_8859_1);
        }
    }
}
