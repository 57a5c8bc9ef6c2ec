package surfeit.cli;

import java.nio.file.Files;
import java.nio.file.Path;

/** A file named on the command line. */
final class InputFile {
    private InputFile() {
    }

    /** The file, if it can be read. @throws UnreadableFileException saying why not */
    static Path readable(Path file) {
        if (!Files.exists(file)) {
            throw new UnreadableFileException(file, "there is no such file.");
        }
        if (Files.isDirectory(file) || !Files.isReadable(file)) {
            throw new UnreadableFileException(file, Files.isDirectory(file) ? "it is a folder." : "access is not allowed.");
        }
        return file;
    }
}
