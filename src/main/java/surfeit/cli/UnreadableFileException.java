package surfeit.cli;

import java.nio.file.Path;

/** A file named on the command line that cannot be read. */
final class UnreadableFileException extends RuntimeException {
    UnreadableFileException(Path file, String why) {
        super("Cannot read " + file + ": " + why);
    }
}
