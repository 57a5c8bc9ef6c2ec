package surfeit.http.board;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import surfeit.lab.StoredInterpretation;
import surfeit.lab.StoredSample;

/**
 * One sample: what it shows with figures, groups, other causes, spots and history.
 *
 * @param alloyRevision of its alloy; 0 where it needs none
 * @param answer  sections of its report, as HTML; or why there are none
 * @param methods the sections that belong to a paper: methods, references, versions
 * @param figures words of the figures there are
 * @param history its changes, the last one first
 * @param frozen  its frozen answers
 * @param names   words of the lab that stand in the sentences of the report
 */
public record SamplePage(Look look, StoredSample sample, long alloyRevision, String answer, String methods,
    List<String> figures,
                         SpotsSection spots, List<HistoryLine> history, List<StoredInterpretation> frozen,
                         List<String> names) {

    /** Tells this page from the one after a change. */
    private String state() {
        return sample.revision() + "-" + alloyRevision + "-" + frozen.size();
    }

    public String html() {
        String name = sample.name();
        Markup page = new Markup();
        page.open("p", "class", "way").link(look.address(Look.SAMPLES), "Samples").text(" / ").close("p");
        page.open("h1").name(name).close("h1");
        UploadForm.write(Optional.of(name), List.of(), page);
        page.open("article", "id", "fresh", "data-sample", name, "data-state", state())
            .raw("\n");
        SampleFacts.write(sample, page);
        page.raw(answer);
        spots.write(page);
        HistoryLine.write(name, history, sample.revision(), page);
        FrozenSection.write(frozen, page);
        AnswerLinks.write(name, figures, page);
        if (!methods.isEmpty()) {
            page.open("details").element("summary", "Methods paragraph, references, versions and checksums").raw("\n")
                .raw(methods).close("details");
        }
        page.close("article");
        CompareForm.write(name, page);
        return new PageFrame(name, "sample", look, "/samples/" + name, Map.of()).html(page.toString(), names);
    }
}
