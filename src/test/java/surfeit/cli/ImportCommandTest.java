package surfeit.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.composition.AlloyCatalogue;
import surfeit.lab.Expectation;
import surfeit.lab.Laboratory;
import surfeit.lab.Occasion;
import surfeit.segregation.Interpreter;
import surfeit.spot.Sample;
import surfeit.storage.SqliteStore;

/** A file straight into the data folder; invented tables. */
class ImportCommandTest {
    @TempDir
    Path folder;

    @BeforeEach
    void describe() {
        try (SqliteStore store = SqliteStore.open(folder)) {
            new Laboratory(store, AlloyCatalogue.packaged(), new Interpreter(), 0.003).describe("A7",
                Sample.of(Optional.of("ag-cu-eutectic"), Optional.empty()), Expectation.NONE,
                new Occasion("test", Instant.now()));
        }
    }

    private Path table(int rows) throws Exception {
        StringBuilder table = new StringBuilder("label,Ag at%,Cu at%\n");
        for (int i = 0; i < rows; i++) {
            table.append("P1-").append(i).append(",60.1,39.9\n");
        }
        return Files.writeString(folder.resolve("table.csv"), table);
    }

    private CommandRun run(Path file) {
        return CommandRun.of("import", file, "--sample", "A7", "--data", folder);
    }

    @Test
    void a_large_import_tells_on_standard_error_how_far_it_has_come() throws Exception {
        CommandRun run = run(table(25_000));

        assertThat(run.code()).isZero();
        assertThat(run.err()).isEqualTo(String.format("10000 spots read ...%n20000 spots read ...%n"));
        assertThat(run.out()).startsWith("Recorded 25000, already known 0, rejected 0 spots of table.csv.");
        CommandRun again = run(folder.resolve("table.csv"));
        assertThat(again.err()).isEqualTo(run.err());
        assertThat(again.out()).startsWith("Recorded 0, already known 25000");
    }

    @Test
    void a_small_one_says_nothing_on_the_way() throws Exception {
        assertThat(run(table(100)).err()).isEmpty();
    }

    @Test
    void what_a_table_says_cannot_move_the_cursor_of_a_terminal() throws Exception {
        String clear = "\u001b[2J";
        Path hostile = Files.writeString(folder.resolve("hostile.csv"), "label,Ag at%,Cu at%,Re" + clear + "mark,A" + clear
            + "g at%\n" + clear + "P1,60" + clear + ",x,y,1\nMean" + clear + ",60,40,y,1\n");
        Path marked = Files.writeString(folder.resolve("marked.csv"),
            "label,Ag at%,Cu at%,Re" + clear + "mark\nP1,60.1,39.9,x\nMean,60.1,39.9," + clear + "\n");

        CommandRun refused = run(hostile);
        CommandRun read = run(marked);

        assertThat(refused.code()).isEqualTo(1);
        assertThat(refused.err()).contains("column 5", "[2J").doesNotContain("\u001b");
        assertThat(read.code()).isZero();
        assertThat(read.out()).contains("Left out: ").doesNotContain("\u001b");
    }
}
