package surfeit.report;

import static surfeit.report.ReportBlock.Kind.GROUP;
import static surfeit.report.ReportBlock.Kind.PROSE;
import static surfeit.report.ReportBlock.Kind.SHORT;
import static surfeit.report.ReportBlock.Kind.VERDICT;

import java.util.ArrayList;
import java.util.List;
import surfeit.report.ReportBlock.Column;
import surfeit.report.ReportBlock.Item;
import surfeit.report.ReportBlock.Items;
import surfeit.report.ReportBlock.Paragraph;
import surfeit.report.ReportBlock.Table;
import surfeit.report.ReportSection.Topic;
import surfeit.rival.Rival;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.ForeignElement;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.answer.ReferenceUse;

/**
 * The report of an answer: what was measured, what was found in sentences, the numbers rounded by their uncertainty,
 * the other explanations weighed, caveats, cautions, a methods paragraph with its references, and what is needed to
 * compute it again.
 */
public final class AnswerDocument {
    private final Interpretation interpretation;
    private final Provenance provenance;
    private final Signs signs;
    private final List<ReportSection> sections = new ArrayList<>();

    private AnswerDocument(Interpretation interpretation, Provenance provenance, Signs signs) {
        this.interpretation = interpretation;
        this.provenance = provenance;
        this.signs = signs;
    }

    /** Puts the report together. */
    public static ReportDocument of(Interpretation interpretation, Provenance provenance, Signs signs) {
        AnswerDocument document = new AnswerDocument(interpretation, provenance, signs);
        document.opening();
        document.measured();
        document.found();
        document.numbers();
        document.contrasts();
        document.addAll(PhaseSection.of(interpretation));
        document.addAll(DepthSection.of(interpretation));
        document.rivals();
        document.list(Topic.TO_KNOW, "To know",
            Remarks.caveats(interpretation).stream().map(AnswerDocument::weighted).toList());
        document.list(Topic.CAUTIONS, "Cautions", Items.of(interpretation.cautions()).items());
        document.methods();
        document.versions();
        return new ReportDocument(provenance.title() + ": enrichment and depletion at the surface", document.sections);
    }

    private void opening() {
        add(Topic.OPENING, "", new Paragraph(MeasuredWords.counts(interpretation) + ". Nominal in at%: "
            + MeasuredWords.nominal(interpretation.nominalFractions()) + ". Concentrations: "
            + interpretation.settings().accuracy().words() + "."));
    }

    private void measured() {
        list(Topic.MEASURED, "What was measured", provenance.facts().stream()
            .map(fact -> new Item(fact.name(), fact.name() + ": " + fact.value())).toList());
    }

    private void found() {
        PlainWords words = new PlainWords(interpretation, signs);
        List<Item> items = new ArrayList<>();
        interpretation.groups().forEach(group -> items.add(new Item(group.name(), words.group(group))));
        interpretation.contrasts().forEach(contrast ->
            items.add(new Item(contrast.groupA() + " against " + contrast.groupB(), words.contrast(contrast))));
        interpretation.depths().forEach(depth -> items.add(new Item(depth.feature(), words.depth(depth))));
        interpretation.diffraction().forEach(phase -> items.add(new Item(phase.phase(), words.diffraction(phase))));
        add(Topic.FOUND, "What was found", new Items(items));
    }

    private void numbers() {
        List<ReportBlock> blocks = new ArrayList<>();
        blocks.add(new Table(resultColumns(),
            ResultRow.of(interpretation, signs).stream().map(ResultRow::cells).toList()));
        blocks.add(new Paragraph(Confidence.FIGURES + " "
            + Confidence.MEANING));
        List<List<String>> foreign = foreign();
        if (!foreign.isEmpty()) {
            blocks.add(new Paragraph("Outside the nominal, as share of everything reported:"));
            blocks.add(new Table(List.of(new Column("group", GROUP), new Column("found", SHORT),
                new Column("limit at%", SHORT), new Column("verdict", VERDICT)), foreign));
        }
        List<String> references = interpretation.groups().stream()
            .flatMap(group -> group.reference().stream().map(reference -> referenceLine(group, reference))).toList();
        if (!references.isEmpty()) {
            blocks.add(Items.of(references));
        }
        add(Topic.NUMBERS, "Numbers", blocks.toArray(ReportBlock[]::new));
    }

