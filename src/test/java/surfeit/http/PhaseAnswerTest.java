package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * What answers say of an alloy's phases. Spots are invented; handbook compositions are NIST Ag-Cu at 779.1 °C:
 * (Ag) 8.27, (Cu) 92.53 wt% Cu.
 */
class PhaseAnswerTest {
    private static final String ALLOY = "alloy=ag-cu-eutectic&accuracy_class=standards-based";
    private static final String NOMINAL = "nominal=Ag:71.59,Cu:28.41&unit=wt%25&accuracy_class=standards-based";
    private static final String HEAD = "label,particle,feature,Ag wt%,Cu wt%\n";
    private static final String ON_COPPER = HEAD + "1,P1,patch,7.6,92.4\n2,P1,patch,7.3,92.7\n3,P2,patch,7.5,92.5\n"
        + "4,P2,patch,7.4,92.6\n5,P3,patch,7.7,92.3\n6,P3,patch,7.4,92.6\n";
    private static final String EUTECTIC = HEAD + "1,P1,matrix,71.61,28.39\n2,P1,matrix,71.57,28.43\n"
        + "3,P2,matrix,71.60,28.40\n4,P2,matrix,71.58,28.42\n5,P3,matrix,71.59,28.41\n6,P3,matrix,71.59,28.41\n";
    private static RunningService service;

