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
    void a_trace_of_which_less_cannot_be_shown_gets_a_plan_without_that_factor() {
        Reply reply = service.post("/v1/plans", "{\"sample\": {\"nominal\": {\"unit\": \"at%\", \"elements\": {\"Ag\": 99.9993,"
            + " \"Ni\": {\"value\": 0.0007, \"tolerance\": 0.0006}}}}, \"element\": \"Ni\", \"wanted_factor\": 1.5, \"particles\": 4,"
            + " \"scatter\": {\"between_log_odds\": 0.3}}");
        assertThat(reply.status()).as(reply.text()).isEqualTo(200);
        assertThat(reply.json().path("given").path("smallest_depletion_factor").isNull()).isTrue();
    }

    /** 0.1 mass % of error beside 4e-4 mass % of nickel (by hand): an odds ratio far beyond the largest margin, 100. */
    @Test
    void a_margin_beyond_all_that_a_sample_takes_is_null() {
        Reply reply = service.post("/v1/plans", "{\"sample\": {\"nominal\": {\"unit\": \"at%\", \"elements\": {\"Ag\": 99.9993,"
            + " \"Ni\": 0.0007}}}, \"element\": \"Ni\", \"wanted_factor\": 1.5, \"scatter\": {\"between_log_odds\": 0.3}}");
        assertThat(reply.status()).as(reply.text()).isEqualTo(200);
        assertThat(reply.json().path("limit").path("smallest_margin_odds_ratio").isNull()).isTrue();
        assertThat(reply.json().path("limit").path("consistent_is_reachable").asBoolean()).isFalse();
    }

    private static final String ALLOY = "{\"sample\": {\"alloy\": \"ag-cu-eutectic\", \"take_off_angle_deg\": 40, "
        + "\"coating\": {\"element\": \"C\", \"thickness_nm\": 10}}, \"beam\": ";

    /** Edges Ag L3 3.351 and Cu K 8.979 keV: both well excited from 7 keV on, by Cu Ka only from 18 keV on. */
    @Test
    void a_beam_energy_is_advised_for_a_film_with_a_second_one_to_compare_with() {
        JsonNode answer = service.post("/v1/plans", ALLOY + "{\"question\": \"surface film\"}}").json();
        assertThat(answer.path("answer").asText()).isEqualTo("Take 7 keV and compare it with 18 keV.");
        JsonNode advice = answer.path("beam_advice");
        assertThat(advice.path("recommendation").path("beam_energy_kev").asDouble()).isEqualTo(7);
        assertThat(advice.path("recommendation").path("second_beam_energy_kev").asDouble()).isEqualTo(18);
        assertThat(advice.path("recommendation").path("reason").asText()).contains("half of the signal comes from the top");
        assertThat(advice.path("take_off_angle_deg").asDouble()).isEqualTo(40);
        JsonNode rows = advice.path("beam_energies");
        assertThat(rows.get(0).path("beam_energy_kev").asDouble()).isEqualTo(3);
        assertThat(rows.get(0).path("elements_without_line").get(0).asText()).isEqualTo("Ag");
        assertThat(rows.get(rows.size() - 1).path("beam_energy_kev").asDouble()).isEqualTo(30);
        assertThat(answer.has("particle_count")).isFalse();
    }

    @Test
    void a_patch_of_a_given_size_gets_the_share_of_the_signal_that_comes_from_it() {
        String patch = ALLOY + "{\"question\": \"patch\", \"patch_diameter_um\": %s, \"probe_diameter_nm\": 20, "
            + "\"beam_energies_kev\": [10, 20]}}";
        JsonNode small = service.post("/v1/plans", String.format(patch, "0.3")).json().path("beam_advice");
        JsonNode large = service.post("/v1/plans", String.format(patch, "3")).json().path("beam_advice");
        JsonNode line = small.path("beam_energies").get(1).path("lines").get(0);
        assertThat(line.path("patch_share_percent_low").asDouble()).isLessThan(line.path("patch_share_percent").asDouble());
        assertThat(line.path("patch_share_percent").asDouble())
            .isLessThan(large.path("beam_energies").get(1).path("lines").get(0).path("patch_share_percent").asDouble());
        assertThat(small.path("recommendation").path("beam_energy_kev").asDouble()).isEqualTo(10);
        assertThat(large.path("patch_diameter_um").asDouble()).isEqualTo(3);
        assertThat(line.path("lateral_diameter_nm").asDouble()).isGreaterThan(20);
    }

    @Test
    void one_question_may_ask_for_particles_and_for_a_beam_energy() {
        JsonNode both = service.post("/v1/plans", ASKED.substring(0, ASKED.length() - 1)
            + ", \"beam\": {\"question\": \"bulk\"}}").json();
        assertThat(both.path("particle_count").asInt()).isEqualTo(6);
        assertThat(both.path("beam_advice").path("recommendation").path("beam_energy_kev").asDouble()).isBetween(18.0, 25.0);
        assertThat(service.post("/v1/plans", ASKED).json().path("beam_advice").isNull()).isTrue();
        JsonNode ofRecord = service.post("/v1/plans", "{\"pilot\": {\"sample\": \"as-made\"}, \"beam\": {\"question\": "
            + "\"bulk\"}}").json();
        assertThat(ofRecord.path("beam_advice").path("question").asText()).isEqualTo("bulk");
    }

    @Test
    void a_beam_question_without_sense_is_refused_with_what_was_expected() {
        for (String[] wrong : new String[][] {{"{}", "surface film"}, {"{\"question\": \"patch\"}", "patch_diameter_um"},
            {"{\"question\": \"bulk\", \"patch_diameter_um\": 1}", "only beside"},
            {"{\"question\": \"patch\", \"patch_diameter_um\": 0}", "above 0"},
            {"{\"question\": \"bulk\", \"beam_energies_kev\": [300]}", "300"},
            {"{\"question\": \"bulk\", \"density_g_cm3\": -1}", "Density"}}) {
            Reply refused = service.post("/v1/plans", ALLOY + wrong[0] + "}");
            assertThat(refused.code()).as(wrong[0]).isEqualTo("value-out-of-range");
            assertThat(refused.json().path("detail").asText()).contains(wrong[1]);
        }
        assertThat(service.post("/v1/plans", ALLOY + "{\"question\": \"film\"}}").status()).isIn(400, 422);
        assertThat(service.post("/v1/plans", ALLOY + "{\"quest\": \"bulk\"}}").status()).isIn(400, 422);
        assertThat(service.post("/v1/plans", "{\"pilot\": {\"sample\": \"as-made\"}, \"element\": \"Cu\", "
            + "\"wanted_factor\": 2}").json().path("detail").asText()).contains("\"group\"");
        assertThat(service.post("/v1/plans", "{\"beam\": {\"question\": \"bulk\"}}").json().path("detail").asText())
            .contains("\"sample\"");
    }

    @Test
    void a_plan_for_a_nominal_of_one_element_is_refused() {
        assertThat(service.post("/v1/plans", ASKED.replace("\"elements\": {\"Ag\": 50, \"Cu\": 50}}", "\"elements\": "
            + "{\"Ag\": 50, \"Cu\": 50}}, \"excluded_elements\": [\"Ag\"]")).code()).isEqualTo("too-few-elements");
    }

    @Test
    void a_question_no_plan_can_answer_is_refused() {
        assertThat(service.post("/v1/plans", ASKED.replace("\"wanted_odds_ratio\": 2", "\"wanted_odds_ratio\": 1")).code())
            .isEqualTo("value-out-of-range");
        assertThat(service.post("/v1/plans", ASKED.replace("\"element\": \"Cu\"", "\"element\": \"Zn\"")).code())
            .isEqualTo("value-out-of-range");
        assertThat(service.post("/v1/plans", "{\"element\": \"Cu\", \"wanted_factor\": 2}").code())
            .isEqualTo("value-out-of-range");
        assertThat(service.post("/v1/plans", ASKED.replace("\"element\": \"Cu\"", "\"element\": \"Cx\"")).status())
            .isEqualTo(422);
        assertThat(service.post("/v1/plans",
            "{\"pilot\": {\"sample\": \"none\", \"group\": \"x\"}, \"element\": \"Cu\", \"wanted_factor\": 2}").status())
            .isEqualTo(404);
    }
}
