package surfeit.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import surfeit.element.Element;
import surfeit.rival.Rival;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.ForeignElement;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;

/** What one row of the CSV speaks about: a nominal element of a group, one that no spot lists, or a foreign one. */
record CsvRow(Provenance provenance, GroupFinding group, Element element, String verdict,
              Optional<ElementFinding> finding, Optional<ForeignElement> foreign) {

    static List<CsvRow> of(Interpretation interpretation, Provenance provenance) {
        List<CsvRow> rows = new ArrayList<>();
        for (GroupFinding group : interpretation.groups()) {
            for (ElementFinding finding : group.elements()) {
                rows.add(new CsvRow(provenance, group, finding.element(), finding.outcome().verdict().word(),
                    Optional.of(finding), Optional.empty()));
            }
            for (Element element : group.notMeasured()) {
                rows.add(new CsvRow(provenance, group, element, "not_measured", Optional.empty(), Optional.empty()));
            }
            for (ForeignElement foreign : group.foreign()) {
                String verdict = foreign.present() ? "foreign" : "foreign_not_shown";
                rows.add(new CsvRow(provenance, group, foreign.element(), verdict, Optional.empty(),
                    Optional.of(foreign)));
            }
        }
        return rows;
    }

    /** Causes that alone could make the numbers of the group. */
    Stream<String> ableRivals() {
        return group.rivals().stream().filter(rival -> rival.couldExplain() == Rival.CouldExplain.YES)
            .map(Rival::cause);
    }
}