    @BeforeAll
    static void start() {
        service = RunningService.start();
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    private static Reply ask(String query, String table, String form) {
        return service.post("/v1/interpretations" + form + "?" + query, "text/csv", table);
    }

    private static JsonNode ask(String query, String table) {
        return ask(query, table, ".json").json();
    }

    private static JsonNode reading(JsonNode answer) {
        return answer.path("groups").get(0).path("phase_reading");
    }

    @Test
    void spots_on_one_phase_are_told_from_the_alloy_and_never_called_pure() {
        JsonNode answer = ask(ALLOY, ON_COPPER);
        assertThat(reading(answer).path("reading").asText()).isEqualTo("one phase");
        JsonNode phases = reading(answer).path("phases");
        assertThat(phases.findValuesAsText("phase")).containsExactly("(Ag)", "(Cu)");
        assertThat(phases.get(0).path("fits").asBoolean()).isFalse();
        assertThat(phases.get(0).path("p_value_adjusted").asDouble()).isLessThan(0.05);
        assertThat(phases.get(1).path("fits").asBoolean()).isTrue();
        double bound = reading(answer).path("at_least").path("atomic_percent").asDouble();
        assertThat(bound).isBetween(90.0, 95.46);
        assertThat(answer.path("summary").get(0).asText()).contains("Fits (Cu) and no other known phase; "
            + "a spot smaller than the phases measures one phase, not the alloy. At least "
            + Math.floor(bound * 10) / 10
            + " at% Cu.");
        assertThat(answer.toString()).doesNotContain("pure Cu", "100 %\"");
    }

    /** By hand: 20.14 / 84.26 = 23.902 % of the mass; with 10.3 and 9.1 g/cm3 26.225 % of the volume. */
    @Test
    void spots_at_the_eutectic_hold_the_handbook_share_of_copper_solution_by_mass_and_volume() {
        JsonNode answer = ask(ALLOY, EUTECTIC);
        assertThat(reading(answer).path("reading").asText()).isEqualTo("mixture");
        JsonNode line = reading(answer).path("tie_line");
        assertThat(line.path("from").asText() + line.path("to").asText()).isEqualTo("(Ag)(Cu)");
        assertThat(line.path("share_of_mass_percent").asDouble()).isCloseTo(23.902, within(0.002));
        assertThat(line.path("share_of_volume_percent").asDouble()).isCloseTo(26.225, within(0.005));
        assertThat(line.path("nominal_share_of_mass_percent").asDouble()).isCloseTo(23.902, within(0.0005));
        assertThat(line.path("share_of_mass_percent_low").asDouble()).isLessThan(23.9);
        assertThat(line.path("share_of_mass_percent_high").asDouble()).isGreaterThan(23.91);
        assertThat(line.path("spots").path("spot_count").asInt()).isEqualTo(6);
        assertThat(answer.path("summary").get(0).asText()).doesNotContain("mixture");
    }

    @Test
    void the_phases_compared_with_are_shown_with_their_source() {
        JsonNode known = ask(ALLOY, EUTECTIC).path("known_phases");
        assertThat(known.findValuesAsText("name")).containsExactly("(Ag)", "(Cu)");
        assertThat(known.get(0).path("source").asText()).contains("NIST");
        assertThat(ask(ALLOY, EUTECTIC, ".md").text()).contains("## Phases", "| matrix | mixture |",
            "(Ag) of Ag-Cu: NIST");
    }

    @Test
    void a_table_has_the_reading_beside_every_element() {
        String[] rows = ask(ALLOY, EUTECTIC, ".csv").text().split("\r?\n");
        int reading = List.of(rows[0].split(",")).indexOf("phase_reading");
        String[] cells = rows[1].split(",", -1);
        assertThat(cells[reading]).isEqualTo("mixture");
        assertThat(cells[reading + 2]).isEqualTo("(Ag); (Cu)");
        assertThat(Double.parseDouble(cells[reading + 3])).isCloseTo(23.902, within(0.002));
    }

    @Test
    void spots_on_one_phase_or_the_other_are_named_as_such_with_a_warning_and_no_share() {
        JsonNode answer = ask("alloy=ag-cu-eutectic", HEAD
            + "1,P1,spot,91.7,8.3\n2,P1,spot,7.4,92.6\n3,P2,spot,91.9,8.1\n"
            + "4,P2,spot,7.4,92.6\n5,P3,spot,92.4,7.6\n6,P3,spot,8.4,91.6\n7,P3,spot,91.4,8.6\n8,P4,spot,6.4,93.6\n"
            + "9,P4,spot,7.8,92.2\n");
        assertThat(reading(answer).path("reading").asText()).isEqualTo("one phase or the other");
        JsonNode line = reading(answer).path("tie_line");
        assertThat(line.path("share_of_mass_percent").isNull()).isTrue();
        assertThat(line.path("spots").path("clusters").path("at_both_phases").asBoolean()).isTrue();
        assertThat(answer.path("groups").get(0).path("caveats").toString())
            .contains("\"code\":\"one-phase-or-the-other\",\"weight\":\"warning\"");
        assertThat(answer.path("summary").get(0).asText())
            .contains("4 at (Ag) and 5 at (Cu): the beam hit one phase or the other");
    }

    @Test
    void without_a_named_alloy_the_handbook_phases_of_the_nominal_are_taken() {
        assertThat(reading(ask(NOMINAL, ON_COPPER)).path("reading").asText()).isEqualTo("one phase");
        JsonNode none = ask("nominal=Ag:50,W:50&unit=wt%25", "label,particle,Ag wt%,W wt%\n1,P1,50,50\n2,P1,51,49\n");
        assertThat(reading(none).isNull()).isTrue();
        assertThat(none.path("known_phases").size()).isZero();
    }

    @Test
    void phases_that_spots_and_diffraction_do_not_tell_alike_get_their_possible_reasons() {
        String body = "{\"sample\": {\"alloy\": \"ag-cu-eutectic\", \"accuracy_class\": \"standards-based\", "
            + "\"diffraction_phases\": [\"(Ag)\", \"Cu2O\"]}, \"unit\": \"wt%\", \"spots\": " + spots(ON_COPPER) + "}";
        JsonNode answer = service.post("/v1/interpretations", body).json();
        assertThat(answer.path("diffraction").findValuesAsText("phase")).containsExactly("(Ag)", "Cu2O", "(Cu)");
        assertThat(answer.path("diffraction").findValuesAsText("shown_by"))
            .containsExactly("diffraction only", "not a known phase", "spots only");
        assertThat(answer.path("diffraction").get(2).path("possible_reasons").get(0).asText()).contains("amorphous");
        assertThat(answer.path("summary").size()).isEqualTo(4);
        assertThat(answer.path("summary").get(3).asText())
            .startsWith("(Cu): spots show it (patch), diffraction does not. Possible reasons: amorphous");
        assertThat(service.post("/v1/interpretations.md", body).text()).contains("- (Cu): spots show it");
    }

    private static String spots(String table) {
        StringBuilder list = new StringBuilder();
        table.lines().skip(1).map(line -> line.split(",")).forEach(cells -> list.append(list.isEmpty() ? "" : ",")
            .append("{\"label\": \"").append(cells[0]).append("\", \"particle\": \"").append(cells[1])
            .append("\", \"feature\": \"").append(cells[2]).append("\", \"elements\": {\"Ag\": ").append(cells[3])
            .append(", \"Cu\": ").append(cells[4]).append("}}"));
        return "[" + list + "]";
    }

    @Test
    void a_comparison_says_what_phases_a_feature_reads_like_in_both_samples() {
        String sample = "{\"alloy\": \"ag-cu-eutectic\", \"accuracy_class\": \"standards-based\"}";
        service.put("/v1/samples/cast", sample);
        service.post("/v1/samples/cast/spots", "text/csv", EUTECTIC.replace("matrix", "patch"));
        service.put("/v1/samples/annealed", sample);
        service.post("/v1/samples/annealed/spots", "text/csv", ON_COPPER);
        JsonNode feature = service.get("/v1/comparisons?a=cast&b=annealed").json().path("features").get(0);
        assertThat(feature.path("a").path("phase_reading").path("reading").asText()).isEqualTo("mixture");
        assertThat(feature.path("b").path("phase_reading").path("reading").asText()).isEqualTo("one phase");
        assertThat(feature.path("sentence").asText())
            .contains("It reads like a mixture of (Ag) and (Cu) in cast and like (Cu) in annealed.");
    }
}
