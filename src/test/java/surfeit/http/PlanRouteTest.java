package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** How much to measure, over HTTP. */
class PlanRouteTest {
    private static final String ASKED = "{\"sample\": {\"nominal\": {\"unit\": \"at%\", \"elements\": {\"Ag\": 50, \"Cu\": 50}}},"
        + " \"element\": \"Cu\", \"wanted_odds_ratio\": 2, \"scatter\": {\"between_log_odds\": 0.3, \"within_log_odds\": 0.3}}";
    private static RunningService service;

    @BeforeAll
    static void start() {
        service = RunningService.start();
        InventedPowder.etchedLots(service);
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    @Test
    void stated_scatter_gives_a_number_of_particles_and_the_power_curve() {
        JsonNode plan = service.post("/v1/plans", ASKED).json();
        // odds ratio 2, u 0.177, s_b = s_w = 0.30, three spots: six particles (simulation on invented data that settled the method)
        assertThat(plan.path("particle_count").asInt()).isEqualTo(6);
        assertThat(plan.path("power_curve").path(0).path("particle_count").asInt()).isEqualTo(3);
        assertThat(plan.path("remedies").path(0).path("what").asText()).isEqualTo("reference spots");
        assertThat(plan.path("given").isNull()).isTrue();
    }

    @Test
    void a_sample_on_record_is_a_pilot() {
        JsonNode plan = service.post("/v1/plans", "{\"pilot\": {\"sample\": \"as-made\", \"group\": \"dark patch\"}, \"element\": \"Cu\","
            + " \"wanted_factor\": 1.8, \"particles\": 3}").json();
        assertThat(plan.path("scatter").path("estimated_from_particle_count").asInt()).isEqualTo(3);
        assertThat(plan.path("given").path("particle_count").asInt()).isEqualTo(3);
    }

    @Test
    void a_question_no_plan_can_answer_is_refused() {
        assertThat(service.post("/v1/plans", ASKED.replace("\"wanted_odds_ratio\": 2", "\"wanted_odds_ratio\": 1")).code())
            .isEqualTo("value-out-of-range");
        assertThat(service.post("/v1/plans", ASKED.replace("\"element\": \"Cu\"", "\"element\": \"Zn\"")).code()).isEqualTo("value-out-of-range");
        assertThat(service.post("/v1/plans", "{\"element\": \"Cu\", \"wanted_factor\": 2}").code()).isEqualTo("value-out-of-range");
        assertThat(service.post("/v1/plans", ASKED.replace("\"element\": \"Cu\"", "\"element\": \"Cx\"")).status()).isEqualTo(422);
        assertThat(service.post("/v1/plans", "{\"pilot\": {\"sample\": \"none\", \"group\": \"x\"}, \"element\": \"Cu\", \"wanted_factor\": 2}").status())
            .isEqualTo(404);
    }
}
