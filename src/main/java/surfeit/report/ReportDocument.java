package surfeit.report;

import java.util.List;

/** A whole report, free of markup; Markdown and HTML show the same one. */
public record ReportDocument(String title, List<ReportSection> sections) {
    public ReportDocument {
        sections = List.copyOf(sections);
        if (title.isBlank()) {
            throw new IllegalArgumentException("A report has a title, got \"" + title + "\".");
        }
    }
}
