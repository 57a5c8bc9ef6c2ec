package surfeit.report.html;

import static org.assertj.core.api.Assertions.assertThat;
import static surfeit.report.OutcomeBuilder.depleted;
import static surfeit.report.OutcomeBuilder.enriched;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import surfeit.composition.AlloyCatalogue;
import surfeit.report.AnswerDocument;
import surfeit.report.GroupBuilder;
import surfeit.report.Invented;
import surfeit.report.MarkdownReport;
import surfeit.report.Provenance;
import surfeit.report.ReportBlock;
import surfeit.report.ReportSection;
import surfeit.report.SampleFact;
import surfeit.report.Signs;
import surfeit.report.figure.Illustrations;
import surfeit.report.figure.SpotPoints;
import surfeit.report.figure.StyleSource;
import surfeit.rival.Cause;
import surfeit.rival.Rival;
import surfeit.rival.Rival.CouldExplain;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.Interpretation;
import surfeit.xray.Material;
import surfeit.xray.ProfileCache;
import surfeit.xray.SignalDepthQuery;
import surfeit.xray.SignalDepths;

class HtmlReportTest {
    private static final String HOSTILE =
        "</td></style><script>alert(1)</script><img src=x onerror=\"y\"> & 'z' {} \u202e";

    private static Interpretation answer() {
        return Invented.answer(Invented.AG_CU, List.of(Invented.copperContrast()),
            Invented.copperRichPatches()
            .rival(Invented.rival("patch smaller than the interaction volume", CouldExplain.YES, 1.3))
                .foreign(Invented.foreign("Fe", 0.012, 0.0085, 0.0155, true)).build(),
            Invented.matrix().caveat(Caveat.warning("low-total", "The totals are low")).build());
    }

    private static Illustrations illustrations() {
        SignalDepths depths =
            SignalDepths.of(SignalDepthQuery.of(Material.byVolumes(Map.of(surfeit.element.Element.of("Ag"), 0.719,
            surfeit.element.Element.of("Cu"), 0.281)), List.of(15.0)), new ProfileCache());
        return new Illustrations(Optional.of(new SpotPoints(Invented.AG_CU.resolve())),
            AlloyCatalogue.packaged().require("ag-cu-eutectic").phases(), Optional.of(depths));
    }

    private static String html(Interpretation answer, Provenance provenance, Illustrations illustrations)
        throws IOException {
        StringBuilder out = new StringBuilder();
        HtmlReport.write(answer, provenance, illustrations, out);
        return out.toString();
    }

    /** Every page is well-formed XML too, so that a strict reader can check it. */
    private static Document parsed(String html) {
        try {
            return DocumentBuilderFactory.newInstance().newDocumentBuilder()
                .parse(new InputSource(new StringReader(html)));
        } catch (Exception e) {
            throw new AssertionError("No well-formed XML", e);
        }
    }

