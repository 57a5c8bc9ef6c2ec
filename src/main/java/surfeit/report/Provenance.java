package surfeit.report;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * Where an answer comes from, so that it can be computed again: program, sample or file, revision, time, tables.
 *
 * @param programVersion version of this program
 * @param sample         name of the sample, if it has one
 * @param fileName       name of the file its spots came in, if it is not on record
 * @param revision       revision of the sample's data, if it is stored
 * @param computedTime   when it was computed, RFC 3339 with an offset
 * @param tableChecksums SHA-256 of each reference table used, by file name
 * @param lines          X-ray line each element was read from, by symbol, as far as it was stated
 * @param facts          what the lab says of the sample
 */
public record Provenance(String programVersion, Optional<String> sample, Optional<String> fileName,
                         OptionalLong revision, String computedTime, Map<String, String> tableChecksums,
                         Map<String, String> lines, List<SampleFact> facts) {
    public Provenance {
        tableChecksums = Collections.unmodifiableMap(new LinkedHashMap<>(tableChecksums));
        lines = Collections.unmodifiableMap(new LinkedHashMap<>(lines));
        facts = List.copyOf(facts);
        if (programVersion.isBlank() || computedTime.isBlank()) {
            throw new IllegalArgumentException("An answer names its program version and time, got \"" + programVersion
                + "\" and \"" + computedTime + "\".");
        }
    }

    /** {@code Sample A7}, else the file's name, else {@code Sample without a name}. */
    public String title() {
        return sample.map(name -> "Sample " + name).or(() -> fileName).orElse("Sample without a name");
    }
}
