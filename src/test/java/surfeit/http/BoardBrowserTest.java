package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The board in a browser; pictures of it are kept under {@code target/board}. */
class BoardBrowserTest {
    private static RunningService service;
    private static Browser browser;

    @BeforeAll
    static void open() {
        browser = Browser.open();
        service = RunningService.start();
        InventedLots.record(service, 30);
        service.put("/v1/samples/braze-patches", "{\"alloy\": \"ag-cu-eutectic\", \"beam_energy_kev\": 15}");
        service.post("/v1/samples/braze-patches/spots", "text/csv", InventedPowder.WIDE);
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
            service.close();
        }
    }

    @AfterEach
    void nothing_was_complained_of_and_nobody_else_was_asked() {
        assertThat(browser.complaints()).isEmpty();
        assertThat(browser.requests()).filteredOn(address -> address.startsWith("http") || address.startsWith("ws"))
            .isNotEmpty().allSatisfy(address -> assertThat(address).startsWith(service.server().address() + "/"));
    }

    private static void go(String path) {
        browser.go(service.server().address() + path);
    }

    @ParameterizedTest
    @CsvSource({"light, 1400, 1000", "dark, 1400, 1000", "light, 1000, 800", "light, 390, 844", "dark, 390, 844"})
    void every_page_can_be_read_light_and_dark_wide_and_narrow(String scheme, int width, int height) {
        browser.prefer(scheme);
        browser.size(width, height);
        for (String path : new String[] {"/samples", "/samples/braze-patches", "/samples/nothing-here"}) {
            go(path);
            browser.picture(path.replaceAll("[^a-z-]+", "-").substring(1) + "-" + scheme + "-" + width);
            assertThat(browser.value("document.scrollingElement.scrollWidth").asInt()).as(path)
                .isLessThanOrEqualTo(width);
            assertThat(browser.value("Math.min(...[...document.querySelectorAll('.finding')].map(e => e.offsetWidth), 999)")
                .asInt()).as("width left to what was found").isGreaterThan(230);
            JsonNode faint = browser.value(Contrast.SCRIPT);
            assertThat(faint.path("looked").asInt()).isGreaterThan(10);
            assertThat(faint.path("faint")).as(path + ", " + scheme).isEmpty();
        }
        // the browser notes every refusal of the service in its console
        assertThat(browser.complaints()).singleElement().asString().contains("/samples/nothing-here", "404");
    }

    @Test
    void everything_that_can_be_used_is_reached_by_the_tab_key_and_says_what_it_is() {
        browser.prefer("light");
        browser.size(1400, 1000);
        go("/samples?q=braze-lot");
        String usable = "[...document.querySelectorAll('a[href], button:not(:disabled), input:not([type=hidden]), "
            + "select, [tabindex=\"0\"]')].filter(e => e.checkVisibility())";
        JsonNode all = browser.value(usable + ".map(e => e.outerHTML.slice(0, 120))");
        Set<String> reached = new LinkedHashSet<>();
        for (int i = 0; i < all.size() + 20; i++) {
            browser.press(Browser.TAB);
            reached.add(browser.value("document.activeElement.outerHTML.slice(0, 120)").asText());
            if (browser.value("document.activeElement === document.body").asBoolean()) {
                continue;
            }
            assertThat(browser.value("getComputedStyle(document.activeElement.matches('.hidden-file') ? "
                + "document.querySelector('label.button') : document.activeElement).outlineStyle").asText())
                .as("the focus shows on %s", browser.value("document.activeElement.outerHTML.slice(0, 90)"))
                .isNotEqualTo("none");
        }
        for (JsonNode element : all) {
            assertThat(reached).contains(element.asText());
        }
        assertThat(browser.value("[...document.querySelectorAll('input:not([type=hidden]), select')]"
            + ".filter(e => !e.labels?.length && !e.ariaLabel).map(e => e.outerHTML)")).isEmpty();
        assertThat(browser.value("[...document.querySelectorAll('a, button')].filter(e => !e.textContent.trim())"
            + ".length").asInt()).isZero();
    }

    @Test
    void a_table_that_is_dropped_shows_its_answer_and_is_stored_only_on_the_word() {
        go("/samples");
        drop("braze lot 8.csv", InventedPowder.semicolon());
        assertThat(browser.value("document.querySelector('[name=sample]').value").asText()).isEqualTo("braze-lot-8");
        browser.type("[name=alloy]", "ag-cu-eutectic");
        browser.type("[name=beam_energy_kev]", "15");
        browser.click("#show");
        browser.waitFor("document.querySelector('#upload-answer .found')");
        assertThat(browser.text("#upload-answer")).contains("Not stored yet: braze-lot-8", "9 spots would be recorded",
            "The sample would be made", "columns parted by semicolon, decimal comma", "Cu enriched");
        assertThat(browser.value("document.querySelectorAll('#upload-answer figure').length").asInt()).isEqualTo(4);
        browser.picture("preview");
        assertThat(service.get("/v1/samples/braze-lot-8").status()).isEqualTo(404);
        browser.click("#store");
        browser.waitFor("location.pathname === '/samples/braze-lot-8'");
        JsonNode answer = service.get("/v1/samples/braze-lot-8/segregation").json();
        assertThat(answer.path("spot_count").asInt()).isEqualTo(9);
        assertThat(browser.text("h1")).isEqualTo("braze-lot-8");
        assertThat(browser.text(".history")).contains("braze lot 8.csv, 9 spots recorded");
    }

    @Test
    void a_table_for_a_sample_on_record_is_chosen_with_the_keyboard_and_read_at_once() throws Exception {
        service.put("/v1/samples/more", "{\"alloy\": \"ag-cu-eutectic\"}");
        service.post("/v1/samples/more/spots", "text/csv", InventedPowder.WIDE);
        Path file = Files.createTempFile("further", ".csv");
        Files.writeString(file, InventedPowder.WIDE.replace("-", "-further-"));
        go("/samples/more");
        browser.type("#table-file", file.toString());
        browser.waitFor("document.querySelector('#upload-answer .found')");
        assertThat(browser.text("#upload-answer")).contains("its spots are part of the answer",
            "18 spots on 3 particles");
        browser.value("document.getElementById('store').focus()");
        browser.pressEnter();
        browser.waitFor("document.querySelector('#fresh')?.dataset.state.startsWith('3-')");
        Files.delete(file);
    }

    @Test
    void a_table_that_cannot_be_read_says_which_line_and_why_and_nothing_is_stored() {
        go("/samples/braze-patches");
        drop("mixed.csv", "label;Ag at%;Cu at%\n1;60,1;39,9\n2;60.1;39,9\n");
        browser.waitFor("document.querySelector('#upload-answer .refused')");
        assertThat(browser.text("#upload-answer .faults")).contains("3", "Ag at%", "60.1");
        assertThat(browser.value("document.getElementById('store').disabled").asBoolean()).isTrue();
        // the browser notes every refusal of the service in its console
        assertThat(browser.complaints()).singleElement().asString().contains("422");
    }

    @Test
    void without_a_script_everything_can_be_read_and_samples_can_be_found() {
        browser.size(1400, 1000);
        try {
            browser.scripts(false);
            go("/samples?q=braze-patches&verdict=enriched");
            browser.picture("without-script");
            browser.scripts(true);
            assertThat(browser.text("#content")).contains("Without JavaScript these pages are for reading",
                "Cu enriched", "in dark patch").doesNotContain("Open a table");
            browser.scripts(false);
            browser.click(".samples a");
            browser.picture("without-script-sample");
        } finally {
            browser.scripts(true);
        }
        assertThat(browser.value("location.pathname").asText()).isEqualTo("/samples/braze-patches");
        assertThat(browser.text("#content")).contains("Cu enriched", "What else could explain it", "History",
            "Take it along", "P1-d1");
        assertThat(browser.value("document.querySelectorAll('figure').length").asInt()).isEqualTo(4);
    }

    @Test
    void a_sample_is_compared_with_another_one_without_a_script() {
        service.put("/v1/samples/braze-again", "{\"alloy\": \"ag-cu-eutectic\"}");
        service.post("/v1/samples/braze-again/spots", "text/csv", InventedPowder.WIDE);
        try {
            browser.scripts(false);
            go("/samples/braze-patches");
            browser.type("[name=b]", "braze-again");
            browser.click(".compare button");
        } finally {
            browser.scripts(true);
        }
        assertThat(browser.value("location.pathname + location.search").asText())
            .isEqualTo("/v1/comparisons.svg?a=braze-patches&b=braze-again");
        assertThat(browser.value("document.querySelector('title').textContent").asText())
            .isEqualTo("braze-patches against braze-again");
        go("/samples/braze-patches");
        browser.value("[...document.querySelectorAll('.compare button')].map(button => "
            + "button.getAttribute('formaction') ?? button.form.getAttribute('action'))").forEach(address ->
                assertThat(service.get(address.asText() + "?a=braze-patches&b=braze-again").status())
                    .as(address.asText()).isEqualTo(200));
    }

    @Test
    void every_link_of_a_page_leads_somewhere() {
        go("/samples/braze-patches");
        Set<String> addresses = new TreeSet<>();
        browser.value("[...document.querySelectorAll('a[href^=\"/\"]')].map(a => a.getAttribute('href'))")
            .forEach(address -> addresses.add(address.asText()));
        assertThat(addresses).hasSizeGreaterThan(30);
        for (String address : addresses) {
            assertThat(service.get(address, "Accept", "*/*").status()).as(address).isEqualTo(200);
        }
    }

    @Test
    void a_report_and_a_figure_show_in_their_own_style_though_nothing_else_is_let_in() {
        browser.prefer("dark");
        for (String path : List.of("segregation.html", "segregation.svg", "segregation.svg?figure=spots")) {
            go("/v1/samples/braze-patches/" + path);
            assertThat(browser.value("getComputedStyle(document.querySelector('rect.f-paper')).fill").asText())
                .as(path).isEqualTo("rgb(23, 25, 27)");
            browser.picture(path.replaceAll("[^a-z]+", "-"));
        }
        browser.prefer("light");
    }

    private static void drop(String name, String text) {
        ObjectMapper json = new ObjectMapper();
        browser.value("(() => { const data = new DataTransfer(); data.items.add(new File([" + json.valueToTree(text)
            + "], " + json.valueToTree(name) + ")); for (const type of ['dragenter', 'dragover', 'drop']) "
            + "document.dispatchEvent(new DragEvent(type, {dataTransfer: data, bubbles: true, "
            + "cancelable: true})); })()");
    }
}
