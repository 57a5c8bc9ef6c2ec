package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import surfeit.lab.TokenScope;

/** The pages of the board as they go over the wire. */
class BoardTest {
    private static final Pattern SAMPLE = Pattern.compile("<tbody id=\"s-([^\"]+)\"");
    private static final Pattern NEXT = Pattern.compile("<a href=\"([^\"]+)\" rel=\"next\">");
    private static final String PAGE = "text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8";
    private static RunningService service;

    @BeforeAll
    static void start() {
        service = RunningService.start();
        InventedLots.record(service, 120);
        InventedPowder.etchedLots(service);
        service.put("/v1/samples/empty", "{\"alloy\": \"ag-cu-eutectic\"}");
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    private static List<String> samples(String page) {
        List<String> names = new ArrayList<>();
        Matcher sample = SAMPLE.matcher(page);
        while (sample.find()) {
            names.add(sample.group(1));
        }
        return names;
    }

    private static String page(String address, String... headers) {
        Reply reply = service.get(address, headers);
        assertThat(reply.status()).as(reply.text()).isEqualTo(200);
        assertThat(reply.mediaType()).isEqualTo("text/html");
        assertThat(reply.header(SecurityHeaders.POLICY)).hasValue("default-src 'self'; object-src 'none'; "
            + "base-uri 'none'; form-action 'self'; frame-ancestors 'none'");
        assertThat(reply.text()).doesNotContain("style=", " onclick=", "<script>", "://www.google", "<style");
        return reply.text();
    }

    @Test
    void the_pages_of_the_list_hold_every_sample_once() {
        Set<String> seen = new TreeSet<>();
        String address = "/samples";
        int pages = 0;
        while (!address.isEmpty()) {
            String page = page(address);
            List<String> names = samples(page);
            assertThat(names).hasSizeBetween(1, 50).noneMatch(seen::contains);
            seen.addAll(names);
            Matcher next = NEXT.matcher(page);
            address = next.find() ? next.group(1).replace("&amp;", "&") : "";
            pages++;
        }
        assertThat(seen).hasSizeGreaterThan(120).isEqualTo(new TreeSet<>(service.get("/v1/samples?page_size=1000")
            .json()
            .path("items").findValuesAsText("sample")));
        assertThat(pages).isEqualTo(3);
    }

    @Test
    void a_line_says_what_stands_out_by_how_much_where_and_how_sure() {
        String page = page("/samples?q=as-made");
        assertThat(page.replaceAll("<svg.*?</svg>", "").replaceAll("<[^>]+>", ""))
            .containsPattern("Cu enriched \u00d71\\.9\\d \\(1\\.\\d\\d to 2\\.\\d\\d\\) in dark patch")
            .contains("1 in ", "9 spots on 3 particles",
                "1 enriched, 1 inconclusive", "Ag 60.1, Cu 39.9 at%");
        assertThat(page("/samples?q=empty")).contains("No spots yet.");
        assertThat(page("/samples?q=no-such-lot")).contains("No sample fits.");
    }

    @Test
    void a_filter_holds_and_an_empty_one_lets_all_through() {
        assertThat(samples(page("/samples?q=&alloy=bi58sn42&verdict=&from=&to="))).hasSize(40)
            .allMatch(name -> name.startsWith("solder"));
        List<String> enriched = samples(page("/samples?verdict=enriched&alloy=ag-cu-eutectic"));
        assertThat(enriched).isNotEmpty().hasSizeLessThan(40);
        for (String name : enriched) {
            assertThat(service.get("/v1/samples/" + name + "/segregation").text()).contains("\"enriched\"");
        }
        List<String> rest = new ArrayList<>(samples(page("/samples?alloy=ag-cu-eutectic")));
        rest.removeAll(enriched);
        rest.remove("empty");
        for (String name : rest) {
            assertThat(service.get("/samples/" + name).text()).as(name).doesNotContain("v-enriched");
        }
        assertThat(samples(page("/samples?from=2026-11-01&to=2026-11-30"))).hasSize(50);
        assertThat(samples(page("/samples?from=2026-12-01"))).isEmpty();
        assertThat(service.get("/samples?from=yesterday").code()).isEqualTo("value-out-of-range");
        assertThat(service.get("/samples?verdict=enrich").json().path("detail").asText())
            .contains("nearest known: enriched");
        assertThat(service.get("/samples?cursor=abc").code()).isEqualTo("cursor-mismatch");
        assertThat(service.get("/samples?colour=red").code()).isEqualTo("unknown-parameter");
    }

    @Test
    void numbers_look_as_the_reader_is_used_to_or_chose_and_links_keep_the_choice() {
        String german = page("/samples?q=as-made", "Accept-Language", "de-DE,de;q=0.9,en;q=0.5");
        assertThat(german).containsPattern("\u00d71,9\\d \\(1,\\d\\d to 2,\\d\\d\\)")
            .doesNotContain("href=\"/samples/as-made?");
        assertThat(page("/samples?q=as-made&numbers=point", "Accept-Language", "de"))
            .containsPattern("\u00d71\\.9\\d \\(")
            .contains("href=\"/samples/as-made?numbers=point\"");
        String sample = page("/samples/as-made?numbers=comma");
        assertThat(sample).contains(">0,5<", "href=\"/samples?numbers=comma\"").containsPattern("\u00d71,9\\d \\(");
        assertThat(sample.replaceAll("<bdi>.*?</bdi>|<[^>]+>|0\\.1\\.0|7\\.2\\.6", " "))
            .doesNotContainPattern("\\d\\.\\d");
    }

    @Test
    void an_unchanged_page_is_not_sent_again_but_for_other_numbers_or_after_a_change() {
        Reply first = service.get("/samples");
        assertThat(first.header("Vary")).hasValue("Accept, Accept-Language, Authorization");
        Reply again = service.get("/samples", "If-None-Match", first.etag());
        assertThat(again.status()).isEqualTo(304);
        assertThat(again.header(SecurityHeaders.POLICY)).as("the page keeps the policy it came with").isEmpty();
        assertThat(service.get("/samples", "If-None-Match", first.etag(), "Accept-Language", "de").status())
            .isEqualTo(200);
        String one = service.get("/samples/etched").etag();
        service.put("/v1/samples/fresh", InventedPowder.SAMPLE);
        assertThat(service.get("/samples", "If-None-Match", first.etag()).status()).isEqualTo(200);
        assertThat(service.get("/samples/etched", "If-None-Match", one).status()).isEqualTo(304);
    }

    @Test
    void a_preview_shows_the_answer_with_what_is_on_record_and_stores_nothing() {
        long before = service.laboratory().eventLog().range().last();
        Reply fresh = service.post("/samples/new-lot/preview?alloy=ag-cu-eutectic&beam_energy_kev=15", "text/csv",
            InventedPowder.WIDE);
        assertThat(fresh.text()).contains("data-new=\"true\" data-accepted=\"9\"", "Cu enriched", "Figure 4.");
        assertThat(fresh.header("Cache-Control")).hasValue("no-store");
        Reply known = service.post("/samples/as-made/preview?alloy=bi58sn42", "text/csv",
            InventedPowder.WIDE + "P4-d1,P4,dark patch,s1,21.0,79.0\n");
        assertThat(known.text()).contains("data-new=\"false\" data-accepted=\"1\"",
            "1 spot would be recorded, 9 are on record",
            "10 spots on 4 particles", "its own description is used");
        assertThat(service.post("/samples/new-lot/preview", "text/csv", InventedPowder.WIDE).code())
            .isEqualTo("not-found");
        assertThat(service.post("/samples/new-lot/preview?alloy=ag-cu-eutectic", "text/csv", "label;Ag;Cu\n1;2;3\n")
            .code())
            .isEqualTo("unit-missing");
        assertThat(service.laboratory().eventLog().range().last()).isEqualTo(before);
        assertThat(service.laboratory().auditLog().check().broken()).isEmpty();
        assertThat(service.get("/v1/samples/new-lot").status()).isEqualTo(404);
        assertThat(service.get("/v1/samples/as-made/segregation").json().path("spot_count").asInt()).isEqualTo(9);
    }

    @Test
    void words_from_outside_are_shown_and_never_act() {
        String hostile = "<img src=x onerror=alert(1)>";
        service.put("/v1/samples/hostile",
            "{\"alloy\": \"ag-cu-eutectic\", \"description\": \"<script>alert(2)</script>\u202e\", "
            + "\"mount\": \"\\\"><b>\"}");
        String table = InventedPowder.WIDE.replace("dark patch", hostile).replace("P1-d1", "<i>1</i>");
        assertThat(service.post("/v1/samples/hostile/spots", "text/csv", table).status()).isEqualTo(201);
        service.post("/v1/samples/hostile/spots", "text/csv", InventedPowder.WIDE.replace("dark patch", "<img src=x>"));
        for (String address : new String[] {"/samples?q=hostile", "/samples/hostile"}) {
            assertThat(page(address)).doesNotContain("<img", "<script>alert", "<b>\">", "<i>1", "\u202e")
                .contains("&lt;img src=x");
        }
    }

    @Test
    void a_refusal_is_a_page_for_a_browser_and_a_problem_for_a_program() {
        Reply missing = service.get("/samples/none", "Accept", PAGE);
        assertThat(missing.status()).isEqualTo(404);
        assertThat(missing.mediaType()).isEqualTo("text/html");
        assertThat(missing.text()).contains("There is no such thing", "Check the name", "Request <bdi>");
        assertThat(service.get("/samples/none").code()).isEqualTo("not-found");
        assertThat(service.get("/v1/samples/none", "Accept", PAGE).code()).isEqualTo("not-found");
    }

    @Test
    void where_a_token_is_needed_the_door_stands_open_and_says_how_and_the_rest_asks() {
        try (RunningService closed = RunningService.start()) {
            closed.put("/v1/samples/secret-lot", InventedPowder.SAMPLE);
            assertThat(closed.get("/").text()).contains("secret-lot");
            String token = closed.token("reader", TokenScope.READ);
            String writer = closed.token("writer", TokenScope.WRITE);
            Reply door = closed.get("/");
            assertThat(door.status()).isEqualTo(200);
            assertThat(door.text()).contains("those who have a token", "href=\"/samples\"")
                .doesNotContain("secret-lot");
            assertThat(closed.get("/samples", "Accept", PAGE).headers().allValues("WWW-Authenticate"))
                .contains("Basic realm=\"surfeit\", charset=\"UTF-8\"");
            assertThat(closed.get("/", RunningService.bearer(token)).text()).contains("secret-lot");
            assertThat(closed.get("/", "Authorization", RunningService.bearer(token)[1], "If-None-Match", door.etag())
                .status())
                .isEqualTo(200);
            assertThat(closed.get("/samples/secret-lot", RunningService.bearer(token)).status()).isEqualTo(200);
            assertThat(closed.get("/", RunningService.bearer(writer)).code()).isEqualTo("scope-missing");
            assertThat(closed.get("/", RunningService.bearer("lab_wrong")).code()).isEqualTo("token-rejected");
            assertThat(closed.get("/board/board.js").status()).isEqualTo(200);
        }
    }
}
