package surfeit.faults;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** A disk of a few megabytes in memory, where whoever runs the tests may mount one. */
final class SmallDisk implements AutoCloseable {
    private static final int PIECE = 64 << 10;

    private final Path path;
    private final List<String> privilege;

    private SmallDisk(Path path, List<String> privilege) {
        this.path = path;
        this.privilege = privilege;
    }

    /** Empty where no disk may be mounted. */
    static Optional<SmallDisk> mount(Path path, int megabytes) throws IOException, InterruptedException {
        Files.createDirectories(path);
        String user = System.getProperty("user.name");
        for (List<String> privilege : List.of(List.<String>of(), List.of("sudo", "-n"))) {
            if (run(privilege, "mount", "-t", "tmpfs", "-o", "size=" + megabytes + "m,mode=0777", "surfeit-test",
                path.toString())) {
                return Optional.of(new SmallDisk(path, privilege));
            }
        }
        System.out.println("SKIPPED: " + user
            + " may not mount a disk here (neither mount nor sudo -n mount), so a full disk is not tried"
            + " for real; StorageFullTest tries it with a limit within the engine.");
        return Optional.empty();
    }

    Path path() {
        return path;
    }

    /** Writes a file that leaves about so many bytes free. */
    Path fillUpTo(long freeBytes) throws IOException {
        Path ballast = path.resolve("ballast");
        try (var out = Files.newOutputStream(ballast)) {
            while (path.toFile().getUsableSpace() > freeBytes) {
                out.write(new byte[PIECE]);
            }
        }
        return ballast;
    }

    private static boolean run(List<String> privilege, String... command) throws IOException, InterruptedException {
        List<String> words = new ArrayList<>(privilege);
        words.addAll(List.of(command));
        try {
            Process process = new ProcessBuilder(words).redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
            return process.waitFor(20, TimeUnit.SECONDS) && process.exitValue() == 0;
        } catch (IOException e) {
            return false;
        }
    }

    @Override
    public void close() throws IOException {
        try {
            run(privilege, "umount", "-l", path.toString());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
