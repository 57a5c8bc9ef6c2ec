package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FolderLockTest {
    @TempDir
    Path folder;

    @Test
    void a_second_store_in_the_same_program_is_refused_and_the_first_goes_on() {
        try (LabBench lab = LabBench.in(folder)) {
            assertThatThrownBy(() -> SqliteStore.open(folder)).isInstanceOf(StorageException.class)
                .hasMessageContaining("in use by another running program")
                .hasMessageContaining("(process " + ProcessHandle.current().pid() + ")")
                .hasMessageContaining("Stop that one, or choose another folder with --data");
            lab.describe("A7");
        }
        LabBench.in(folder).close();
    }

    @Test
    void another_process_keeps_the_folder_until_it_is_killed() throws Exception {
        Process other = new ProcessBuilder(ProcessHandle.current().info().command().orElseThrow(), "-cp",
            System.getProperty("java.class.path"), Holder.class.getName(), folder.toString())
            .redirectError(ProcessBuilder.Redirect.DISCARD).start();
        try (BufferedReader said = new BufferedReader(
            new InputStreamReader(other.getInputStream(), StandardCharsets.UTF_8))) {
            assertThat(said.readLine()).isEqualTo("open");

            assertThatThrownBy(() -> SqliteStore.open(folder)).isInstanceOf(StorageException.class)
                .hasMessageContaining("(process " + other.pid() + ")");
        } finally {
            other.destroyForcibly().waitFor();
        }
        try (LabBench lab = LabBench.in(folder)) {
            assertThat(lab.laboratory().sample("A7").revision()).isEqualTo(1);
        }
    }

    /** A program that opens the folder, records a sample and stays. */
    static final class Holder {
        private Holder() {
        }

        public static void main(String[] arguments) throws IOException {
            LabBench.in(Path.of(arguments[0])).describe("A7");
            System.out.println("open");
            System.out.flush();
            System.in.read();
        }
    }
}
