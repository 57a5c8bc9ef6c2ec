package surfeit.http.json;

import java.io.IOException;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import surfeit.fuzz.Corpus;
import surfeit.fuzz.FuzzRound;

/** Bodies of JSON and NDJSON altered at random: nothing invented, nothing lost, nothing that does not end. */
@Tag("fuzz")
class JsonFuzzTest {
    private static final int INPUTS = 8000;

    @Test
    @Timeout(value = 2, unit = TimeUnit.HOURS, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void bodies_altered_at_random_are_read_as_they_stand_or_refused() throws IOException {
        FuzzRound.run(Corpus.of("json"), INPUTS, JsonFuzz::run);
    }
}
