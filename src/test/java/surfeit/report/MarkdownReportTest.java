package surfeit.report;

import static org.assertj.core.api.Assertions.assertThat;
import static surfeit.report.OutcomeBuilder.depleted;
import static surfeit.report.OutcomeBuilder.enriched;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import surfeit.element.Element;
import surfeit.rival.Cause;
import surfeit.rival.Rival;
import surfeit.rival.Rival.CouldExplain;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.ReferenceUse;

class MarkdownReportTest {

    @Test
    void the_document_goes_from_what_was_found_to_how_to_compute_it_again() throws IOException {
        Interpretation answer = Invented.answer(Invented.AG_CU, List.of(Invented.copperContrast()),
            Invented.copperRichPatches()
            .rival(Invented.rival("patch smaller than the interaction volume", CouldExplain.YES, 1.3)).build());
        String document = document(answer, Invented.PROVENANCE);
        assertThat(document).startsWith("""
            # Sample A7: enrichment and depletion at the surface

            24 spots on 4 particles in 1 session. Nominal in at%: Ag 60.1, Cu 39.9. Concentrations: standardless.

            ## What was measured

            - description: lot 7, invented
            - beam: 15 keV

            ## What was found

            - dark patch, on particles of this kind (4 measured): Cu enriched, \u00d71.96 (1.71 to 2.15), \
            Ag depleted with it, seen individually on 4 of 4 particles. If nothing differed, a result this strong \
            would appear in at most 1 in 830 samples. Could alone be explained by: patch smaller than the interaction \
            volume.
            - dark patch against matrix: Cu higher, odds \u00d73.1 (2.2 to 4.4), Ag lower with it, \
            on the same 4 particles. If nothing differed, a result this strong would appear in at most 1 in 500 samples.

            ## Numbers

            | feature | element | nominal at% | found at% \u00b1 u | factor (low to high) | verdict | how sure |
            | --- | --- | --- | --- | --- | --- | --- |
            | dark patch | Ag | 60.1 | 21.9 \u00b1 1.2 | 0.364 (0.284 to 0.457) | depleted | 1 in 830 |
            | dark patch | Cu | 39.9 | 78.1 \u00b1 1.2 | 1.96 (1.71 to 2.15) | enriched, beyond the margin | 1 in 830 |

            u is the combined standard uncertainty; factors carry a 95 % interval. Confidence is one minus""");
        assertThat(document).contains("""
            | groups | element | odds ratio (low to high) | difference (low to high) | verdict | p adjusted |
            | --- | --- | --- | --- | --- | --- |
            | dark patch against matrix | Ag | 0.32 (0.23 to 0.45) | -23.1 at% (-30.0 to -15.0) | lower | p = 0.0020 |
            | dark patch against matrix | Cu | 3.1 (2.2 to 4.4) | 23.1 at% (15.0 to 30.0) | higher | p = 0.0020 |

            ## What else could explain it

            | group | cause | could explain it | factor | assumes | how to rule it out | source |
            | --- | --- | --- | --- | --- | --- | --- |
            | dark patch | patch smaller than the interaction volume | yes | up to \u00d71.3 | A flat \
            patch. | Measure at 5 keV. | Invented for this test. |

            ## To know

            - note: All spots share one calibration error.

            ## Cautions

            - Fine powder: do not open in the open lab.

            ## Methods
            """);
        assertThat(document).endsWith("""
            ## To compute it again

            - Surfeit 0.1.0 (method "particle means on the logit scale", version 1)
            - Sample A7, revision 7
            - Computed 2026-11-20T14:03:00+01:00
            - Table elements.csv: SHA-256 00ff

            """);
    }

    @Test
    void foreign_elements_and_reference_spots_are_listed() throws IOException {
        ReferenceUse reference = new ReferenceUse(true, "the shared uncertainty falls from 0.18 to 0.08", 5, 0.9,
            List.of(new ReferenceUse.Correction(Element.of("Ag"), true, 1.02, 0.18, 0.08, 0.01)));
        Interpretation answer = Invented.answer(Invented.AG_CU, Invented.copperRichPatches().reference(reference)
            .foreign(Invented.foreign("Fe", 0.012, 0.0085, 0.0155, true), Invented
            .foreign("Zn", 0.001, 0, 0.004, false)).build());
        assertThat(document(answer, Invented.PROVENANCE)).contains("""
            | group | found | limit at% | verdict |
            | --- | --- | --- | --- |
            | dark patch | Fe 1.20 at% (0.85 to 1.55) | 0.3 (assumed) | present |
            | dark patch | Zn 0.10 at% (0.00 to 0.40) | 0.3 (assumed) | not shown |

            - dark patch, 5 reference spots, correlation 0.9, used: the shared uncertainty falls from 0.18 to 0.08.
            """).contains("Spots were corrected with reference "
            + "spots of known composition from the same session");
    }

    @Test
    void text_from_outside_is_shown_and_never_acts() throws IOException {
        Rival hostile = new Rival(Cause.TILT, "a | b\n| c", Optional.empty(), CouldExplain.IN_PART, OptionalDouble.of(0.7),
            "<script>alert(1)</script>",
            "[click](javascript:x) `code`", List.of(), "*bold* & _more_");
        Interpretation answer = Invented.answer(Invented.AG_CU,
            new GroupBuilder("1. <b>patch</b> | x", 12, "P1", "P2", "P3")
            .element("Ag", 0.601, depleted(0.2, 0.01).factor(0.3, 0.2, 0.4).p(0.01))
            .element("Cu", 0.399, enriched(0.8, 0.01).factor(2, 1.9, 2.1).p(0.01)).rival(hostile)
            .caveat(Caveat.note("x", "- # heading\r\n## forged")).build());
        String document = document(answer, new Provenance("0.1.0", Optional.of("<i>A7</i>"), Optional.empty(),
            OptionalLong.empty(), "2026-11-20T14:03:00Z", Map.of(), Map.of(),
            List.of(new SampleFact("description", "<i>lot 7</i>\n# forged", true))));
        assertThat(document).startsWith("# Sample &lt;i&gt;A7&lt;/i&gt;: enrichment")
            .contains("- description: &lt;i&gt;lot 7&lt;/i&gt; \\# forged\n")
            .contains("- 1\\. &lt;b&gt;patch&lt;/b&gt; \\| x, on particles of this kind (3 measured): ")
            .contains("| 1. &lt;b&gt;patch&lt;/b&gt; \\| x | a \\| b \\| c | in part | down to \u00d70.7 | "
            + "&lt;script&gt;alert(1)&lt;/script&gt; | \\[click\\](javascript:x) \\`code\\`. | \\*bold\\* &amp; "
            + "\\_more\\_ |")
            .contains("- \\# heading  \\#\\# forged.");
        assertThat(document).doesNotContain("<").doesNotContain("\n## forged");
    }

    private static String document(Interpretation answer, Provenance provenance) throws IOException {
        StringBuilder out = new StringBuilder();
        MarkdownReport.write(answer, provenance, Signs.UNICODE, out);
        return out.toString();
    }
}
