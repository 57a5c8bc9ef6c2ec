package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** A search of the board that would have to interpret very many samples. Invented lots. */
class LongSearchTest {
    private static final Pattern NEXT = Pattern.compile("<a href=\"([^\"]+)\" rel=\"next\">");

    @Test
    void a_search_that_would_take_long_stops_and_offers_to_go_on() {
        try (RunningService service = RunningService.start()) {
            InventedLots.recordMany(service.laboratory(), SamplesView.MOST_ANSWERS + 60, 0,
                Instant.parse("2026-11-20T08:00:00Z"));
            String page = service.get("/samples?verdict=consistent").text();
            assertThat(page).containsPattern("\\d+ samples looked at for this page");
            Matcher next = NEXT.matcher(page);
            assertThat(next.find()).isTrue();
            assertThat(service.get(next.group(1).replace("&amp;", "&")).status()).isEqualTo(200);
        }
    }
}
