package surfeit.calibration;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Every cell of the benchmark as CSV, with counts, so that anyone can compute other errors. */
final class CsvTable {
    private static final List<String> COLUMNS = List.of("block", "particles", "spots_per_particle", "elements",
        "scatter", "calibration_error", "note", "promise", "look", "coverage_lowest_percent",
        "coverage_highest_percent", "coverage_samples", "false_flag_samples", "nominal_samples",
        "consistent_at_nominal_samples",
        "consistent_at_margin_samples", "margin_samples_worse_side", "shift_flagged_samples",
        "shift_flagged_wrong_way_samples", "shifted_samples", "status");

    private CsvTable() {
    }

    static String of(List<Result> results) {
        StringBuilder csv = new StringBuilder(String.join(",", COLUMNS)).append('\n');
        results.forEach(result -> csv.append(row(result)).append('\n'));
        return csv.toString();
    }

    private static String row(Result result) {
        Label label = result.label();
        return Stream.of(quoted(label.block()), quoted(label.particles()), label.spots(), label.elements(),
            label.scatter().word(), quoted(label.error()), quoted(label.note()), label.promise().words(), result.look(),
            exact(result.lowestCoverage()), exact(result.highestCoverage()), result.lowestCoverage().draws(),
            result.falseFlags().hits(), result.falseFlags().draws(), result.consistentAtNominal().hits(),
            result.consistentAtMargin().hits(), result.consistentAtMargin().draws(), result.power().hits(),
            result.wrongWay().hits(), result.power().draws(), quoted(result.status()))
            .map(Object::toString).collect(Collectors.joining(","));
    }

    private static String exact(Share share) {
        return String.format(Locale.ROOT, "%.3f", share.percent());
    }

    private static String quoted(String text) {
        return "\"" + text + "\"";
    }
}
