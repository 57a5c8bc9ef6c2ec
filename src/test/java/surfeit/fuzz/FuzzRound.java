package surfeit.fuzz;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Runs a target over its corpus and over inputs made from it: a fixed number with a fixed seed, or with
 * {@code -Dsurfeit.fuzz.seconds=600} as many as that time allows and {@code -Dsurfeit.fuzz.seed=7} others.
 *
 * <p>An input that shows something not seen before joins the pool that further ones are made from. One that breaks a
 * promise is kept in {@code target/fuzz/<name>}: it belongs into the corpus, beside what mends the program.
 */
public final class FuzzRound {
    private static final long SEED = Long.getLong("surfeit.fuzz.seed", 20_261_124L);
    private static final double SECONDS = Double.parseDouble(System.getProperty("surfeit.fuzz.seconds", "0"));
    private static final double NANOS_PER_S = 1e9;
    private static final Path FOLDER = Path.of("target", "fuzz");
    /** Inputs kept beside the corpus; what is rare is kept as well as what is common. */
    private static final int POOL_MAX = 5000;
    private static final int FRAMES = 4;
    /** Characters of a message by which two failures in one place are told apart. */
    private static final int KIND = 24;
    private static final int TOLD_MAX = 300;

    private final Corpus corpus;
    private final FuzzTarget target;
    private final List<byte[]> pool;
    private final Set<String> seen = new HashSet<>();
    private final Map<String, String> failures = new TreeMap<>();
    private final Map<String, Integer> shortest = new TreeMap<>();
    private long count;
    private long failed;

    private FuzzRound(Corpus corpus, FuzzTarget target) {
        this.corpus = corpus;
        this.target = target;
        this.pool = new ArrayList<>(corpus.inputs());
    }

    /**
     * @param inputs how many inputs to make where no time is given
     * @throws AssertionError where a promise was broken, with the first inputs that did it
     */
    public static void run(Corpus corpus, int inputs, FuzzTarget target) throws IOException {
        new FuzzRound(corpus, target).run(inputs);
    }

    private void run(int inputs) throws IOException {
        for (byte[] input : corpus.inputs()) {
            one(input);
        }
        Mutation mutation = new Mutation(SEED, corpus.words());
        long start = System.nanoTime();
        while (SECONDS > 0 ? System.nanoTime() - start < SECONDS * NANOS_PER_S : count < inputs) {
            byte[] input = mutation.next(pool);
            if (one(input) && pool.size() < POOL_MAX) {
                pool.add(input);
            }
        }
        print("fuzz: " + corpus.name() + ": " + count + " inputs fuzzed (" + corpus.inputs().size() + " of them kept, seed "
            + SEED + "), " + seen.size() + " outcomes, " + failed + " failures");
        if (failed > 0) {
            throw new AssertionError(failed + " of " + count + " inputs broke a promise:\n"
                + String.join("\n", failures.values()));
        }
    }

    private void print(String line) throws IOException {
        System.out.println(line);
        Files.writeString(Files.createDirectories(FOLDER).resolve(corpus.name() + ".txt"), line + "\n");
    }

    /** True where the input showed something new. */
    private boolean one(byte[] input) throws IOException {
        count++;
        try {
            return seen.addAll(target.run(input));
        } catch (Throwable e) {
            failed++;
            keep(input, e);
            return false;
        }
    }

    /** Keeps the shortest input of each kind of failure. */
    private void keep(byte[] input, Throwable failure) throws IOException {
        String said = String.valueOf(failure.getMessage()).replaceAll("\\p{Cntrl}", "_");
        String kind = said.substring(0, Math.min(said.length(), KIND)) + Arrays.stream(failure.getStackTrace())
            .limit(FRAMES).toList();
        Path file = Files.createDirectories(FOLDER.resolve(corpus.name()))
            .resolve("failure-" + Integer.toHexString(kind.hashCode()));
        if (!shortest.containsKey(kind) || shortest.get(kind) > input.length) {
            shortest.put(kind, input.length);
            Files.write(file, input);
            failures.put(kind, file + ": " + failure.getClass().getSimpleName() + " "
                + said.substring(0, Math.min(said.length(), TOLD_MAX)) + " at "
                + Arrays.stream(failure.getStackTrace()).skip(1).limit(FRAMES).toList());
        }
    }
}
