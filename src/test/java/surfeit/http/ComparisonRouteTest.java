package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import surfeit.storage.OnBothEngines;
import surfeit.storage.RecordEngine;

/** Two lots on record against each other, over HTTP. */
@OnBothEngines
class ComparisonRouteTest {
    @Parameter
    RecordEngine engine;
    private static RunningService service;

    @BeforeParameterizedClassInvocation
    static void start(RecordEngine engine) {
        service = RunningService.start(engine);
        InventedPowder.etchedLots(service);
    }

    @AfterParameterizedClassInvocation
    static void stop() {
        service.close();
    }

    @Test
    void etching_is_seen_feature_by_feature() {
        JsonNode answer = service.get("/v1/comparisons?a=as-made&b=etched").json();
        assertThat(answer.path("features"))
            .extracting(feature -> feature.path("feature").asText() + " " + feature.path("state").asText())
            .containsExactly("dark patch gone", "matrix changed", "cavity appeared");
        JsonNode matrix = answer.path("features").path(1);
        assertThat(matrix.path("contrast").path("elements")).extracting(element -> element.path("verdict").asText())
            .containsExactly("lower", "higher");
        assertThat(matrix.path("contrast").path("correlation").asDouble()).isEqualTo(0.9);
        assertThat(answer.path("summary").path(0).asText())
            .startsWith("dark patch, gone: spots of it in as-made on 3 of 3 particles");
    }

    @Test
    void the_same_numbers_come_as_rows_and_to_read() {
        assertThat(service.get("/v1/comparisons.csv?a=as-made&b=etched").text())
            .contains("as-made,etched,matrix,changed,Cu,higher");
        assertThat(service.get("/v1/comparisons.md?a=as-made&b=etched").text()).contains("| matrix | changed | Cu | higher |");
    }

    @Test
    void an_answer_that_did_not_change_is_not_sent_again() {
        Reply first = service.get("/v1/comparisons?a=as-made&b=etched");
        assertThat(service.get("/v1/comparisons?a=as-made&b=etched", "If-None-Match", first.etag()).status()).isEqualTo(304);
    }

    @Test
    void what_cannot_be_compared_is_refused() {
        assertThat(service.get("/v1/comparisons?a=as-made").code()).isEqualTo("unknown-parameter");
        assertThat(service.get("/v1/comparisons?a=as-made&b=no-such").status()).isEqualTo(404);
        assertThat(service.get("/v1/comparisons?a=as-made&b=etched&by=particle").code()).isEqualTo("value-out-of-range");
    }
}
