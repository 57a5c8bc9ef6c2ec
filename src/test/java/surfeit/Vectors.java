package surfeit;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.IntStream;
import java.util.stream.StreamSupport;
import org.assertj.core.data.Offset;

/**
 * The check cases in {@code shared/vectors}: inputs with expected numbers from independent libraries.
 *
 * <p>{@code Vectors.read("19-combine-k3")} reads one case; its parts are {@code input}, {@code expected} and
 * {@code tolerance}. The other methods turn JSON arrays into Java arrays.
 */
public final class Vectors {

    private static final Path FOLDER = Path.of("shared", "vectors");
    private static final ObjectMapper JSON = new ObjectMapper();

    private Vectors() {
    }

    /** One case by its file name without {@code .json}. */
    public static JsonNode read(String name) {
        try {
            return JSON.readTree(FOLDER.resolve(name + ".json").toFile());
        } catch (IOException e) {
            throw new UncheckedIOException("Cannot read the check case " + FOLDER.resolve(name + ".json"), e);
        }
    }

    /** How far a result may lie from an expected number of this case, by the case's own tolerance. */
    public static Offset<Double> tolerance(JsonNode vector, double expected) {
        JsonNode tolerance = vector.path("tolerance");
        double relative = number(tolerance.path("rel")) * Math.abs(expected);
        return Offset.offset(Math.max(relative, number(tolerance.path("abs"))));
    }

    /** A JSON array of numbers. */
    public static double[] doubles(JsonNode array) {
        return StreamSupport.stream(array.spliterator(), false).mapToDouble(Vectors::number).toArray();
    }

    /** A JSON array of arrays of numbers; rows may differ in length. */
    public static double[][] rows(JsonNode array) {
        return StreamSupport.stream(array.spliterator(), false).map(Vectors::doubles).toArray(double[][]::new);
    }

    /** A JSON array of whole numbers. */
    public static int[] ints(JsonNode array) {
        return Arrays.stream(doubles(array)).mapToInt(d -> Math.toIntExact((long) d)).toArray();
    }

    /** One column of a rectangular table. */
    public static double[] column(double[][] rows, int index) {
        return IntStream.range(0, rows.length).mapToDouble(i -> rows[i][index]).toArray();
    }

    private static double number(JsonNode node) {
        if (!node.isNumber()) {
            throw new IllegalArgumentException("Expected a number in a check case, found " + node);
        }
        return node.doubleValue();
    }
}
