package surfeit.report;

import static surfeit.report.ReportBlock.Kind.GROUP;
import static surfeit.report.ReportBlock.Kind.SHORT;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import surfeit.report.ReportBlock.Column;
import surfeit.report.ReportBlock.Items;
import surfeit.report.ReportBlock.Paragraph;
import surfeit.report.ReportBlock.Table;
import surfeit.report.ReportSection.Topic;
import surfeit.segregation.answer.DepthReading;
import surfeit.segregation.answer.Interpretation;

/** The part of a report on depth: features read at several beam energies, and how thick a skin could be at most. */
final class DepthSection {
    private static final String EXPLAINED = "A film at the surface fades as the beam reaches deeper; a deep phase "
        + "stays. The film is of the pure element on the nominal alloy; mean depths are those of the nominal alloy.";

    private DepthSection() {
    }

    /** The section, or none where nothing is said of depth. */
    static List<ReportSection> of(Interpretation interpretation) {
        List<ReportBlock> blocks = new ArrayList<>();
        if (!interpretation.depths().isEmpty()) {
            blocks.add(new Paragraph(EXPLAINED));
            blocks.add(new Table(List.of(new Column("feature", GROUP), new Column("element", SHORT),
                new Column("keV", SHORT), new Column("line", SHORT), new Column("mean depth nm", SHORT),
                new Column("odds ratio (low to high)", SHORT), new Column("a film would show", SHORT),
                new Column("reads like", SHORT)), interpretation.depths().stream()
                .flatMap(depth -> depth.energies().stream().map(at -> row(depth, at))).toList()));
        }
        List<String> skins = skins(interpretation);
        if (!skins.isEmpty()) {
            blocks.add(Items.of(skins));
        }
        return blocks.isEmpty() ? List.of() : List.of(new ReportSection(Topic.DEPTH, "How deep it could reach",
            blocks));
    }

    private static List<String> row(DepthReading depth, DepthReading.AtEnergy at) {
        return List.of(depth.feature(), depth.element().symbol(), Digits.setting(at.beamEnergyKev()), at.line(),
            number(at.meanDepthNm()), Digits.interval(at.oddsRatio()), number(at.filmOddsRatio()), depth.word().word());
    }

    private static String number(OptionalDouble value) {
        return value.isPresent() ? Digits.significant(value.getAsDouble()) : "";
    }

    /** One line per group that could be a skin of known greatest thickness. */
    static List<String> skins(Interpretation interpretation) {
        return interpretation.groups().stream().flatMap(group -> group.skinLimit().stream()
            .map(limit -> group.name() + ": " + SkinSentence.of(limit))).toList();
    }
}
