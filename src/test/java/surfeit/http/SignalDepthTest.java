package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Where the X-rays of a composition come from, over HTTP. */
class SignalDepthTest {
    private static RunningService service;

    @BeforeAll
    static void start() {
        service = RunningService.start();
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    @Test
    void an_alloy_of_the_catalogue_has_a_line_of_choice_per_element() {
        Reply answer = service.post("/v1/signal-depths", "{\"alloy\": \"ag-cu-eutectic\", \"beam_energies_kev\": [5, 15]}");
        assertThat(answer.status()).isEqualTo(200);
        JsonNode at15 = answer.json().path("beam_energies").path(1);
        assertThat(at15.path("lines")).filteredOn(line -> line.path("line_of_choice").asBoolean())
            .extracting(line -> line.path("element").asText() + " " + line.path("line").asText()).containsExactlyInAnyOrder("Cu Ka", "Ag La");
        JsonNode line = at15.path("lines").path(0);
        assertThat(line.path("depth_50_nm").asDouble()).isLessThan(line.path("depth_90_nm").asDouble());
        assertThat(line.path("generated").path("mean_depth_nm").asDouble()).isGreaterThanOrEqualTo(line.path("mean_depth_nm").asDouble());
        assertThat(answer.json().path("material").path("density_given").asBoolean()).isFalse();
    }

    @Test
    void the_signal_of_pure_silicon_comes_from_as_deep_as_the_model_says() {
        JsonNode line = service.post("/v1/signal-depths", "{\"nominal\": {\"unit\": \"at%\", \"elements\": {\"Si\": 100}},"
            + " \"density_g_cm3\": 2.33, \"beam_energies_kev\": [15]}").json().path("beam_energies").path(0).path("lines").path(0);
        // Monte Carlo for this project, shared/vectors/physics-depth.json, case SiK_in_Si_15kV: d50 692 nm, 12 % tolerance
        assertThat(line.path("depth_50_nm").asDouble()).isBetween(692.2 * 0.88, 692.2 * 1.12);
    }

    @Test
    void a_question_that_cannot_be_answered_is_refused_with_what_was_expected() {
        assertThat(service.post("/v1/signal-depths", "{\"alloy\": \"ag-cu-eutectik\", \"beam_energies_kev\": [15]}").code()).isEqualTo("alloy-unknown");
        assertThat(service.post("/v1/signal-depths", "{\"alloy\": \"ag-cu-eutectic\", \"beam_energies_kev\": [500]}").code()).isEqualTo("value-out-of-range");
        assertThat(service.post("/v1/signal-depths", "{\"alloy\": \"ag-cu-eutectic\"}").code()).isEqualTo("value-out-of-range");
        assertThat(service.post("/v1/signal-depths", "{\"beam_energies_kev\": [15]}").code()).isEqualTo("nominal-incomplete");
        assertThat(service.post("/v1/signal-depths", "{\"alloy\": \"ag-cu-eutectic\", \"beam_energy_kev\": [15]}").json().path("detail").asText())
            .contains("beam_energies_kev");
    }
}
