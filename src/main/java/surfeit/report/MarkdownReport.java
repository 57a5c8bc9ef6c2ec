package surfeit.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import surfeit.segregation.Contrast;
import surfeit.segregation.ForeignElement;
import surfeit.segregation.GroupFinding;
import surfeit.segregation.Interpretation;
import surfeit.segregation.MethodSettings;
import surfeit.segregation.ReferenceUse;
import surfeit.rival.Rival;

/**
 * The answer as a Markdown document: what was found in sentences, what was measured, the numbers rounded by their
 * uncertainty, the other explanations weighed, caveats, cautions, a methods paragraph with its references, and what is
 * needed to compute it again.
 */
public final class MarkdownReport {
    private final Interpretation interpretation;
    private final Provenance provenance;
    private final Signs signs;
    private final Appendable out;

    private MarkdownReport(Interpretation interpretation, Provenance provenance, Signs signs, Appendable out) {
        this.interpretation = interpretation;
        this.provenance = provenance;
        this.signs = signs;
        this.out = out;
    }

    /** Writes the document; lines end with a line feed. */
    public static void write(Interpretation interpretation, Provenance provenance, Signs signs, Appendable out)
            throws IOException {
        MarkdownReport report = new MarkdownReport(interpretation, provenance, signs, out);
        report.opening();
        report.found();
        report.numbers();
        report.contrasts();
        report.rivals();
        report.remarks();
        report.methods();
        report.versions();
    }

    private void opening() throws IOException {
        out.append("# ").append(MarkdownText.escaped(provenance.title() + ": enrichment and depletion at the surface"))
            .append("\n\n");
        MarkdownText.paragraph(TerminalReport.counts(interpretation) + ". Nominal in at%: "
            + TerminalReport.nominal(interpretation.nominalFractions()) + ". Concentrations: "
            + interpretation.settings().accuracy().words() + ".", out);
    }

    private void found() throws IOException {
        PlainWords words = new PlainWords(interpretation, signs);
        MarkdownText.heading("What was found", out);
        List<String> sentences = new ArrayList<>(words.summary());
        sentences.addAll(words.contrasts());
        MarkdownText.list(sentences, out);
    }

    private void numbers() throws IOException {
        MarkdownText.heading("Numbers", out);
        MarkdownText.table(ResultRow.headings(interpretation, signs),
            ResultRow.of(interpretation, signs).stream().map(ResultRow::cells).toList(), out);
        MarkdownText.paragraph("u is the combined standard uncertainty; factors carry a 95 % interval. "
            + Confidence.MEANING, out);
        List<List<String>> foreign = new ArrayList<>();
        for (GroupFinding group : interpretation.groups()) {
            for (ForeignElement element : group.foreign()) {
                String limit = Digits.nominalPercent(element.detectionLimit())
                    + (element.limitAssumed() ? " (assumed)" : "");
                foreign.add(List.of(group.name(), GroupWords.share(element), limit,
                    element.present() ? "present" : "not shown"));
            }
        }
        if (!foreign.isEmpty()) {
            MarkdownText.paragraph("Outside the nominal, as share of everything reported:", out);
            MarkdownText.table(List.of("group", "found", "limit at%", "verdict"), foreign, out);
        }
        MarkdownText.list(referenceLines(), out);
    }

    private List<String> referenceLines() {
        return interpretation.groups().stream()
            .flatMap(group -> group.reference().stream().map(reference -> referenceLine(group, reference))).toList();
    }

    private static String referenceLine(GroupFinding group, ReferenceUse reference) {
        return group.name() + ", " + Listing.count(reference.spotCount(), "reference spot") + ", correlation "
            + Digits.setting(reference.correlation()) + (reference.used() ? ", used: " : ", not used: ")
            + Listing.sentence(reference.explanation());
    }

    private void contrasts() throws IOException {
        if (interpretation.contrasts().isEmpty()) {
            return;
        }
        MarkdownText.heading("Against each other", out);
        List<List<String>> rows = new ArrayList<>();
        for (Contrast contrast : interpretation.contrasts()) {
            for (Contrast.ElementContrast element : contrast.elements()) {
                rows.add(List.of(contrast.groupA() + " against " + contrast.groupB(), element.element().symbol(),
                    element.oddsRatio().map(Digits::interval).orElse(""),
                    Digits.atomicPercentInterval(element.difference().value(), element.difference().low(),
                        element.difference().high()),
                    element.verdict().word(),
                    element.pAdjusted().stream().mapToObj(Digits::pValue).findFirst().orElse("")));
            }
        }
        MarkdownText.table(List.of("groups", "element", "odds ratio (low to high)", "difference (low to high)",
            "verdict", "p adjusted"), rows, out);
    }

    private void rivals() throws IOException {
        List<List<String>> rows = new ArrayList<>();
        for (GroupFinding group : interpretation.groups()) {
            for (Rival rival : group.rivals()) {
                rows.add(List.of(group.name(), rival.cause(), rival.couldExplain().word(), Remarks.factor(rival, signs),
                    rival.assumes(), rival.howToRuleOut(), rival.source()));
            }
        }
        if (!rows.isEmpty()) {
            MarkdownText.heading("What else could explain it", out);
            MarkdownText.table(List.of("group", "cause", "could explain it", "factor", "assumes", "how to rule it out",
                "source"), rows, out);
        }
    }

    private void remarks() throws IOException {
        section("To know", Remarks.caveats(interpretation));
        section("Cautions", interpretation.cautions());
    }

    private void section(String heading, List<String> lines) throws IOException {
        if (!lines.isEmpty()) {
            MarkdownText.heading(heading, out);
            MarkdownText.list(lines, out);
        }
    }

    private void methods() throws IOException {
        String methods = MethodsText.of(interpretation, provenance.lines());
        MarkdownText.heading("Methods", out);
        MarkdownText.paragraph(methods, out);
        section("References", Reference.citedIn(methods).stream().map(Reference::text).toList());
    }

    private void versions() throws IOException {
        List<String> lines = new ArrayList<>();
        lines.add("Surfeit " + provenance.programVersion() + "; method \"" + MethodSettings.NAME + "\", version "
            + MethodSettings.VERSION);
        lines.add(provenance.title()
            + provenance.revision().stream().mapToObj(n -> ", revision " + n).findFirst().orElse(""));
        lines.add("Computed " + provenance.computedTime());
        provenance.tableChecksums().forEach((table, checksum) -> lines.add("Table " + table + ": SHA-256 " + checksum));
        section("To compute it again", lines);
    }
}