    private static List<Element> elements(Document page, String tag) {
        NodeList nodes = page.getElementsByTagName(tag);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            elements.add((Element) nodes.item(i));
        }
        return elements;
    }

    @Test
    void it_says_what_the_markdown_report_says_word_for_word() throws IOException {
        String shown = parsed(html(answer(), Invented.PROVENANCE, Illustrations.NONE)).getDocumentElement()
            .getTextContent();
        StringBuilder markdown = new StringBuilder();
        MarkdownReport.write(answer(), Invented.PROVENANCE, Signs.UNICODE, markdown);
        String plain = markdown.toString().replace("\\", "").replace("&lt;", "<").replace("&gt;", ">")
            .replace("&amp;", "&");
        List<String> texts = new ArrayList<>();
        for (ReportSection section : AnswerDocument.of(answer(), Invented.PROVENANCE, Signs.UNICODE).sections()) {
            texts.add(section.heading());
            section.blocks().forEach(block -> texts.addAll(texts(block)));
        }
        assertThat(texts).hasSizeGreaterThan(80).allSatisfy(text -> {
            assertThat(shown).contains(text);
            assertThat(plain).contains(text);
        });
        assertThat(shown).contains("1.96 (1.71 to 2.15)", "78.1 \u00b1 1.2", "1 in 830", "3.1 (2.2 to 4.4)",
            "SHA-256 00ff");
    }

    private static List<String> texts(ReportBlock block) {
        if (block instanceof ReportBlock.Paragraph paragraph) {
            return List.of(paragraph.text());
        }
        if (block instanceof ReportBlock.Items items) {
            return items.items().stream().map(ReportBlock.Item::text).toList();
        }
        ReportBlock.Table table = (ReportBlock.Table) block;
        List<String> texts = new ArrayList<>(table.columns().stream().map(ReportBlock.Column::heading)
            .filter(heading -> !heading.equals("group")).toList());
        table.rows().forEach(texts::addAll);
        return texts;
    }

    @Test
    void figures_are_inside_numbered_and_each_has_ids_of_its_own() throws IOException {
        Document page = parsed(html(answer(), Invented.PROVENANCE, illustrations()));
        assertThat(elements(page, "figcaption")).extracting(Element::getTextContent).satisfiesExactly(
            text -> assertThat(text).startsWith("Figure 1. Sample A7: enrichment factors by feature. 24 spots"),
            text -> assertThat(text).startsWith("Figure 2. Sample A7: every spot, by feature and particle. 0 spots"),
            text -> assertThat(text).startsWith("Figure 3. Sample A7: groups against each other. 24 spots"),
            text -> assertThat(text)
            .startsWith("Figure 4. Sample A7: how deep the signal comes from. Ag 71.9, Cu 28.1 mass%"));
        List<String> ids = new ArrayList<>();
        for (String tag : List.of("title", "desc")) {
            elements(page, tag).stream().filter(element -> element.hasAttribute("id"))
                .forEach(element -> ids.add(element.getAttribute("id")));
        }
        assertThat(ids).hasSize(8).doesNotHaveDuplicates();
    }

    @Test
    void the_answer_alone_has_its_factors_and_contrasts_drawn() throws IOException {
        assertThat(elements(parsed(html(answer(), Invented.PROVENANCE, Illustrations.NONE)), "figure")).hasSize(2);
    }

    @Test
    void nothing_from_outside_acts_as_markup() throws IOException {
        Rival rival = new Rival(Cause.TILT, HOSTILE, Optional.empty(), CouldExplain.IN_PART, OptionalDouble.of(0.7),
            HOSTILE, HOSTILE, List.of(HOSTILE), HOSTILE);
        Interpretation answer = Invented.answer(Invented.AG_CU, new GroupBuilder(HOSTILE, 12, HOSTILE, "P2", "P3")
            .element("Ag", 0.601, depleted(0.2, 0.01).factor(0.3, 0.2, 0.4).p(0.01))
            .element("Cu", 0.399, enriched(0.8, 0.01).factor(2, 1.9, 2.1).p(0.01)).rival(rival)
            .caveat(Caveat.note("x", HOSTILE)).build());
        String html = html(answer, new Provenance(HOSTILE, Optional.of(HOSTILE), Optional.empty(),
            OptionalLong.empty(), HOSTILE, Map.of(HOSTILE, HOSTILE), Map.of(HOSTILE, HOSTILE),
            List.of(new SampleFact("mount", HOSTILE, true))), Illustrations.NONE);
        assertThat(html).doesNotContain("<script", "<img", "\u202e");
        Document page = parsed(html);
        assertThat(elements(page, "script")).isEmpty();
        assertThat(elements(page, "style")).hasSize(1);
        assertThat(page.getDocumentElement().getTextContent()).contains("<img src=x onerror=\"y\"> & 'z' {}");
    }

    @Test
    void the_file_needs_nothing_else_and_its_policy_lets_only_its_own_style_in() throws IOException {
        String html = html(answer(), Invented.PROVENANCE, illustrations());
        assertThat(html).doesNotContain("<script", "<link", "<img", "<iframe", "href=", "src=", "url(", "@import",
            " style=")
            .doesNotContainPattern(" on[a-z]+=");
        assertThat(html.replace("http://www.w3.org/2000/svg", "")).doesNotContain("://");
        Matcher style = Pattern.compile("<style>(.*?)</style>", Pattern.DOTALL).matcher(html);
        assertThat(style.find()).isTrue();
        assertThat(StyleSource.of(style.group(1))).isEqualTo(HtmlPage.STYLE_SOURCE);
        assertThat(html).contains("default-src 'none'; style-src " + HtmlPage.STYLE_SOURCE);
    }

    @Test
    void it_prints_on_a4_dark_only_on_screens_and_keeps_figures_whole() throws IOException {
        String html = html(answer(), Invented.PROVENANCE, Illustrations.NONE);
        assertThat(html).contains("@page{size:A4;", "@media print{", "figure{margin:1.3rem 0;break-inside:avoid}",
            "thead{display:table-header-group}", "counter(page)");
        assertThat(Pattern.compile("prefers-color-scheme").matcher(html).results().count())
            .isEqualTo(Pattern.compile("@media screen and \\(prefers-color-scheme:dark\\)").matcher(html).results()
            .count());
    }

    @Test
    void tables_tell_rows_and_columns_apart_for_those_who_listen() throws IOException {
        Document page = parsed(html(answer(), Invented.PROVENANCE, Illustrations.NONE));
        List<Element> headings = elements(page, "th");
        assertThat(headings).isNotEmpty().allSatisfy(heading ->
            assertThat(heading.getAttribute("scope")).isIn("col", "rowgroup"));
        assertThat(headings).filteredOn(heading -> heading.getTextContent().equals("dark patch")).first()
            .satisfies(heading -> assertThat(heading.getAttribute("rowspan")).isEqualTo("2"));
        assertThat(elements(page, "h1")).hasSize(1);
        assertThat(elements(page, "h2")).extracting(Element::getTextContent)
            .startsWith("What was measured", "What was found", "Numbers",
            "Against each other", "What else could explain it", "To know", "Cautions", "Methods", "References");
    }

    @Test
    void the_same_answer_gives_the_same_bytes() throws IOException {
        assertThat(html(answer(), Invented.PROVENANCE, illustrations()))
            .isEqualTo(html(answer(), Invented.PROVENANCE, illustrations()));
    }
}
