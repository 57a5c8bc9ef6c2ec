package surfeit.faults;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** The spots of a sample as the service gives them, in the order of record. */
record RecordedSpots(List<String> ids, List<String> labels, List<String> copper, List<Integer> revisions) {
    private static final ObjectMapper JSON = new ObjectMapper();

    static RecordedSpots of(RunningProgram program, String sample) throws IOException, InterruptedException {
        RecordedSpots spots = new RecordedSpots(new ArrayList<>(), new ArrayList<>(), new ArrayList<>(),
            new ArrayList<>());
        for (String line : program.get("/v1/samples/" + sample + "/spots.ndjson").body().lines().toList()) {
            JsonNode spot = JSON.readTree(line);
            spots.ids.add(spot.path("id").asText());
            spots.labels.add(spot.path("label").asText());
            spots.copper.add(spot.path("elements").path("Cu").path("as_reported").asText());
            spots.revisions.add(spot.path("revision").asInt());
        }
        return spots;
    }

    int count() {
        return labels.size();
    }

    Set<String> labelSet() {
        return new HashSet<>(labels);
    }

    static JsonNode parse(String json) throws IOException {
        return JSON.readTree(json);
    }
}
