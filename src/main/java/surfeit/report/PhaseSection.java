package surfeit.report;

import static surfeit.report.ReportBlock.Kind.GROUP;
import static surfeit.report.ReportBlock.Kind.PROSE;
import static surfeit.report.ReportBlock.Kind.SHORT;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.composition.Phase;
import surfeit.report.ReportBlock.Column;
import surfeit.report.ReportBlock.Items;
import surfeit.report.ReportBlock.Paragraph;
import surfeit.report.ReportBlock.Table;
import surfeit.report.ReportSection.Topic;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.PhaseReading;
import surfeit.segregation.answer.PhaseReading.OnTieLine;

/** The part of a report that holds every group against the known phases of the alloy. */
final class PhaseSection {
    private PhaseSection() {
    }

    /** The section, or none where no phase is known. */
    static List<ReportSection> of(Interpretation interpretation) {
        List<List<String>> rows = new ArrayList<>();
        for (GroupFinding group : interpretation.groups()) {
            group.phaseReading().ifPresent(reading -> rows.add(row(group.name(), reading)));
        }
        if (rows.isEmpty()) {
            return List.of();
        }
        Table table = new Table(List.of(new Column("group", GROUP), new Column("reads like", SHORT),
            new Column("phases not excluded", SHORT), new Column("as a mixture, by mass", SHORT),
            new Column("in the nominal alloy", SHORT), new Column("in words", PROSE)), rows);
        return List.of(new ReportSection(Topic.PHASES, "Phases", List.of(table,
            new Paragraph("EDS sees compositions, not crystals. Shares carry a 95 % interval. Phases compared with:"),
            Items.of(interpretation.knownPhases().stream().map(PhaseSentence::source).toList()))));
    }

    private static List<String> row(String group, PhaseReading reading) {
        Optional<OnTieLine> line = reading.tieLine().filter(on -> reading.kind() == PhaseReading.Kind.MIXTURE);
        return List.of(group, reading.kind().word(), String.join(", ", reading.fitting()),
            line.map(on -> on.to().name() + " " + Digits.percentInterval(on.shareOfMass())).orElse(""),
            line.flatMap(OnTieLine::nominal).map(share -> Digits.share(share.ofMass())).orElse(""),
            reading.detail());
    }

    /** One line per group that was held against phases. */
    static List<String> details(Interpretation interpretation) {
        return interpretation.groups().stream().flatMap(group -> group.phaseReading().stream()
            .map(reading -> group.name() + ": " + reading.kind().word() + ". " + reading.detail())).toList();
    }
}
