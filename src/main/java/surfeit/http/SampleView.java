package surfeit.http;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import surfeit.http.board.HistoryLine;
import surfeit.http.board.Look;
import surfeit.http.board.SamplePage;
import surfeit.http.board.SpotsSection;
import surfeit.lab.ImportReport;
import surfeit.lab.InputRevisions;
import surfeit.lab.Laboratory;
import surfeit.lab.PageRequest;
import surfeit.lab.ProblemException;
import surfeit.lab.SampleRevision;
import surfeit.lab.Segregation;
import surfeit.lab.StoredAlloy;
import surfeit.lab.StoredInterpretation;
import surfeit.lab.StoredSample;
import surfeit.report.ReportSection.Topic;
import surfeit.report.figure.AnswerFigure;
import surfeit.report.html.HtmlText;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.screening.SpotReading;

/** Puts the page of one sample together. */
final class SampleView {
    private static final int MOST_REVISIONS = 30;
    private static final int MOST_FROZEN = 200;
    /** Beyond that the page draws no single spots: each is read twice for it. Judgement. */
    private static final long MOST_SPOTS_DRAWN = 100_000;
    private static final Set<Topic> PAPER = EnumSet.of(Topic.METHODS, Topic.REFERENCES, Topic.VERSIONS);
    /** What was measured stands at the top of a page of the board, with links. */
    static final Set<Topic> ANSWER = EnumSet.complementOf(EnumSet.of(Topic.MEASURED, Topic.METHODS, Topic.REFERENCES,
        Topic.VERSIONS));

    private final Laboratory laboratory;

    SampleView(Laboratory laboratory) {
        this.laboratory = laboratory;
    }

    SamplePage page(Exchange exchange, StoredSample sample, Optional<InputRevisions> inputs, Look look)
            throws IOException {
        try {
            return whole(exchange, laboratory.segregation(sample.name(),
                inputs.orElseGet(() -> laboratory.inputRevisions(sample.name())), GroupBy.FEATURE), look);
        } catch (ProblemException refusal) {
            return new SamplePage(look, sample, 0, "<p class=\"refused\">" + HtmlText.escaped(refusal.getMessage())
                + " "
                + HtmlText.escaped(refusal.problem().whatToDo()) + "</p>\n", "", List.of(),
                new SpotsSection(List.of(), List.of(), sample.spotCount()), history(sample), frozen(sample.name()),
                List.of());
        }
    }

    private SamplePage whole(Exchange exchange, Segregation answer, Look look) throws IOException {
        StoredSample sample = answer.stored().orElseThrow();
        AnswerFile file = new AnswerFile(answer, laboratory.spotSource(sample), exchange.now());
        List<SpotReading> first = new ArrayList<>();
        EnumSet<AnswerFigure> wanted = EnumSet.allOf(AnswerFigure.class);
        if (sample.spotCount() > MOST_SPOTS_DRAWN) {
            wanted.remove(AnswerFigure.SPOTS);
        }
        StringBuilder sections = new StringBuilder();
        Set<AnswerFigure> drawn = file.sections(ANSWER, wanted, reading -> {
            if (first.size() < SpotsSection.MOST_ROWS) {
                first.add(reading);
            }
        }, sections);
        StringBuilder methods = new StringBuilder();
        file.sections(PAPER, Set.of(), reading -> { }, methods);
        return new SamplePage(look, sample, answer.alloy().map(StoredAlloy::revision).orElse(0L), sections.toString(),
            methods.toString(),
            drawn.stream().map(AnswerFigure::word).toList(),
            new SpotsSection(answer.interpretation().nominalFractions().elements(), first, sample.spotCount()),
            history(sample), frozen(sample.name()), names(answer));
    }

    /** Words of the lab that stand in sentences of an answer. */
    static List<String> names(Segregation answer) {
        List<String> names = new ArrayList<>();
        answer.stored().ifPresent(stored -> names.add(stored.name()));
        for (GroupFinding group : answer.interpretation().groups()) {
            names.add(group.name());
            names.addAll(group.particles());
            names.addAll(group.sessions());
        }
        return names;
    }

    /** The answers of a sample that were frozen, the first ones. */
    List<StoredInterpretation> frozen(String sample) {
        return laboratory.interpretations().list(sample, PageRequest.first(MOST_FROZEN)).items();
    }

    private List<HistoryLine> history(StoredSample sample) {
        long before = Math.max(0, sample.revision() - MOST_REVISIONS);
        List<HistoryLine> lines = new ArrayList<>();
        for (SampleRevision revision : laboratory.sampleRevisions(sample.name(),
                new PageRequest(MOST_REVISIONS, Optional.of(Long.toString(before)))).items()) {
            lines.add(new HistoryLine(revision, upload(revision)));
        }
        Collections.reverse(lines);
        return lines;
    }

    private Optional<ImportReport> upload(SampleRevision revision) {
        return revision.what() == SampleRevision.What.SPOTS_IMPORTED ? revision.link().map(laboratory.imports()::report)
            : Optional.empty();
    }
}
