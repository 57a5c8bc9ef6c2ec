package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;
import surfeit.report.figure.Figure;
import surfeit.report.figure.StyleSource;

/** Figures and reports of an answer as files over HTTP. */
class FigureRouteTest {
    private static final String DEPTHS = "{\"alloy\": \"ag-cu-eutectic\", \"beam_energies_kev\": [5, 15]}";
    private static final String PLAN = "{\"element\": \"Cu\", \"wanted_factor\": 1.3, "
        + "\"sample\": {\"alloy\": \"ag-cu-eutectic\"}, "
        + "\"scatter\": {\"between_log_odds\": 0.15, \"within_log_odds\": 0.15}}";
    private static RunningService service;

    @BeforeAll
    static void start() {
        service = RunningService.start();
        InventedPowder.etchedLots(service);
        service.put("/v1/samples/at-15-kev", "{\"alloy\": \"ag-cu-eutectic\", \"beam_energy_kev\": 15}");
        service.post("/v1/samples/at-15-kev/spots", "text/csv", InventedPowder.WIDE);
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    private static Element parsed(Reply reply) {
        try {
            return DocumentBuilderFactory.newInstance().newDocumentBuilder()
                .parse(new InputSource(new StringReader(reply.text()))).getDocumentElement();
        } catch (Exception e) {
            throw new AssertionError("No well-formed XML: " + reply.text(), e);
        }
    }

    private static String title(Reply reply) {
        assertThat(reply.status()).as(reply.text()).isEqualTo(200);
        assertThat(reply.mediaType()).isEqualTo("image/svg+xml");
        assertThat(reply.header(SecurityHeaders.POLICY).orElseThrow()).isEqualTo("default-src 'none'; style-src "
            + Figure.STYLE_SOURCE + "; base-uri 'none'; form-action 'none'; frame-ancestors 'none'");
        Element figure = parsed(reply);
        String style = figure.getElementsByTagName("style").item(0).getTextContent();
        assertThat(StyleSource.of(style)).isEqualTo(Figure.STYLE_SOURCE);
        assertThat(figure.getElementsByTagName("script").getLength()).isZero();
        assertThat(figure.getElementsByTagName("desc").item(0).getTextContent()).isNotBlank();
        return figure.getElementsByTagName("title").item(0).getTextContent();
    }

    @Test
    void every_figure_of_a_sample_on_record_is_a_file_of_its_own() {
        String address = "/v1/samples/at-15-kev/segregation.svg";
        Map.of("", "enrichment factors by feature", "?figure=factors", "enrichment factors by feature",
            "?figure=spots", "every spot, by feature and particle", "?figure=contrasts", "groups against each other",
            "?figure=depths", "how deep the signal comes from").forEach((query, title) ->
            assertThat(title(service.get(address + query))).isEqualTo("Sample at-15-kev: " + title));
        assertThat(title(service.get(address + "?by=particle"))).endsWith("by particle");
    }

    @Test
    void the_figures_of_spots_in_the_body_are_those_of_the_same_spots_on_record() {
        String body = InventedPowder.interpretation();
        for (String figure : new String[] {"factors", "spots", "contrasts"}) {
            String stateless = service.post("/v1/interpretations.svg?figure=" + figure, body).text();
            String stored = service.get("/v1/samples/as-made/segregation.svg?figure=" + figure).text();
            assertThat(stored.replace("Sample as-made", "Sample without a name")).isEqualTo(stateless);
        }
        assertThat(title(service.post("/v1/interpretations.svg?alloy=ag-cu-eutectic&beam_energy_kev=15&figure=depths",
            "text/csv", InventedPowder.WIDE))).endsWith("how deep the signal comes from");
    }

    @Test
    void spots_in_a_file_that_has_a_name_are_reported_under_it() {
        byte[] table = InventedPowder.WIDE.getBytes(StandardCharsets.UTF_8);
        String[] headers = {"Content-Type", "text/csv", "Content-Disposition", "attachment; filename=\"lot <8>.csv\""};
        assertThat(title(service.send("POST", "/v1/interpretations.svg?alloy=ag-cu-eutectic", table, headers)))
            .isEqualTo("lot <8>.csv: enrichment factors by feature");
        assertThat(parsed(service.send("POST", "/v1/interpretations.html?alloy=ag-cu-eutectic", table, headers))
            .getTextContent()).contains("lot <8>.csv: enrichment and depletion at the surface");
    }

    @Test
    void comparisons_depths_and_plans_can_be_drawn() {
        assertThat(title(service.get("/v1/comparisons.svg?a=as-made&b=etched"))).isEqualTo("as-made against etched");
        assertThat(title(service.post("/v1/signal-depths.svg", DEPTHS)))
            .isEqualTo("ag-cu-eutectic: how deep the signal comes from");
        assertThat(title(service.post("/v1/plans.svg", PLAN))).isEqualTo(
            "Cu enriched by a factor of 1.3: chance to show it");
        assertThat(service.post("/v1/plans.json", PLAN).text()).isEqualTo(service.post("/v1/plans", PLAN).text());
    }

    @Test
    void the_report_is_one_page_that_lets_in_its_own_style_and_nothing_else() {
        Reply report = service.get("/v1/samples/at-15-kev/segregation.html");
        assertThat(report.mediaType()).isEqualTo("text/html");
        Element page = parsed(report);
        assertThat(page.getElementsByTagName("figure").getLength()).isEqualTo(4);
        assertThat(report.header(SecurityHeaders.POLICY).orElseThrow()).contains("default-src 'none'",
            "style-src " + StyleSource.of(page.getElementsByTagName("style").item(0).getTextContent()));
        assertThat(page.getTextContent())
            .contains("What was measured", "beam: 15 keV", "Cu enriched", "at 15 keV they are usually Ag La and Cu Ka",
            "Table reference/elements.csv: SHA-256", "Table reference/mass-absorption.csv: SHA-256",
            "Sample at-15-kev, revision 2");
        assertThat(parsed(service.post("/v1/interpretations.html", InventedPowder.interpretation()))
            .getElementsByTagName("figure").getLength()).as("no beam energy, no depths").isEqualTo(3);
    }

    @Test
    void a_browser_that_opens_the_answer_gets_the_report() {
        assertThat(service.get("/v1/samples/at-15-kev/segregation", "Accept",
            "text/html,application/xhtml+xml,application/xml;q=0.9,image/avif,*/*;q=0.8").mediaType())
            .isEqualTo("text/html");
        assertThat(service.get("/v1/samples/at-15-kev/segregation", "Accept", "image/*").mediaType())
            .isEqualTo("image/svg+xml");
    }

    @Test
    void lines_the_workstation_stated_stand_in_the_methods_paragraph() {
        String body = InventedPowder.interpretation().replace("\"Ag\": 21.20",
            "\"Ag\": {\"value\": 21.20, \"line\": \"La\"}");
        assertThat(service.post("/v1/interpretations.md", body).text()).contains("Lines used: Ag La.");
        assertThat(service.post("/v1/interpretations.md", InventedPowder.interpretation()).text())
            .doesNotContain("Lines used", "lines were not stated");
    }

    @Test
    void an_unchanged_figure_is_not_sent_again() {
        String address = "/v1/samples/at-15-kev/segregation.svg?figure=spots";
        String etag = service.get(address).etag();
        assertThat(service.get(address, "If-None-Match", etag).status()).isEqualTo(304);
        assertThat(service.get("/v1/samples/at-15-kev/segregation.html", "If-None-Match", etag).status())
            .isEqualTo(200);
    }

    @Test
    void what_cannot_be_drawn_is_refused_with_the_reason() {
        Reply depths = service.get("/v1/samples/as-made/segregation.svg?figure=depths");
        assertThat(depths.code()).isEqualTo("value-out-of-range");
        assertThat(depths.json().path("detail").asText()).contains("beam_energy_kev");
        assertThat(service.get("/v1/samples/as-made/segregation.svg?figure=contrasts&by=sample").json()
            .path("detail").asText()).contains("fewer than two groups");
        assertThat(service.get("/v1/samples/as-made/segregation.svg?figure=spot").json().path("detail").asText())
            .contains("nearest known: spots");
        assertThat(service.get("/v1/samples/as-made/segregation.csv?figure=spots").code())
            .isEqualTo("unknown-parameter");
        assertThat(service.post("/v1/interpretations?figure=spots", InventedPowder.interpretation()).code())
            .isEqualTo("unknown-parameter");
    }
}
