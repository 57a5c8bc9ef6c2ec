package surfeit.http;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import surfeit.http.json.InterpretationRequest;
import surfeit.http.json.SampleJson;
import surfeit.intake.IntakeLimits;
import surfeit.intake.IntakeOptions;
import surfeit.lab.SpotList;
import surfeit.lab.SpotRows;
import surfeit.lab.Upload;
import surfeit.segregation.answer.Caveat;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/**
 * A file of spots and the sample they belong to, read by the same rules as an upload over HTTP.
 *
 * <p>The form follows from the file's name: {@code .json}, {@code .ndjson}, anything else is a table.
 *
 * @param leftOut what of a table is in no spot
 */
public record FileQuestion(Sample sample, List<Spot> spots, Optional<Caveat> leftOut) {

    /**
     * Reads a file.
     *
     * @param words  what a bare table's address would say: {@code alloy}, {@code nominal}, {@code unit} ...
     * @param sample a sample in JSON, in place of these words; empty where the file or the words state it
     * @throws surfeit.lab.ProblemException with every fault
     */
    public static FileQuestion read(Path file, Map<String, String> words, Optional<byte[]> sample, IntakeLimits limits)
            throws IOException {
        Parameters parameters = parameters(words);
        IntakeOptions options = UploadOptions.of(parameters, Optional.empty(), limits);
        Upload upload = upload(file);
        Form form = form(file);
        if (form == Form.JSON && sample.isEmpty()) {
            SampleOfAddress.requireNone(parameters);
            InterpretationRequest request = InterpretationRequest.read(upload, options);
            return new FileQuestion(request.sample(), request.spots(), Optional.empty());
        }
        Sample stated = sample.isPresent() ? SampleJson.read(new ByteArrayInputStream(sample.get()))
            : SampleOfAddress.read(parameters, options.stated().unit());
        SpotList list = SpotList.read(upload, UploadOptions.rows(form, options), stated);
        return new FileQuestion(stated, list.spots(), list.leftOut());
    }

    /** The reader for a file of spots that belong to a sample on record. */
    public static SpotRows rows(Path file, Map<String, String> words, IntakeLimits limits) {
        return UploadOptions.rows(form(file), UploadOptions.of(parameters(words), Optional.empty(), limits));
    }

    /** A file as an upload. */
    public static Upload upload(Path file) {
        String mediaType = form(file).mediaType();
        return new Upload() {
            @Override
            public InputStream open() throws IOException {
                return Files.newInputStream(file);
            }

            @Override
            public String mediaType() {
                return mediaType;
            }

            @Override
            public Optional<String> fileName() {
                return Optional.of(file.getFileName().toString());
            }
        };
    }

    private static Form form(Path file) {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        return name.endsWith(".json") ? Form.JSON : name.endsWith(".ndjson") ? Form.NDJSON : Form.CSV;
    }

    private static Parameters parameters(Map<String, String> words) {
        Map<String, List<String>> given = new TreeMap<>();
        words.forEach((name, text) -> given.put(name, List.of(text)));
        Collection<String> known = new TreeSet<>(List.of(UploadOptions.PARAMETERS));
        known.addAll(List.of(SampleOfAddress.PARAMETERS));
        return new Parameters(given, known, "a key that can be stated beside a file");
    }
}
