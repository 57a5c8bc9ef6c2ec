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

    /** A byte is told as 0 to 255, the end as -1: InputStream's own description. */
    @Test
    void single_bytes_are_read_as_they_were_written() throws Exception {
        byte[] bytes = {0, 65, 127, -128, -1};
        file.append(bytes, bytes.length);
        file.complete();
        try (InputStream in = file.open(patience(Duration.ZERO))) {
            for (int expected : new int[] {0, 65, 127, 128, 255, -1}) {
                assertThat(in.read()).isEqualTo(expected);
            }
        }
    }

    @Test
    void who_waits_is_woken_by_the_next_bytes_and_by_the_file_being_closed() throws Exception {
        InputStream in = file.open(patience(LONG));
        CompletableFuture<Integer> read = inAnotherThread(in);
        append("A");
        assertThat(read.get(20, TimeUnit.SECONDS)).isEqualTo('A');
        CompletableFuture<Integer> none = inAnotherThread(in);
        file.close();
        assertThat(none.get(20, TimeUnit.SECONDS)).as("broken off").isEqualTo(-2);
    }

    /** The next byte; -2 for a failure. Comes back once the other thread waits or is done. */
    private static CompletableFuture<Integer> inAnotherThread(InputStream in) throws InterruptedException {
        CompletableFuture<Integer> read = new CompletableFuture<>();
        Thread reader = new Thread(() -> {
            try {
                read.complete(in.read());
            } catch (IOException e) {
                read.complete(-2);
            }
        });
        reader.setDaemon(true);
        reader.start();
        while (reader.getState() != Thread.State.TIMED_WAITING && !read.isDone()) {
            Thread.sleep(1);
        }
        return read;
    }

    @Test
    void waiting_uses_patience_up_and_work_brings_a_quarter_of_its_time() throws Exception {
        long first = Duration.ofMillis(100).toNanos();
        long waited = Duration.ofMinutes(1).toNanos();
        long before = System.nanoTime();
        Patience patience = new Patience(first);
        Thread.sleep(40);
        long left = patience.leftNanos();
        assertThat(left).isBetween(first + Duration.ofMillis(10).toNanos(), first + (System.nanoTime() - before) / 4);
        patience.waited(waited);
        assertThat(patience.leftNanos()).as("time that was waited brings none").isBetween(left - waited - waited / 4,
            first - waited - waited / 4 + (System.nanoTime() - before) / 4);
    }
}
