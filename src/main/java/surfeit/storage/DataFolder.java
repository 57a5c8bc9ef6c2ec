package surfeit.storage;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermissions;

/**
 * The folder that holds a lab's record, claimed by one running program at a time.
 *
 * <p>The claim is a lock of the operating system on {@value #LOCK_NAME}: it ends with the program, also when that is
 * killed. The number of the process stands in the file, for the message to the second one. Thread-safe.
 */
final class DataFolder implements AutoCloseable {
    static final String FILE_NAME = "surfeit.db";
    static final String LOCK_NAME = "surfeit.lock";

    private final Path folder;
    private final FileChannel channel;

    private DataFolder(Path folder, FileChannel channel) {
        this.folder = folder;
        this.channel = channel;
    }

    /** Claims the folder, making it where it is missing. @throws StorageException where that cannot be */
    static DataFolder claim(Path folder) {
        create(folder);
        DataFolder claimed = new DataFolder(folder, openLockFile(folder));
        try {
            claimed.lock();
            NewFile.clean(folder);
            claimed.requireWritableFile();
            return claimed;
        } catch (StorageException e) {
            claimed.close();
            throw e;
        }
    }

    private void lock() {
        try {
            if (tryLock(channel) == null) {
                throw new StorageException("The data folder " + folder + " is in use by another running program"
                    + readHolder(folder) + ". Stop that one, or choose another folder with --data.");
            }
            writeHolder(channel);
        } catch (IOException e) {
            throw new StorageException("The data folder " + folder + " cannot be locked: " + e.getMessage()
                + ". A folder on a local disk is needed; some network drives have no locks.", e);
        }
    }

    Path file() {
        return folder.resolve(FILE_NAME);
    }

    Path path() {
        return folder;
    }

    @Override
    public void close() {
        try {
            channel.close();
        } catch (IOException e) {
            throw new StorageException("The lock on " + folder + " cannot be given back: " + e.getMessage() + ".", e);
        }
    }

    private static void create(Path folder) {
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw new StorageException("The data folder " + folder + " is a file. Name a folder with --data.");
        }
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new StorageException("The data folder " + folder + " does not exist and cannot be made ("
                + e.getClass().getSimpleName() + ": " + e.getMessage()
                + "). Make it yourself, or choose another with --data.", e);
        }
    }

    private static FileChannel openLockFile(Path folder) {
        try {
            return FileChannel.open(folder.resolve(LOCK_NAME), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        } catch (IOException e) {
            throw new StorageException("The data folder " + folder + " is not writable ("
                + e.getClass().getSimpleName() + ": " + e.getMessage()
                + "). Give the user that runs the service the right to write there, or choose another with --data.", e);
        }
    }

    private static FileLock tryLock(FileChannel channel) throws IOException {
        try {
            return channel.tryLock();
        } catch (OverlappingFileLockException e) {
            return null;
        }
    }

    private static String readHolder(Path folder) {
        try {
            String number = Files.readString(folder.resolve(LOCK_NAME), StandardCharsets.UTF_8).strip();
            return number.isEmpty() ? "" : " (process " + number + ")";
        } catch (IOException e) {
            return "";
        }
    }

    private static void writeHolder(FileChannel channel) throws IOException {
        byte[] number = (ProcessHandle.current().pid() + "\n").getBytes(StandardCharsets.UTF_8);
        channel.truncate(0);
        channel.write(ByteBuffer.wrap(number), 0);
    }

    private void requireWritableFile() {
        if (!Files.exists(file())) {
            return;
        }
        try (FileChannel probe = FileChannel.open(file(), StandardOpenOption.READ, StandardOpenOption.WRITE)) {
            probe.size();
        } catch (IOException e) {
            throw new StorageException("The file " + file() + " cannot be opened for reading and writing ("
                + e.getClass().getSimpleName() + ": " + e.getMessage()
                + "). Give the user that runs the service the right to both.", e);
        }
    }

    /**
     * Makes the file where it is missing, empty and for its owner only; the engine gives the files it keeps beside it
     * the same rights.
     */
    void makeFile() {
        if (Files.exists(file())) {
            return;
        }
        try {
            if (Files.getFileStore(folder).supportsFileAttributeView(PosixFileAttributeView.class)) {
                Files.createFile(file(),
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
            } else {
                Files.createFile(file());
            }
        } catch (IOException e) {
            throw new StorageException("The file " + file() + " cannot be made (" + e.getClass().getSimpleName() + ": "
                + e.getMessage() + "). Give the user that runs the service the right to write there.", e);
        }
    }
}