    private List<Column> resultColumns() {
        List<String> headings = ResultRow.headings(interpretation, signs);
        List<Column> columns = new ArrayList<>();
        for (int i = 0; i < headings.size(); i++) {
            boolean verdict = headings.get(i).equals("verdict");
            columns.add(new Column(headings.get(i), i == 0 ? GROUP : verdict ? VERDICT : SHORT));
        }
        return columns;
    }

    private List<List<String>> foreign() {
        List<List<String>> rows = new ArrayList<>();
        for (GroupFinding group : interpretation.groups()) {
            for (ForeignElement element : group.foreign()) {
                String limit = Digits.nominalPercent(element.detectionLimit())
                    + (element.limitAssumed() ? " (assumed)" : "");
                rows.add(List.of(group.name(), GroupWords.share(element), limit,
                    element.present() ? "present" : "not shown"));
            }
        }
        return rows;
    }

    private static String referenceLine(GroupFinding group, ReferenceUse reference) {
        return group.name() + ", " + Listing.count(reference.spotCount(), "reference spot") + ", correlation "
            + Digits.setting(reference.correlation()) + (reference.used() ? ", used: " : ", not used: ")
            + Listing.sentence(reference.explanation());
    }

    private void contrasts() {
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
        if (!interpretation.contrasts().isEmpty()) {
            add(Topic.CONTRASTS, "Against each other",
                new Table(List.of(new Column("groups", GROUP), new Column("element", SHORT),
                new Column("odds ratio (low to high)", SHORT), new Column("difference (low to high)", SHORT),
                new Column("verdict", VERDICT), new Column("p adjusted", SHORT)), rows));
        }
    }

    private void rivals() {
        List<List<String>> rows = new ArrayList<>();
        for (GroupFinding group : interpretation.groups()) {
            for (Rival rival : group.rivals()) {
                rows.add(List.of(group.name(), rival.cause(), rival.couldExplain().word(), Remarks.factor(rival, signs),
                    rival.assumes(), Remarks.wayOut(rival), rival.source()));
            }
        }
        if (!rows.isEmpty()) {
            add(Topic.RIVALS, "What else could explain it",
                new Table(List.of(new Column("group", GROUP), new Column("cause", SHORT),
                new Column("could explain it", SHORT), new Column("factor", SHORT), new Column("assumes", PROSE),
                new Column("how to rule it out", PROSE), new Column("source", PROSE)), rows));
        }
    }

    /** A caveat led by its weight: {@code warning} or {@code note}. */
    private static Item weighted(String caveat) {
        return new Item(caveat.substring(0, caveat.indexOf(':')), caveat);
    }

    private void methods() {
        String methods = MethodsText.of(interpretation, provenance.lines()) + " The calculations were made with "
            + program() + ".";
        add(Topic.METHODS, "Methods", new Paragraph(methods));
        list(Topic.REFERENCES, "References",
            Items.of(Reference.citedIn(methods).stream().map(Reference::text).toList()).items());
    }

    private String program() {
        return "Surfeit " + provenance.programVersion() + " (method \"" + MethodSettings.NAME + "\", version "
            + MethodSettings.VERSION + ")";
    }

    private void versions() {
        List<String> lines = new ArrayList<>();
        lines.add(program());
        lines.add(provenance.title()
            + provenance.revision().stream().mapToObj(n -> ", revision " + n).findFirst().orElse(""));
        lines.add("Computed " + provenance.computedTime());
        provenance.tableChecksums().forEach((table, checksum) -> lines.add("Table " + table + ": SHA-256 " + checksum));
        list(Topic.VERSIONS, "To compute it again", Items.of(lines).items());
    }

    private void addAll(List<ReportSection> further) {
        sections.addAll(further);
    }

    private void list(Topic topic, String heading, List<Item> items) {
        if (!items.isEmpty()) {
            add(topic, heading, new Items(items));
        }
    }

    private void add(Topic topic, String heading, ReportBlock... blocks) {
        sections.add(new ReportSection(topic, heading, List.of(blocks)));
    }
}
