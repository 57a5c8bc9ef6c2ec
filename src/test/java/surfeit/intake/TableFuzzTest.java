package surfeit.intake;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import surfeit.fuzz.Corpus;
import surfeit.fuzz.FuzzRound;

/** Tables altered at random: nothing invented, nothing lost, nothing that does not end. */
@Tag("fuzz")
class TableFuzzTest {
    private static final int INPUTS = 6000;

    @Test
    @Timeout(value = 2, unit = TimeUnit.HOURS, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void tables_altered_at_random_are_read_as_they_stand_or_refused() throws IOException {
        Corpus corpus = Corpus.of("tables").with(Corpus.files(Path.of("src/test/resources/uploads")));
        FuzzRound.run(corpus, INPUTS, TableFuzz::run);
    }
}
