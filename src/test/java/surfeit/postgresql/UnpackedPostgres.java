package surfeit.postgresql;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.tukaani.xz.XZInputStream;

/**
 * The programs of a real PostgreSQL. They come packed in a test library for the machine at hand and are unpacked once
 * into the folder for temporary files; {@code -Dsurfeit.postgresql.bin=FOLDER} names an installed one instead.
 */
final class UnpackedPostgres {
    private static final String INSTALLED = "surfeit.postgresql.bin";

    private UnpackedPostgres() {
    }

    /** The folder with {@code initdb} and {@code postgres} in it. */
    static Path programs() throws IOException {
        Optional<String> installed = Optional.ofNullable(System.getProperty(INSTALLED));
        return installed.isPresent() ? Path.of(installed.get()) : unpacked().resolve("bin");
    }

    private static Path unpacked() throws IOException {
        String name = packed();
        Path temporary = Path.of(System.getProperty("java.io.tmpdir"));
        Path folder = temporary.resolve("surfeit-postgresql-" + System.getProperty("user.name") + "-" + checksum(name));
        if (!Files.isDirectory(folder)) {
            Path partial = Files.createTempDirectory(temporary, "surfeit-postgresql-");
            unpack(name, partial);
            Files.setPosixFilePermissions(partial, PosixFilePermissions.fromString("rwxr-xr-x"));
            try {
                Files.move(partial, folder, StandardCopyOption.ATOMIC_MOVE);
            } catch (FileAlreadyExistsException | java.nio.file.DirectoryNotEmptyException e) {
                remove(partial);
            }
        }
        return folder;
    }

    private static String packed() throws IOException {
        String system = System.getProperty("os.name").toLowerCase(Locale.ROOT).startsWith("mac") ? "darwin" : "linux";
        boolean arm = List.of("aarch64", "arm64").contains(System.getProperty("os.arch"));
        String name = "/postgres-" + system + (arm ? "-arm_64" : "-x86_64") + ".txz";
        if (UnpackedPostgres.class.getResource(name) == null) {
            throw new IOException("No PostgreSQL is packed for this machine (" + name + " is on no library's path). Name "
                + "the folder of an installed one's programs with -D" + INSTALLED + "=FOLDER.");
        }
        return name;
    }

    private static String checksum(String name) throws IOException {
        CRC32 sum = new CRC32();
        try (InputStream in = open(name)) {
            sum.update(in.readAllBytes());
        }
        return HexFormat.of().toHexDigits((int) sum.getValue());
    }

    private static InputStream open(String name) {
        return UnpackedPostgres.class.getResourceAsStream(name);
    }

    private static void unpack(String name, Path folder) throws IOException {
        try (TarArchiveInputStream tar = new TarArchiveInputStream(
                new XZInputStream(new BufferedInputStream(open(name), 1 << 16)))) {
            for (TarArchiveEntry entry = tar.getNextEntry(); entry != null; entry = tar.getNextEntry()) {
                Path target = folder.resolve(entry.getName()).normalize();
                if (entry.isDirectory()) {
                    Files.createDirectories(target);
                    continue;
                }
                Files.createDirectories(target.getParent());
                if (entry.isSymbolicLink()) {
                    Files.createSymbolicLink(target, Path.of(entry.getLinkName()));
                } else {
                    Files.copy(tar, target);
                    Files.setPosixFilePermissions(target, PosixFilePermissions.fromString(
                        (entry.getMode() & 0100) == 0 ? "rw-r--r--" : "rwxr-xr-x"));
                }
            }
        }
    }

    static void remove(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }
}
