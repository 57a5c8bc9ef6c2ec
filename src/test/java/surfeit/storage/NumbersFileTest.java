package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.function.LongToDoubleFunction;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.statistics.NumbersAside;
import surfeit.statistics.PValueFamily;
import surfeit.statistics.StepUpAdjustment;
import surfeit.statistics.StepUpAdjustmentTest;

/** Numbers put aside in a temporary file. */
class NumbersFileTest {
    @TempDir
    Path folder;

    @Test
    void numbers_come_back_bit_by_bit_also_when_the_list_was_closed() {
        double[] few = {0.0, -0.0, Double.NaN, Double.MIN_VALUE, 1, 99};
        double[] many = new Random(3).doubles(100_000).toArray();
        LongToDoubleFunction read;
        try (NumbersAside aside = new NumbersFile(folder)) {
            aside.append(few, 5);
            aside.append(many, many.length);
            aside.append(few, 1);
            read = aside.read();
        }
        double[] found = LongStream.range(0, 100_006).mapToDouble(read).toArray();
        assertThat(Arrays.copyOfRange(found, 0, 5)).containsExactly(Arrays.copyOf(few, 5));
        assertThat(Arrays.copyOfRange(found, 5, 100_005)).containsExactly(many);
        assertThat(found[100_005]).isEqualTo(0.0);
    }

    @Test
    void the_file_has_no_name() throws IOException {
        try (NumbersAside aside = new NumbersFile(folder)) {
            aside.append(new double[] {1}, 1);
            try (Stream<Path> files = Files.list(folder)) {
                assertThat(files).isEmpty();
            }
        }
    }

    @Test
    void a_folder_that_is_not_there_is_not_called_full() {
        Path absent = folder.resolve("absent");
        assertThatThrownBy(() -> new NumbersFile(absent)).isInstanceOf(UncheckedIOException.class)
            .hasMessageContaining(absent.toString());
    }

    /** Invented: most p values small, so that nearly each is a step of its own and the steps are put aside too. */
    @Test
    void a_family_too_long_for_memory_is_adjusted_as_in_order() {
        double[] values = new Random(4).doubles(300_000).map(p -> Math.pow(p, 8)).toArray();
        StepUpAdjustment adjustment;
        try (PValueFamily family = new PValueFamily(() -> new NumbersFile(folder))) {
            Arrays.stream(values).forEach(family::add);
            adjustment = StepUpAdjustment.of(family);
        }
        assertThat(adjustment.size()).isGreaterThan(200_000);
        assertThat(Arrays.stream(values).parallel().map(adjustment::of).toArray())
            .containsExactly(StepUpAdjustmentTest.inOrder(values));
    }
}
