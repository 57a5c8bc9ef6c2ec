package surfeit.storage;

import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.stream.Stream;

/**
 * A file in the making, for its owner's eyes only. It stands under a name of its own until it is whole, and then takes
 * the place it is meant for unless something is there. Not thread-safe.
 */
final class NewFile implements AutoCloseable {
    private static final String BEGINNING = "surfeit-";
    private static final String END = ".partial";
    /** What the engine may leave beside a file while it works on it. */
    private static final List<String> BESIDE = List.of("", "-wal", "-shm", "-journal");

    private final Path partial;
    private boolean given;

    private NewFile(Path partial) {
        this.partial = partial;
    }

    /** Makes an empty file that only its owner can read or write. */
    static NewFile in(Path folder) {
        try {
            return new NewFile(Files.createTempFile(folder, BEGINNING, END).toAbsolutePath());
        } catch (IOException e) {
            throw new StorageException("No file can be made in " + folder + " (" + e.getClass().getSimpleName() + ": "
                + e.getMessage() + "). Name a folder that exists and may be written to.", e);
        }
    }

    /** Removes what programs that were killed left behind. */
    static void clean(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.filter(NewFile::isPartial).toList()) {
                Files.deleteIfExists(file);
            }
        } catch (IOException e) {
            throw new StorageException("The folder " + folder + " cannot be tidied: " + e.getMessage() + ".", e);
        }
    }

    /** True for a file in the making, and for what the engine keeps beside one. */
    static boolean isPartial(Path file) {
        String name = file.getFileName().toString();
        return name.startsWith(BEGINNING)
            && BESIDE.stream().anyMatch(end -> name.endsWith(END + end));
    }

    Path path() {
        return partial;
    }

    /** Puts the file, with all that was written to it, on the disk under its name. */
    void keepAs(Path target) {
        try {
            sync(partial);
            place(target);
            sync(target.toAbsolutePath().getParent());
        } catch (FileAlreadyExistsException e) {
            throw exists(target);
        } catch (IOException e) {
            throw new StorageException("The file " + target + " cannot be made (" + e.getClass().getSimpleName() + ": "
                + e.getMessage() + ").", e);
        }
    }

    /** A link is made only where nothing has the name; a disk without links is asked to move the file instead. */
    private void place(Path target) throws IOException {
        try {
            Files.createLink(target, partial);
        } catch (FileAlreadyExistsException e) {
            throw e;
        } catch (UnsupportedOperationException | IOException e) {
            Files.move(partial, target);
        }
    }

    static StorageException exists(Path target) {
        return new StorageException("The file " + target
            + " exists. A backup never overwrites anything: choose another name.");
    }

    /** Gives the file away to be read once: it is gone when the reader closes it. */
    InputStream openForReading() {
        try {
            InputStream bytes = Files.newInputStream(partial, StandardOpenOption.DELETE_ON_CLOSE);
            given = true;
            return bytes;
        } catch (IOException e) {
            throw new StorageException("The file " + partial + " cannot be read: " + e.getMessage() + ".", e);
        }
    }

    private static void sync(Path path) throws IOException {
        try (FileChannel channel = FileChannel.open(path, StandardOpenOption.READ)) {
            channel.force(true);
        }
    }

    @Override
    public void close() {
        for (String end : given ? BESIDE.subList(1, BESIDE.size()) : BESIDE) {
            try {
                Files.deleteIfExists(Path.of(partial + end));
            } catch (IOException e) {
                partial.toFile().deleteOnExit();
            }
        }
    }
}
