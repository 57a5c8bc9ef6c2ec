package surfeit.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * Where fuzzing starts: whole inputs, one a file, and the words that mean something in them. Every input that ever
 * broke something stays among them.
 *
 * @param words one a line in {@code <name>.words}; {@code \n}, {@code \t}, {@code \r}, {@code \\} and
 *              {@code \xHH} stand for what they do in C
 */
public record Corpus(String name, List<byte[]> inputs, List<byte[]> words) {
    private static final Path FOLDER = Path.of("src/test/resources/fuzz");
    private static final int HEX = 16;

    /** The inputs under {@code src/test/resources/fuzz/<name>}, in the order of their names, and its words. */
    public static Corpus of(String name) {
        return new Corpus(name, files(folder(name)), words(FOLDER.resolve(name + ".words")));
    }

    /** The same with further inputs. */
    public Corpus with(List<byte[]> more) {
        List<byte[]> all = new ArrayList<>(inputs);
        all.addAll(more);
        return new Corpus(name, all, words);
    }

    static Path folder(String name) {
        return FOLDER.resolve(name);
    }

    /** All files of a folder, in the order of their names. */
    public static List<byte[]> files(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            List<byte[]> inputs = new ArrayList<>();
            for (Path file : files.sorted().toList()) {
                inputs.add(Files.readAllBytes(file));
            }
            return inputs;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<byte[]> words(Path file) {
        try {
            return Files.readAllLines(file).stream().filter(line -> !line.isEmpty()).map(Corpus::word).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] word(String line) {
        StringBuilder word = new StringBuilder();
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c != '\\') {
                word.append(new String(String.valueOf(c).getBytes(StandardCharsets.UTF_8), StandardCharsets.ISO_8859_1));
                continue;
            }
            char kind = line.charAt(++i);
            word.append(switch (kind) {
                case 'n' -> '\n';
                case 'r' -> '\r';
                case 't' -> '\t';
                case 'x' -> (char) Integer.parseInt(line.substring(i + 1, i + 3), HEX);
                default -> kind;
            });
            i += kind == 'x' ? 2 : 0;
        }
        return word.toString().getBytes(StandardCharsets.ISO_8859_1);
    }
}
