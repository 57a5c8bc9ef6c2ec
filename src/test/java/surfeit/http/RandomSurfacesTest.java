package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Depths of materials drawn at random and what films, patches and tilts make of them, computed by another program that shares
 * no code with this one: the first line of the file says how.
 */
class RandomSurfacesTest {
    /** Energies and absorption are packaged with five digits or so, and the depth model cancels some. */
    private static final double RELATIVE = 2e-5;

    @Test
    void every_depth_and_reading_has_the_numbers_another_program_computed() throws IOException {
        List<JsonNode> cases = ComputedOutside.cases("random-surfaces");
        assertThat(cases).hasSize(75);
        try (RunningService service = RunningService.start()) {
            for (int i = 0; i < cases.size(); i++) {
                JsonNode answer = service.post("/v1/signal-depths", cases.get(i).path("request").toString()).json();
                ComputedOutside.requireAll(RELATIVE, "case " + i, cases.get(i).path("expected"), answer);
            }
        }
    }
}
