package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What a client sees of reference spots, and of an alloy of ranges, a balance and minor elements. Data are invented. */
class ReferenceAndRangeAnswerTest {
    private static final String HEAD =
        "label,particle,session,beam_energy_kev,role,true_composition,Ag at%,Cu at%,Sn at%,Bi at%\n";
    private static final String POWDER = """
        1,P1,s1,15,specimen,,55.1,44.9,,
        2,P1,s1,15,specimen,,55.5,44.5,,
        3,P2,s1,15,specimen,,55.9,44.1,,
        4,P2,s1,15,specimen,,55.4,44.6,,
        5,P3,s1,15,specimen,,55.1,44.9,,
        6,P3,s1,15,specimen,,55.0,45.0,,
        7,P4,s1,15,specimen,,55.5,44.5,,
        8,P4,s1,15,specimen,,56.0,44.0,,
        """;
    private static RunningService service;

    @BeforeAll
    static void start() {
        service = RunningService.start();
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    private static String piece(String session, int kev, String composition, String... readings) {
        StringBuilder rows = new StringBuilder();
        for (int i = 0; i < readings.length; i++) {
            rows.append("R").append(i).append(",,").append(session).append(',').append(kev).append(",reference,\"")
                .append(composition).append("\",").append(readings[i]).append('\n');
        }
        return rows.toString();
    }

    private static Reply ask(String form, String rows) {
        return service.post("/v1/interpretations" + form + "?nominal=Ag:60.1,Cu:39.9&unit=at%25", "text/csv",
            HEAD + POWDER + rows);
    }

    private static JsonNode reference(String rows) {
        return ask("", rows).json().at("/groups/0/reference");
    }

    @Test
    void a_fitting_piece_is_told_with_factor_number_of_spots_and_both_uncertainties() {
        String five = piece("s1", 15, "Ag:60.1,Cu:39.9 at%", "55.6,44.4,,", "55.3,44.7,,", "55.9,44.1,,", "55.2,44.8,,",
            "55.7,44.3,,");

        JsonNode used = reference(five);

        assertThat(used.path("used").asBoolean()).isTrue();
        assertThat(used.path("spot_count").asInt()).isEqualTo(5);
        JsonNode silver = used.path("corrections").path(0);
        assertThat(silver.path("factor").asDouble()).isCloseTo(0.601 / 0.5554, within(1e-9));
        assertThat(silver.path("log_odds_u_shared_after").asDouble())
            .isCloseTo(silver.path("log_odds_u_shared_before").asDouble() * Math.sqrt(0.2), within(1e-3));
        assertThat(ask(".md", five).text()).contains("Every spot was multiplied by true over measured fraction of the"
            + " reference piece (Ag by 1.082, Cu by 0.897)");
        assertThat(ask("", five).json().at("/groups/0/elements/0/verdict").asText()).isEqualTo("consistent");
        assertThat(ask("", "").json().at("/groups/0/elements/0/verdict").asText()).isEqualTo("inconclusive");
    }

    @Test
    void a_piece_that_does_not_fit_is_told_with_the_reason_and_corrects_nothing() {
        assertRefused(piece("s1", 20, "Ag:60.1,Cu:39.9 at%", "55.6,44.4,,", "55.3,44.7,,", "55.9,44.1,,"),
            "The reference spots of this session are of another beam energy (20 keV); those of this group are of 15 keV.");
        assertRefused(piece("s1", 15, "Sn:80,Bi:20 at%", ",,81,19", ",,80,20", ",,81,19"),
            "The reference piece (Sn, Bi) shares no element with the group (Ag, Cu).");
        assertRefused(piece("s2", 15, "Ag:60.1,Cu:39.9 at%", "55.6,44.4,,", "55.3,44.7,,", "55.9,44.1,,"),
            "The reference spots are of another session (\"s2\"); those of this group are of \"s1\".");
    }

    private static void assertRefused(String rows, String why) {
        JsonNode answer = ask("", rows).json().at("/groups/0");
        assertThat(answer.path("reference").path("used").asBoolean()).isFalse();
        assertThat(answer.path("reference").path("explanation").asText()).isEqualTo(why);
        assertThat(answer.path("caveats")).anySatisfy(caveat ->
            assertThat(caveat.path("code").asText()).isEqualTo("reference-not-used"));
        assertThat(answer.at("/elements/0/mean_atomic_percent").asDouble()).isCloseTo(55.44, within(0.01));
    }

    /** Ranges of a stainless steel, invented round; Mo is near its limit of detection, V is foreign, P is not measured. */
    @Test
    void an_alloy_of_ranges_shows_limits_balance_minor_and_foreign_elements() {
        String sample = """
            {"nominal": {"unit": "wt%", "elements": {"Fe": "balance", "Cr": {"low": 16, "high": 18},
             "Ni": {"low": 10, "high": 14}, "Mo": {"low": 0, "high": 0.5}, "P": {"low": 0, "high": 0.1}}},
             "accuracy_class": "standards-based"}""";
        StringBuilder spots = new StringBuilder();
        for (int particle = 1; particle <= 4; particle++) {
            for (int spot = 1; spot <= 2; spot++) {
                spots.append(spots.isEmpty() ? "" : ",").append("{\"label\": \"").append(particle).append(spot)
                    .append("\", \"particle\": \"P").append(particle).append("\", \"elements\": {\"Fe\": ")
                    .append(64.0 + 0.1 * particle).append(", \"Cr\": ").append(21.9 + 0.05 * spot)
                    .append(", \"Ni\": 12.0, \"Mo\": \"").append(spot == 1 ? "<0.3" : "0.32").append("\", \"V\": 1.5}}");
            }
        }

        JsonNode answer = service.post("/v1/interpretations",
            "{\"sample\": " + sample + ", \"unit\": \"wt%\", \"spots\": [" + spots + "]}").json();
        JsonNode group = answer.at("/groups/0");

        JsonNode iron = answer.at("/nominal/elements/0");
        assertThat(iron.path("derived").asBoolean()).isTrue();
        assertThat(iron.path("from_atomic_percent").asDouble()).isLessThan(iron.path("to_atomic_percent").asDouble());
        assertThat(verdict(group, "Cr")).isEqualTo("enriched");
        assertThat(verdict(group, "Mo")).isEqualTo("consistent");
        assertThat(element(group, "Mo").path("below_limit_count").asInt()).isEqualTo(4);
        assertThat(group.path("not_measured")).extracting(JsonNode::asText).containsExactly("P");
        JsonNode vanadium = group.path("foreign_elements").path(0);
        assertThat(vanadium.path("element").asText()).isEqualTo("V");
        assertThat(group.path("caveats")).anySatisfy(caveat -> assertThat(caveat.path("detail").asText())
            .startsWith("V is not in the nominal and was found at 1.6"));
    }

    private static String verdict(JsonNode group, String symbol) {
        return element(group, symbol).path("verdict").asText();
    }

    private static JsonNode element(JsonNode group, String symbol) {
        for (JsonNode element : group.path("elements")) {
            if (element.path("element").asText().equals(symbol)) {
                return element;
            }
        }
        throw new AssertionError("no " + symbol + " in " + group);
    }
}
