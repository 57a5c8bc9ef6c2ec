package surfeit.intake;

import java.util.List;
import java.util.Optional;
import surfeit.fuzz.PlainTable;

/** Rows given back hold what was sent, and nothing a spreadsheet would run. */
final class RejectedRows {
    private RejectedRows() {
    }

    static void check(TableFuzz.Heard heard, IntakeReport report, PlainTable sent) {
        if (heard.givenBack().isEmpty()) {
            return;
        }
        char delimiter = report.dialect().orElseThrow().delimiter();
        boolean isTurned = report.dialect().orElseThrow().layout().equals(Optional.of(CsvDialect.Layout.TURNED));
        PlainTable back = PlainTable.of(heard.givenBack(), delimiter);
        List<CsvRow> rows = heard.rejected().stream().flatMap(spot -> spot.rows().stream()).toList();
        List<Long> lines = back.linesAfter(1);
        TableOracle.require(lines.size() == rows.size(), rows.size() + " rows rejected, " + lines.size() + " given back");
        for (int i = 0; i < rows.size(); i++) {
            List<String> cells = back.row(lines.get(i));
            List<String> original = isTurned ? rows.get(i).cells() : sent.row(rows.get(i).line());
            TableOracle.require(cells.size() > original.size(), "a column more");
            for (int k = 0; k < original.size(); k++) {
                requireSame(original.get(k), cells.get(k));
            }
        }
        lines.forEach(line -> back.row(line).forEach(PlainTable::requireHarmless));
        back.row(1).forEach(PlainTable::requireHarmless);
    }

    private static void requireSame(String sent, String back) {
        TableOracle.require(back.equals(sent) || back.equals("'" + sent), "sent " + sent + ", given back " + back);
    }
}
