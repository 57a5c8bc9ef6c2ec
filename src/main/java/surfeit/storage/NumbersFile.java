package surfeit.storage;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.DoubleBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileChannel.MapMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.function.LongToDoubleFunction;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.statistics.NumbersAside;

/**
 * Numbers in a temporary file, 8 bytes each. It has lost its name before the first number is in it, so that nothing
 * stays behind however the program ends (where the system lets go of names of open files). Read by mapping, so that many
 * may read at once and the system may take the memory back at any time; the disk is given back when the last reader was
 * collected.
 */
final class NumbersFile implements NumbersAside {
    /** Numbers written in one piece. Judgement. */
    private static final int PIECE = 8 << 10;
    /** Numbers mapped in one piece: one GiB, of two that Java maps at most. */
    private static final int MAPPED_BITS = 27;
    /** Free space below which a failure to write is put down to a full disk, in bytes. Judgement. */
    private static final long NO_SPACE_BYTES = 1 << 20;

    private final Path folder;
    private final FileChannel channel;
    private final ByteBuffer bytes = ByteBuffer.allocate(PIECE * Double.BYTES).order(ByteOrder.nativeOrder());

    /** An empty list on the disk of a folder. */
    NumbersFile(Path folder) {
        this.folder = folder;
        try {
            Path file = Files.createTempFile(folder, "surfeit-numbers-", ".tmp");
            channel = FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE,
                StandardOpenOption.DELETE_ON_CLOSE);
        } catch (IOException e) {
            throw failure(e);
        }
    }

    /** An empty list on the disk of the folder for temporary files. */
    static NumbersFile temporary() {
        return new NumbersFile(Path.of(System.getProperty("java.io.tmpdir")));
    }

    @Override
    public void append(double[] numbers, int count) {
        try {
            for (int from = 0; from < count; from += PIECE) {
                int piece = Math.min(PIECE, count - from);
                bytes.clear().asDoubleBuffer().put(numbers, from, piece);
                bytes.limit(piece * Double.BYTES);
                while (bytes.hasRemaining()) {
                    channel.write(bytes);
                }
            }
        } catch (IOException e) {
            throw failure(e);
        }
    }

    @Override
    public LongToDoubleFunction read() {
        try (channel) {
            long size = channel.size();
            long most = (long) Double.BYTES << MAPPED_BITS;
            DoubleBuffer[] parts = new DoubleBuffer[(int) ((size + most - 1) / most)];
            for (int i = 0; i < parts.length; i++) {
                parts[i] = channel.map(MapMode.READ_ONLY, i * most, Math.min(most, size - i * most))
                    .order(ByteOrder.nativeOrder()).asDoubleBuffer();
            }
            return at -> parts[(int) (at >>> MAPPED_BITS)].get((int) (at & (1L << MAPPED_BITS) - 1));
        } catch (IOException e) {
            throw failure(e);
        }
    }

    private RuntimeException failure(IOException failure) {
        if (!Files.isDirectory(folder) || folder.toFile().getUsableSpace() > NO_SPACE_BYTES) {
            return new UncheckedIOException("A temporary file in " + folder + " cannot be used.", failure);
        }
        ProblemException full = new ProblemException(Problem.STORAGE_FULL, "The disk that holds temporary files ("
            + folder + ") has no room to sort the p values of a sample of this size.");
        full.initCause(failure);
        return full;
    }

    @Override
    public void close() {
        try {
            channel.close();
        } catch (IOException e) {
            throw new UncheckedIOException("A temporary file could not be closed.", e);
        }
    }
}
