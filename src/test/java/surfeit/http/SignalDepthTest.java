package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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
            .extracting(line -> line.path("element").asText() + " " + line.path("line").asText())
            .containsExactlyInAnyOrder("Cu Ka", "Ag La");
        JsonNode line = at15.path("lines").path(0);
        assertThat(line.path("depth_50_nm").asDouble()).isLessThan(line.path("depth_90_nm").asDouble());
        assertThat(line.path("generated").path("mean_depth_nm").asDouble())
            .isGreaterThanOrEqualTo(line.path("mean_depth_nm").asDouble());
        assertThat(answer.json().path("material").path("density_given").asBoolean()).isFalse();
    }

    @Test
    void the_signal_of_pure_silicon_comes_from_as_deep_as_the_model_says() {
        JsonNode line = service.post("/v1/signal-depths", "{\"nominal\": {\"unit\": \"at%\", \"elements\": {\"Si\": 100}},"
            + " \"density_g_cm3\": 2.33, \"beam_energies_kev\": [15]}").json().path("beam_energies").path(0).path("lines")
            .path(0);
        // Monte Carlo for this project, shared/vectors/physics-depth.json, case SiK_in_Si_15kV: d50 692 nm, 12 % tolerance
        assertThat(line.path("depth_50_nm").asDouble()).isBetween(692.2 * 0.88, 692.2 * 1.12);
    }

    @Test
    void a_question_that_cannot_be_answered_is_refused_with_what_was_expected() {
        assertThat(service.post("/v1/signal-depths", "{\"alloy\": \"ag-cu-eutectik\", \"beam_energies_kev\": [15]}").code())
            .isEqualTo("alloy-unknown");
        assertThat(service.post("/v1/signal-depths", "{\"alloy\": \"ag-cu-eutectic\", \"beam_energies_kev\": [500]}").code())
            .isEqualTo("value-out-of-range");
        assertThat(service.post("/v1/signal-depths", "{\"alloy\": \"ag-cu-eutectic\"}").code()).isEqualTo("value-out-of-range");
        assertThat(service.post("/v1/signal-depths", "{\"beam_energies_kev\": [15]}").code()).isEqualTo("nominal-incomplete");
        assertThat(service.post("/v1/signal-depths", "{\"alloy\": \"ag-cu-eutectic\", \"beam_energy_kev\": [15]}").json()
            .path("detail").asText())
            .contains("beam_energies_kev");
    }

    private static JsonNode first(JsonNode elements, String symbol) {
        for (JsonNode element : elements) {
            if (element.path("element").asText().equals(symbol)) {
                return element;
            }
        }
        throw new AssertionError("no " + symbol + " in " + elements);
    }

    private static final String GOLD = "{\"nominal\": {\"unit\": \"wt%\", \"elements\": {\"Au\": 100}}, \"beam_energies_kev\": [15]";

    // Monte Carlo for this project, shared/vectors/physics-film.json: SiO2 of 5 nm on gold at 15 kV gives .001569 of pure Si.
    @Test
    void a_film_on_the_surface_says_what_it_adds_and_what_it_lets_through() {
        JsonNode answer = service.post("/v1/signal-depths", GOLD + ", \"film\": {\"residue\": \"silica\", \"thickness_nm\": 5}}")
            .json();
        assertThat(answer.path("film").path("mass_thickness_ug_cm2").asDouble()).isEqualTo(1.1, within(1e-9));
        JsonNode read = answer.path("beam_energies").path(0).path("reads_with_film");
        JsonNode silicon = first(read.path("elements"), "Si");
        assertThat(0.0015688).isBetween(silicon.path("film_over_pure_low").asDouble(), silicon.path("film_over_pure_high").asDouble());
        assertThat(silicon.path("mass_percent").asDouble()).isGreaterThan(0);
        assertThat(first(read.path("elements"), "Au").path("transmission").asDouble()).isBetween(0.99, 1.0);
        assertThat(answer.path("patch").isNull()).isTrue();
        assertThat(answer.path("beam_energies").path(0).path("reads_on_patch").isNull()).isTrue();
        assertThat(answer.path("beam_energies").path(0).path("reads_tilted").isNull()).isTrue();
    }

    // Monte Carlo for this project, shared/vectors/physics-patch.json: a silicon plug of 700 nm radius in gold reads 61.6 wt%, 91.8 at% Si.
    @Test
    void a_small_patch_says_how_much_of_the_signal_is_its_own_and_what_is_read() {
        JsonNode answer = service.post("/v1/signal-depths", GOLD
            + ", \"patch\": {\"nominal\": {\"unit\": \"at%\", \"elements\": {\"Si\": 100}}, \"diameter_um\": 1.4}}").json();
        assertThat(answer.path("patch").path("diameter_um").asDouble()).isEqualTo(1.4);
        JsonNode silicon = first(answer.path("beam_energies").path(0).path("reads_on_patch").path("elements"), "Si");
        assertThat(0.616).isBetween(silicon.path("share_of_patch_low").asDouble(), silicon.path("share_of_patch_high").asDouble());
        assertThat(61.6).isBetween(silicon.path("mass_percent_low").asDouble(), silicon.path("mass_percent_high").asDouble());
        assertThat(91.8).isBetween(silicon.path("atomic_percent_low").asDouble(), silicon.path("atomic_percent_high").asDouble());
    }

    // sin psi' on a sphere, take-off 35: half a radius from the top gives 65.00 degrees facing the detector and 5.00 facing away.
    @Test
    void a_place_on_a_particle_is_a_tilt_and_may_lie_in_shadow() {
        JsonNode towards = service.post("/v1/signal-depths", place("5", "0")).json();
        assertThat(towards.path("effective_take_off_angle_deg").asDouble()).isEqualTo(65, within(1e-6));
        assertThat(towards.path("beam_energies").path(0).path("reads_tilted").path("elements").path(0).path("mass_percent")
            .asDouble()).isEqualTo(100);
        assertThat(service.post("/v1/signal-depths", place("5", "180")).json().path("effective_take_off_angle_deg").asDouble())
            .isEqualTo(5, within(1e-6));
        Reply shadowed = service.post("/v1/signal-depths", place("7", "180"));
        assertThat(shadowed.code()).isEqualTo("value-out-of-range");
        assertThat(shadowed.json().path("detail").asText()).contains("hides the detector");
        assertThat(service.post("/v1/signal-depths", place("10", "0")).json().path("detail").asText())
            .contains("less than the radius");
    }

    // Edges L3 of Sn 3.929 and Ag 3.351 keV (Elam, Ravel and Sieber 2002): at 2.9 keV nothing of the solder is excited, the oil is.
    @Test
    void under_a_film_that_is_all_the_beam_excites_the_material_reads_nothing() {
        String solder = "{\"nominal\": {\"unit\": \"wt%\", \"elements\": {\"Sn\": 96.5, \"Ag\": 3.5}}, \"beam_energies_kev\": [2.9], \"film\": ";
        JsonNode read = service.post("/v1/signal-depths", solder + "{\"residue\": \"silicone-oil\", \"thickness_nm\": 20}}")
            .json()
            .path("beam_energies").path(0).path("reads_with_film");
        assertThat(read.path("elements_without_line")).extracting(JsonNode::asText).contains("Sn", "Ag");
        assertThat(first(read.path("elements"), "Si").path("mass_percent_without_film").isNull()).isTrue();
        assertThat(first(read.path("elements"), "Si").path("mass_percent").asDouble()).isPositive();
        JsonNode none = service.post("/v1/signal-depths", solder + "{\"residue\": \"silicone-oil\", \"thickness_nm\": 0}}").json()
            .path("beam_energies").path(0).path("reads_with_film");
        assertThat(first(none.path("elements"), "Si").path("mass_percent").isNull()).isTrue();
    }

    @Test
    void a_film_thinner_than_anything_adds_nothing() {
        for (int beam = 30; beam <= 40; beam++) {
            Reply reply = service.post("/v1/signal-depths", "{\"alloy\": \"zn-al-eutectic\", \"beam_energies_kev\": [" + beam
                + "], \"film\": {\"residue\": \"silicone-oil\", \"thickness_nm\": 1e-12}}");
            assertThat(reply.status()).as(beam + " keV").isEqualTo(200);
        }
    }

    private static String place(String offset, String azimuth) {
        return GOLD + ", \"on_sphere\": {\"diameter_um\": 20, \"offset_um\": " + offset + ", \"azimuth_deg\": " + azimuth + "}}";
    }

    @Test
    void the_top_may_be_as_thick_as_asked() {
        JsonNode tops = service.post("/v1/signal-depths", GOLD + ", \"top_depths_nm\": [3, 30]}").json().path("beam_energies")
            .path(0).path("lines").path(0)
            .path("share_of_top");
        assertThat(tops).extracting(top -> top.path("depth_nm").asDouble()).containsExactly(3.0, 30.0);
    }

    @Test
    void films_patches_and_places_that_cannot_be_are_refused_with_what_was_expected() {
        assertThat(refused("\"film\": {\"thickness_nm\": 5}")).contains("\"alloy\", \"nominal\" or \"residue\"", "got 0");
        assertThat(refused("\"film\": {\"residue\": \"silica\"}")).contains("\"thickness_nm\"");
        assertThat(refused("\"film\": {\"residue\": \"grease\", \"thickness_nm\": 5}"))
            .contains("silicone-oil", "got \"grease\"");
        assertThat(refused("\"film\": {\"residue\": \"silica\", \"alloy\": \"ag-cu-eutectic\", \"thickness_nm\": 5}"))
            .contains("got 2");
        assertThat(refused("\"film\": {\"nominal\": {\"unit\": \"at%\", \"elements\": {\"Si\": 33, \"O\": \"balance\"}}, \"thickness_nm\": 5}"))
            .contains("density of the material must be given");
        assertThat(refused("\"film\": {\"residue\": \"silica\", \"thickness_nm\": -5}")).contains("-5.0 nm");
        assertThat(refused("\"patch\": {\"alloy\": \"ag-cu-eutectic\"}")).contains("\"diameter_um\"");
        assertThat(refused("\"patch\": {\"alloy\": \"ag-cu-eutectic\", \"diameter_um\": 0}")).contains("Patch diameter");
        assertThat(refused("\"on_sphere\": {\"diameter_um\": 20}")).contains("\"offset_um\"");
        assertThat(refused("\"tilt_deg\": 5, \"on_sphere\": {\"diameter_um\": 20, \"offset_um\": 1}")).contains("got both");
    }

    /** What a refusal says, in its sentence and its list of faults. */
    private static String refused(String members) {
        Reply reply = service.post("/v1/signal-depths", GOLD + ", " + members + "}");
        assertThat(reply.status()).isEqualTo(422);
        return reply.json().path("detail").asText() + " " + reply.json().path("errors").findValuesAsText("detail");
    }
}
