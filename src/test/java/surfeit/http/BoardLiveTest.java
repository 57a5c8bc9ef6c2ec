package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.Locale;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import surfeit.lab.TokenScope;

/** Pages of the board that follow what happens, in a browser; with and without a token. */
class BoardLiveTest {
    private static final int ROUNDS = 15;
    private static final String MARKS = "(() => { window.seen = 0; window.came = 0; "
        + "new EventSource('/v1/events').addEventListener('spots.imported', () => { window.came = Date.now(); }); "
        + "document.addEventListener('board-refreshed', () => requestAnimationFrame(() => setTimeout(() => { "
        + "window.seen = Date.now(); }))); })()";
    private static RunningService service;
    private static Browser browser;

    @BeforeAll
    static void open() {
        browser = Browser.open();
        service = RunningService.start();
        InventedLots.record(service, 60);
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
            service.close();
        }
    }

    @AfterEach
    void nothing_was_complained_of() {
        assertThat(browser.complaints()).isEmpty();
    }

    private static void go(String path) {
        browser.go(service.server().address() + path);
        browser.waitFor("document.getElementById('live').dataset.live === 'yes'");
    }

    private static void upload(String sample, int number) {
        assertThat(service.post("/v1/samples/" + sample + "/spots", "text/csv", "label;particle;feature;Ag at%;Cu at%\n"
            + "live-" + number + ";P1;matrix;60.1;39.9\n").status()).isEqualTo(201);
    }

    @Test
    void a_new_sample_and_its_spots_come_to_the_top_by_themselves() {
        go("/samples");
        service.put("/v1/samples/just-made", "{\"alloy\": \"ag-cu-eutectic\"}");
        browser.waitFor("document.querySelector('#s-just-made')");
        upload("just-made", 1);
        browser.waitFor("document.querySelector('#s-just-made .finding')");
        assertThat(browser.text("#s-just-made")).contains("1 spot on 1 particle", "Cu inconclusive");
        assertThat(browser.value("document.querySelector('#s-just-made').classList.contains('fresh')").asBoolean())
            .isTrue();
        browser.picture("live");
    }

    @Test
    void lines_that_did_not_change_stay_where_they_are_untouched_and_all_stand_as_on_a_page_loaded_anew() {
        String lines = "[...document.querySelectorAll('.samples tbody')].map(line => line.id + ' ' + line.dataset.state)";
        go("/samples");
        browser.value("void document.querySelectorAll('.samples tbody').forEach(line => line.untouched = true)");
        String third = browser.value("document.querySelectorAll('.samples tbody')[2].id").asText();
        String text = "document.querySelector('#" + third + " .finding')";
        browser.value("void getSelection().selectAllChildren(" + text + ")");
        String selected = browser.value("getSelection().toString()").asText();
        for (int line : new int[] {9, 4, 30}) {
            String changed = browser.value("document.querySelectorAll('.samples tbody')[" + line + "].id").asText();
            String element = changed.contains("braze") ? "Ag at%;Cu at%" : changed.contains("alsi") ? "Al at%;Si at%"
                : "Sn at%;Bi at%";
            assertThat(service.post("/v1/samples/" + changed.substring(2) + "/spots", "text/csv",
                "label;particle;feature;" + element + "\nanew;P1;matrix;60;40\n").status()).isEqualTo(201);
            browser.waitFor("document.getElementById('" + changed + "').classList.contains('fresh')");
        }
        // the clock of this service stands still: names decide the order
        service.put("/v1/samples/aaa-first", "{\"alloy\": \"ag-cu-eutectic\"}");
        browser.waitFor("document.querySelector('.samples tbody').id === 's-aaa-first'");
        assertThat(browser.value("document.querySelectorAll('.samples tbody').length").asInt()).isEqualTo(50);
        assertThat(browser.value("[...document.querySelectorAll('.samples tbody')].filter(line => line.untouched)"
            + ".length").asInt()).as("of fifty, three changed and one was pushed to the next page").isEqualTo(46);
        assertThat(selected).isNotBlank().isEqualTo(browser.value("getSelection().toString()").asText());
        JsonNode followed = browser.value(lines);
        go("/samples");
        assertThat(browser.value(lines)).isEqualTo(followed);
    }

    @Test
    void a_page_of_a_sample_follows_that_sample_and_keeps_the_focus() {
        service.put("/v1/samples/followed", "{\"alloy\": \"ag-cu-eutectic\"}");
        service.put("/v1/samples/another", "{\"alloy\": \"ag-cu-eutectic\"}");
        go("/samples/followed");
        browser.value("document.querySelector('.forms a').focus()");
        browser.value("void (window.refreshed = 0, document.addEventListener('board-refreshed', "
            + "() => window.refreshed++))");
        upload("another", 1);
        upload("followed", 1);
        browser.waitFor("document.querySelector('.spots tbody th')?.innerText === 'live-1'");
        assertThat(browser.value("document.activeElement === document.querySelector('.forms a')").asBoolean()).isTrue();
        service.send("POST", "/v1/samples/followed/interpretations", new byte[0]);
        browser.waitFor("document.querySelector('.frozen tbody th')");
        assertThat(browser.value("window.refreshed").asInt()).as("the other sample does not matter").isEqualTo(2);
    }

    /** A browser keeps six connections to a service (Chromium, from memory): pages left behind must hold none. */
    @Test
    void a_reader_who_goes_through_many_pages_and_back_is_never_kept_waiting() {
        for (int i = 0; i < 10; i++) {
            go("/samples?q=lot-00" + i);
        }
        for (int i = 0; i < 8; i++) {
            browser.back();
            String address = "/samples?q=lot-00" + (8 - i);
            browser.waitFor("location.search === '" + address.substring("/samples".length()) + "'");
            browser.waitFor("document.getElementById('live')?.dataset.live === 'yes'");
        }
    }

    @Test
    void the_way_from_an_event_to_the_screen_is_timed() {
        service.put("/v1/samples/a-timed", "{\"alloy\": \"ag-cu-eutectic\"}");
        go("/samples");
        browser.value(MARKS);
        double[] fromEvent = new double[ROUNDS];
        double[] fromUpload = new double[ROUNDS];
        for (int i = -3; i < ROUNDS; i++) {
            browser.value("void (window.seen = 0, window.came = 0)");
            long sent = System.currentTimeMillis();
            upload("a-timed", i + 10);
            browser.waitFor("window.seen && window.came");
            long seen = browser.value("window.seen").asLong();
            fromEvent[Math.max(i, 0)] = seen - browser.value("window.came").asLong();
            fromUpload[Math.max(i, 0)] = seen - sent;
        }
        Arrays.sort(fromEvent);
        Arrays.sort(fromUpload);
        System.out.printf(Locale.ROOT,
            "board: from an event in the browser to the screen: median %.0f ms, most %.0f ms; "
            + "from sending the upload: median %.0f ms%n", fromEvent[ROUNDS / 2], fromEvent[ROUNDS - 1],
            fromUpload[ROUNDS / 2]);
        assertThat(browser.text("#s-a-timed")).contains((ROUNDS + 3) + " spots");
    }

    @Test
    void with_a_token_the_browser_asks_once_and_the_pages_follow_too() {
        try (RunningService closed = RunningService.start()) {
            closed.put("/v1/samples/secret-lot", "{\"alloy\": \"ag-cu-eutectic\"}");
            String token = closed.token("reader", TokenScope.READ, TokenScope.WRITE);
            browser.go(closed.server().address() + "/");
            assertThat(browser.text("h1")).isEqualTo("Surfeit");
            assertThat(browser.text("body")).doesNotContain("secret-lot");
            // as if a reader typed name and token into the browser's own question
            browser.go(closed.server().address().replace("http://", "http://anna:" + token + "@") + "/samples");
            browser.go(closed.server().address() + "/");
            assertThat(browser.text("#fresh")).contains("secret-lot");
            browser.waitFor("document.getElementById('live').dataset.live === 'yes'");
            assertThat(closed.put("/v1/samples/second-lot", "{\"alloy\": \"ag-cu-eutectic\"}",
                RunningService.bearer(token))
                .status()).isEqualTo(201);
            browser.waitFor("document.querySelector('#s-second-lot')");
            assertThat(browser.eventually("fetch('/samples/fresh-lot/preview?alloy=ag-cu-eutectic', {method: 'POST', "
                + "body: 'label;Ag at%;Cu at%\\n1;60;40\\n', headers: {'Content-Type': 'text/csv'}})"
                + ".then((answer) => done(answer.status))").asInt()).isEqualTo(200);
            browser.go("about:blank");
        }
    }
}
