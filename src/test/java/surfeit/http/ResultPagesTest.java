package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Flat rows page by page, over samples; an invented powder. */
class ResultPagesTest {
    private static RunningService service;

    @BeforeAll
    static void start() {
        service = RunningService.start();
        for (String sample : List.of("A1", "A2", "A3", "B1")) {
            service.put("/v1/samples/" + sample, "{\"alloy\": \"ag-cu-eutectic\"}");
            StringBuilder table = new StringBuilder("label,particle,feature,acquired_time,Ag at%,Cu at%\n");
            for (int i = 0; i < 37; i++) {
                boolean patch = i % 3 == 0;
                table.append(sample).append('-').append(i).append(",P").append(i % 4)
                    .append(patch ? ",patch" : ",matrix")
                    .append(",2026-11-20T14:").append(10 + i % 40).append(":00+01:00,")
                    .append(patch ? 20.5 + i % 5 : 60.5)
                    .append(',').append(patch ? 79.5 - i % 5 : 39.5).append('\n');
            }
            assertThat(service.post("/v1/samples/" + sample + "/spots", "text/csv", table.toString()).status())
                .isEqualTo(201);
        }
        service.put("/v1/samples/A2-empty", "{\"alloy\": \"ag-cu-eutectic\"}");
        service.put("/v1/samples/A2-one-element", "{\"alloy\": \"ag-cu-eutectic\", \"excluded_elements\": [\"Cu\"]}");
        service.post("/v1/samples/A2-one-element/spots", "text/csv", "label,Ag at%\nx,60\n");
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    private static List<JsonNode> pages(String address, int size) {
        List<JsonNode> rows = new ArrayList<>();
        String cursor = "";
        do {
            JsonNode page = service.get(address + "page_size=" + size + cursor).json();
            page.path("items").forEach(rows::add);
            assertThat(page.path("items").size()).isLessThanOrEqualTo(size + 1);
            cursor = page.path("next").isNull() ? "" : "&cursor=" + page.path("next").asText();
        } while (!cursor.isEmpty());
        return rows;
    }

    @ParameterizedTest
    @CsvSource({"'/v1/results?',296", "'/v1/results?element=Cu&',148", "'/v1/results?sample=A2&',74",
        "'/v1/results?verdict=enriched&',52", "'/v1/results?from=2026-11-20T14:30:00%2B01:00&',136"})
    void pages_of_any_size_hold_the_rows_of_the_whole_list_once_and_in_its_order(String address, int count) {
        List<JsonNode> lines = service.get(address.replace("results?", "results.ndjson?").replaceAll("[&?]$", ""))
            .text()
            .lines().map(OpenApi::parse).toList();
        assertThat(lines).hasSize(count);
        for (int size : new int[] {1, 7, 20, 5000}) {
            assertThat(pages(address, size)).as("page_size " + size).isEqualTo(lines);
        }
    }

    @ParameterizedTest
    @CsvSource({"'',13", "'feature=patch&',13", "'feature=matrix&',0", "'particle=P1&',3"})
    void spots_that_show_something_come_in_pages_as_in_the_whole_list(String filter, int count) {
        String address = "/v1/samples/A1/spots";
        List<JsonNode> lines = service.get(address + ".ndjson?" + filter + "verdict=enriched").text().lines()
            .map(OpenApi::parse).toList();
        assertThat(lines).hasSize(count);
        for (int size : new int[] {1, 5, 5000}) {
            assertThat(pages(address + "?" + filter + "verdict=enriched&", size)).isEqualTo(lines);
        }
    }

    @Test
    void times_come_as_text_and_in_milliseconds_since_1970() {
        JsonNode row = service.get("/v1/results?sample=A1&page_size=1").json().at("/items/0");
        assertThat(row.path("acquired_time").asText()).isEqualTo("2026-11-20T14:10:00+01:00");
        assertThat(row.path("acquired_epoch_ms").asLong()).isEqualTo(1_795_180_200_000L);
        assertThat(row.path("recorded_time").asText()).isEqualTo("2026-11-24T08:30:00Z");
        assertThat(row.path("recorded_epoch_ms").asLong()).isEqualTo(1_795_509_000_000L);
        assertThat(service.get("/v1/results.csv?sample=A1").text().lines().skip(1).findFirst().orElseThrow())
            .contains(",2026-11-20T14:10:00+01:00,1795180200000,2026-11-24T08:30:00Z,1795509000000,");
    }

    @Test
    void a_cursor_that_no_list_gave_is_refused() {
        String forged = Cursor.of(List.of("/v1/results", "element=Cu"), "A1");
        assertThat(service.get("/v1/results?element=Cu&cursor=" + forged).code()).isEqualTo("cursor-mismatch");
    }
}
