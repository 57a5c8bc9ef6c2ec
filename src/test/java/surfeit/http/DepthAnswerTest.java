package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Locale;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What answers say of depth, from two beam energies and from the size of a particle; all spots are invented. */
class DepthAnswerTest {
    private static RunningService service;

    @BeforeAll
    static void start() {
        service = RunningService.start();
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    /** Three particles with two spots each at 5 and at 20 keV, of so much copper in at%, and a little scatter. */
    private static String table(double at5Kev, double at20Kev) {
        StringBuilder table = new StringBuilder("label,particle,feature,beam_energy_kev,Ag at%,Cu at%\n");
        double[] scatter = {-0.3, 0.4, 0.1, -0.2, 0.3, -0.3};
        for (int i = 0; i < scatter.length; i++) {
            row(table, "a" + i, i / 2 + 1, 5, at5Kev + scatter[i]);
            row(table, "b" + i, i / 2 + 1, 20, at20Kev + scatter[i]);
        }
        return table.toString();
    }

    private static void row(StringBuilder table, String label, int particle, int keV, double copper) {
        table.append(String.format(Locale.ROOT, "%s,P%d,dark patch,%d,%.2f,%.2f%n", label, particle, keV, 100 - copper,
            copper));
    }

    private static Reply ask(String form, String table, String... words) {
        return service.post("/v1/interpretations" + form + "?alloy=ag-cu-eutectic&accuracy_class=standards-based"
            + String.join("", words), "text/csv", table);
    }

    @Test
    void a_film_fades_as_the_beam_reaches_deeper_and_gets_a_thickness_with_its_interval() {
        JsonNode answer = ask("", table(65, 42)).json();
        assertThat(answer.path("depths").size()).isEqualTo(1);
        JsonNode copper = answer.path("depths").get(0);
        assertThat(copper.path("element").asText()).isEqualTo("Cu");
        assertThat(copper.path("reading").asText()).as(copper.toString()).isEqualTo("surface film");
        JsonNode film = copper.path("film");
        assertThat(film.path("mass_thickness_ug_cm2_low").asDouble()).isPositive()
            .isLessThan(film.path("mass_thickness_ug_cm2").asDouble());
        assertThat(film.path("mass_thickness_ug_cm2_high").asDouble())
            .isGreaterThan(film.path("mass_thickness_ug_cm2").asDouble());
        assertThat(copper.path("beam_energies").findValuesAsText("line")).hasSize(2);
        assertThat(answer.path("summary").get(2).asText()).startsWith("dark patch: Cu has the odds ratio ")
            .contains("it fades as the beam reaches deeper, as a film at the surface does");
    }

    @Test
    void a_deep_phase_stays() {
        JsonNode copper = ask("", table(80, 80)).json().path("depths").get(0);
        assertThat(copper.path("reading").asText()).isEqualTo("deep phase");
        assertThat(copper.path("film").isNull()).isTrue();
        assertThat(copper.path("detail").asText()).contains("it stays as the beam reaches deeper");
    }

    @Test
    void where_the_errors_of_two_energies_cover_both_nothing_is_claimed() {
        JsonNode copper = service.post("/v1/interpretations?alloy=ag-cu-eutectic", "text/csv", table(58, 48)).json()
            .path("depths").get(0);
        assertThat(copper.path("reading").asText()).isEqualTo("cannot tell");
        assertThat(copper.path("detail").asText()).contains("neither a film nor a deep phase is excluded");
    }

    @Test
    void the_report_has_the_readings_of_every_energy() {
        assertThat(ask(".md", table(80, 80)).text()).contains("## How deep it could reach",
            "| feature | element | keV | line | mean depth nm |", "| dark patch | Cu | 5 | Cu La |",
            "- dark patch: Cu has the odds ratio", "Pouchou and Pichoir 1991");
    }

    /** A skin cannot hold more copper than the particle: the arithmetic is checked by hand elsewhere. */
    @Test
    void a_skin_over_a_whole_particle_has_a_greatest_thickness() {
        JsonNode large = ask("", table(80, 80), "&particle_diameter_um=30").json().path("groups").get(1);
        assertThat(large.path("skin_limit").path("element").asText()).isEqualTo("Cu");
        assertThat(large.path("skin_limit").path("most_nm").asDouble())
            .isGreaterThan(large.path("skin_limit").path("thickness_nm").asDouble());
        assertThat(large.path("skin_limit").path("cannot_cover_particle").asBoolean()).isFalse();
        JsonNode answer = ask("", table(80, 80), "&particle_diameter_um=0.5").json();
        assertThat(answer.path("groups").get(1).path("skin_limit").path("cannot_cover_particle").asBoolean()).isTrue();
        assertThat(answer.path("summary").get(1).asText()).contains("it cannot hold more Cu than the particle",
            "it is a patch, or the skin is richer than it reads");
        assertThat(ask("", table(80, 80)).json().path("groups").get(0).path("skin_limit").isNull()).isTrue();
    }
}
