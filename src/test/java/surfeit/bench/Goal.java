package surfeit.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** What is promised of the speed, each against a ceiling measured in the same run. */
public enum Goal {
    INTERPRETATION("1", "interpretation of 5 spots x 4 elements, against an echo of the same bytes in and out, 16 connections",
        ">= 0.90"),
    KERNEL_NUMPY("2a", "a spot of 4 elements from its numbers to its p values, times faster than vectorised numpy", ">= 3"),
    KERNEL_PYTHON("2b", "the same, times faster than a Python loop with an uncertainty library", ">= 500"),
    KERNEL_BYTES("2c", "memory asked for per further spot of an interpretation", "0 bytes"),
    P_VALUES("2d", "p values, largest difference from commons-math", "<= 1e-10"),
    IMPORT("3a", "table of 200 000 spots, sent, checked and committed, against a bare batched insert of its rows", ">= 0.75"),
    IMPORT_MEMORY("3b", "table of 1 000 000 spots recorded with -Xmx64m", "recorded"),
    SINGLE_POSTS("4a", "durable single-spot posts, 32 connections, against a fixed answer", ">= 0.70"),
    GROUP_COMMIT("4b", "durable single-spot posts, 32 connections, against one", ">= 4"),
    POST_LATENCY("4c", "durable single-spot posts, 32 connections, p99", "<= 10 ms"),
    SEGREGATION("5a", "segregation of 1 000 000 spots, against that of 1000 on as many particles", "<= 1.2"),
    RECOUNT_EQUAL("5b", "segregation of 1 000 000 spots, largest relative difference from a full recount", "<= 1e-9"),
    RECOUNT("6", "full recount of 1 000 000 spots, against the SQL group-by over a row per element", "<= 0.2"),
    NOT_MODIFIED("7", "answers 304, against the full answer, 16 connections", ">= 1.05"),
    EVENTS("8a", "event to 1000 clients, p99 from commit, against a bare loop of sends", "<= 1.5"),
    EVENT_MEMORY("8b", "heap of one client that listens to events", "<= 12 KB"),
    START("9a", "start to the first answer with an archive of classes, against the start without, the image's flags both times",
        "<= 0.55"),
    IDLE_MEMORY("9b", "resident memory of the idle service, the image's flags and -Xmx64m", "<= 100 MB"),
    REPLICAS("10", "durable posts of two replicas on one PostgreSQL, against one", ">= 1.6");

    private static final Path FOLDER = Path.of("target", "bench", "goals");
    private static final String BAR = "\t";

    private final String number;
    private final String text;
    private final String wanted;

    Goal(String number, String text, String wanted) {
        this.number = number;
        this.text = text;
        this.wanted = wanted;
    }

    /** What was measured of a goal. @param ratio empty where the goal is no ratio */
    public record Measured(Goal goal, String ceiling, String ours, String ratio, String verdict) {
        String line() {
            return String.join(BAR, ceiling, ours, ratio, verdict);
        }

        List<String> cells() {
            return List.of(goal.number, goal.text, goal.wanted, ceiling, ours, ratio, verdict);
        }
    }

    /** Keeps what was measured for the table, and prints it. */
    public void measured(String ceiling, String ours, String ratio, boolean met) {
        keep(new Measured(this, ceiling, ours, ratio, met ? "pass" : "miss"));
    }

    /** Says why it was not measured. */
    public void notRun(String why) {
        keep(new Measured(this, "", "", "", "not run: " + why));
    }

    private void keep(Measured measured) {
        System.out.println("bench: " + String.join(" | ", measured.cells()));
        try {
            Files.createDirectories(FOLDER);
            Files.writeString(FOLDER.resolve(name()), measured.line());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What this run measured; not built where no benchmark knows the goal. */
    Measured found() throws IOException {
        Path file = FOLDER.resolve(name());
        if (!Files.exists(file)) {
            return new Measured(this, "", "", "", "not built");
        }
        String[] parts = Files.readString(file, StandardCharsets.UTF_8).split(BAR, -1);
        return new Measured(this, parts[0], parts[1], parts[2], parts[3]);
    }

    /** The ratio a goal names, where it names one. */
    Optional<Path> file() {
        return Optional.of(FOLDER.resolve(name())).filter(Files::exists);
    }
}
