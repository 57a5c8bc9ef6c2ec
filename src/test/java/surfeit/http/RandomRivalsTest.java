package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * How far other causes could move the nominal of samples drawn at random, computed by another program that shares no
 * code with this one: the first line of the file says how.
 */
class RandomRivalsTest {
    /** Energies and absorption are packaged with five digits or so, and the depth model cancels some. */
    private static final double RELATIVE = 2e-5;

    @Test
    void every_cause_reaches_as_far_as_another_program_computed() throws IOException {
        List<JsonNode> cases = ComputedOutside.cases("random-rivals");
        assertThat(cases).hasSize(45);
        try (RunningService service = RunningService.start()) {
            for (int i = 0; i < cases.size(); i++) {
                JsonNode found = service.post("/v1/interpretations", cases.get(i).path("request").toString()).json()
                    .path("groups").path(0).path("rival_explanations");
                for (JsonNode expected : cases.get(i).path("expected")) {
                    JsonNode own = ComputedOutside.list(found).stream().filter(rival -> isSame(rival, expected))
                        .findFirst().orElseThrow(() -> new AssertionError("not told: " + expected));
                    ComputedOutside.requireAll(RELATIVE, "case " + i + ", " + expected.path("cause"), expected, own);
                }
            }
        }
    }

    private static boolean isSame(JsonNode rival, JsonNode expected) {
        return List.of("code", "cause", "element").stream()
            .allMatch(key -> rival.path(key).equals(expected.path(key)));
    }
}
