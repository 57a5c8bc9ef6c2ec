package surfeit.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;

/** What the benchmark prints of its results; the results here are invented. */
class ReportsTest {
    private static final Benchmark BENCHMARK = new Benchmark(Map.of(Truth.NOMINAL, 1000, Truth.MARGIN, 1000,
        Truth.SHIFTED, 1000, Truth.ANY, 1000));
    private static final Result HOLDS = result("reference spots <5>", Label.Promise.FULL, 950);
    private static final Result MISSES = result("against nominal", Label.Promise.FULL, 900);
    private static final Result OUTSIDE = result("against nominal", Label.Promise.OUTSIDE, 850);

    /** One element, covered so often in a thousand samples at nominal. */
    private static Result result(String block, Label.Promise promise, int covered) {
        Tally tally = new Tally();
        for (int i = 0; i < 1000; i++) {
            double truth = i < covered ? 0.5 : 2;
            Said said = new Said(truth, 0, 1, 0, false, Double.NaN, 0, 0);
            tally.add(Truth.NOMINAL, new Answer(List.of(said), 0, 0, false));
        }
        return new Result(new Label(block, "3", 2, 2, Scatter.NORMAL, "standardless", "", promise), tally, 1);
    }

    @Test
    void a_cell_that_covers_too_little_is_printed_as_a_miss_and_one_outside_the_promise_is_not_judged() {
        assertThat(HOLDS.status()).isEqualTo("holds");
        assertThat(MISSES.status()).isEqualTo("MISS: covers too little");
        assertThat(MISSES.knownWeakness()).isEmpty();
        assertThat(OUTSIDE.status()).isEqualTo("outside the promise");
        assertThat(TextReport.of(List.of(HOLDS, MISSES, OUTSIDE), BENCHMARK))
            .contains("95.0..95.0 +-1.4", "90.0..90.0 +-1.9", "MISS: covers too little", "85.0..85.0");
    }

    @Test
    void every_row_of_the_csv_has_every_column() {
        assertThat(CsvTable.of(List.of(HOLDS, MISSES, OUTSIDE)).lines()).hasSize(4)
            .allSatisfy(line -> assertThat(line.split(",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)")).hasSize(21));
    }

    @Test
    void the_chart_is_well_formed_says_what_it_shows_and_holds_no_script() throws Exception {
        String svg = Chart.of(List.of(HOLDS, MISSES, OUTSIDE));
        Document document = DocumentBuilderFactory.newInstance().newDocumentBuilder()
            .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
        assertThat(document.getElementsByTagName("title").item(0).getTextContent()).contains("Calibration");
        assertThat(document.getElementsByTagName("desc").item(0).getTextContent()).contains("95 % interval");
        assertThat(document.getElementsByTagName("script").getLength()).isZero();
        assertThat(svg).contains("&lt;5&gt;", ">miss<");
    }
}
