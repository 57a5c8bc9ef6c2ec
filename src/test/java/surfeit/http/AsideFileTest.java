package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import surfeit.intake.UnfinishedUploadException;

/** Bytes put aside that are read while they are written. */
class AsideFileTest {
    private static final Duration LONG = Duration.ofMinutes(1);
    private AsideFile file;

    @BeforeEach
    void make() throws IOException {
        file = new AsideFile();
    }

    @AfterEach
    void remove() throws IOException {
        file.close();
    }

    private static Patience patience(Duration first) {
        return new Patience(first.toNanos());
    }

    private void append(String text) throws IOException {
        file.append(text.getBytes(StandardCharsets.US_ASCII), text.length());
    }

    private CompletableFuture<String> readInAnotherThread() {
        return CompletableFuture.supplyAsync(() -> {
            try (InputStream in = file.open(patience(LONG))) {
                return new String(in.readAllBytes(), StandardCharsets.US_ASCII);
            } catch (IOException e) {
                return e.getMessage();
            }
        });
    }

    @Test
    void what_comes_later_is_waited_for_and_the_end_too() throws Exception {
        append("Ag ");
        CompletableFuture<String> read = readInAnotherThread();
        for (int i = 0; i < 50; i++) {
            append("x");
            Thread.sleep(1);
        }
        assertThat(read).as("without an end").isNotDone();
        append(" Cu");
        assertThat(file.isWhole()).isFalse();
        file.complete();
        assertThat(read.get(20, TimeUnit.SECONDS)).isEqualTo("Ag " + "x".repeat(50) + " Cu");
        assertThat(file.isWhole()).isTrue();
        assertThat(file.open(patience(Duration.ZERO)).readAllBytes()).as("again").hasSize(56);
    }

    @Test
    void one_that_breaks_off_has_no_end() throws Exception {
        append("Ag");
        CompletableFuture<String> read = readInAnotherThread();
        file.breakOff();
        assertThat(read.get(20, TimeUnit.SECONDS)).isEqualTo("The upload broke off.");
        try (InputStream in = file.open(patience(LONG))) {
            assertThat(in.readNBytes(2)).isEqualTo(new byte[] {'A', 'g'});
            assertThatThrownBy(in::read).isInstanceOf(IOException.class);
        }
    }

    @Test
    void nobody_waits_longer_than_patience_lasts() throws Exception {
        append("Ag");
        try (InputStream in = file.open(patience(Duration.ofMillis(30)))) {
            assertThat(in.readNBytes(2)).hasSize(2);
            assertThatThrownBy(in::read).isInstanceOf(UnfinishedUploadException.class);
        }
    }

    @Test
    void waiting_uses_patience_up_and_work_brings_a_quarter_of_its_time() throws Exception {
        Patience patience = patience(Duration.ofMillis(100));
        patience.waited(Duration.ofMinutes(1).toNanos());
        assertThat(patience.leftNanos()).isNegative();
        Patience worked = patience(Duration.ofMillis(100));
        Thread.sleep(40);
        assertThat(worked.leftNanos()).isGreaterThanOrEqualTo(Duration.ofMillis(110).toNanos());
    }
}
