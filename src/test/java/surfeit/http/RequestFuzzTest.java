package surfeit.http;

import java.io.IOException;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import surfeit.fuzz.Corpus;
import surfeit.fuzz.FuzzRound;

/**
 * Requests altered at random, of every operation of the OpenAPI document: names in addresses, query parameters,
 * cursors, header fields, bodies.
 */
@Tag("fuzz")
class RequestFuzzTest {
    private static final int INPUTS = 3000;

    @Test
    @Timeout(value = 2, unit = TimeUnit.HOURS, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void requests_altered_at_random_are_answered_as_documented() throws IOException {
        try (RequestFuzz fuzz = new RequestFuzz()) {
            FuzzRound.run(Corpus.of("requests").with(RequestSeeds.all()), INPUTS, fuzz::run);
            fuzz.readEverything();
        }
    }
}
