package surfeit.report;

import java.util.List;

/** A part of a report under its heading; the opening has none. */
public record ReportSection(Topic topic, String heading, List<ReportBlock> blocks) {

    /** What a section is about, in the order of a report. */
    public enum Topic {
        OPENING, MEASURED, FOUND, NUMBERS, CONTRASTS, PHASES, DEPTH, RIVALS, TO_KNOW, CAUTIONS, METHODS, REFERENCES, VERSIONS
    }

    public ReportSection {
        blocks = List.copyOf(blocks);
    }
}
