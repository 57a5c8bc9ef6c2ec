package surfeit.faults;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** Prints what a test of a fault counted, and keeps the line in {@code target/faults}. */
final class Figures {
    private static final Path FOLDER = Path.of("target", "faults");

    private Figures() {
    }

    static void print(String fault, String counted) throws IOException {
        String line = "fault: " + fault + ": " + counted;
        System.out.println(line);
        Files.createDirectories(FOLDER);
        Files.writeString(FOLDER.resolve(fault.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-") + ".txt"),
            line + "\n");
    }
}
