package surfeit.calibration;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import surfeit.segregation.answer.MethodSettings;

/** The benchmark as a text table: a summary, every cell, and how far confidence can be relied on. */
final class TextReport {
    private static final String CELL = "%-23s %-30s %-68s %17s %10s %11s %11s %11s %9s %5s  %s\n";
    private static final String SUM = "%-23s %-13s %-24s %-19s %5s %13s %12s %10s %7s\n";
    private static final String SURE = "%-48s %-11s %13s %13s %9s %9s %14s\n";
    private static final String LEANS = "%-48s %-11s real shifts that way: %.0f %% of leans where 80 %% of samples are"
        + " nominal, %.0f %% where 50 %% are\n";

    private final StringBuilder text = new StringBuilder();

    private TextReport() {
    }

    static String of(List<Result> results, Benchmark benchmark) {
        TextReport report = new TextReport();
        report.introduce(benchmark);
        report.summary(results);
        report.cells(results);
        report.reliability(Reliability.of(results));
        return report.text.toString();
    }

    private void line(String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values));
    }

    private void introduce(Benchmark benchmark) {
        line("""
            Calibration of Surfeit, method "%s" version %d. Every sample is invented; seeds are fixed.
            Percent of samples, +- binomial 95 %% Monte Carlo error. Samples per cell: %s.
            Targets: coverage of the 95 %% interval %.1f to %.1f (three or more particles, symmetric scatter), false
            flags at most %.1f, consistent or equivalent at the margin at most %.1f. A miss lies beyond its target by
            more than its Monte Carlo error, at a second look with fresh seeds and four times the samples (marked 2).
            """, MethodSettings.NAME, MethodSettings.VERSION, benchmark.describe(), Result.COVERAGE_FROM,
            Result.COVERAGE_TO, Result.FALSE_FLAGS_TO, Result.CONSISTENT_TO);
    }

    private void summary(List<Result> results) {
        line("\nSUMMARY: lowest and highest coverage, highest rate of errors over the cells of a row\n");
        line(SUM, "block", "scatter", "calibration error", "promise", "cells", "coverage", "false flags", "at margin",
            "misses");
        Map<List<String>, Summary> sums = new LinkedHashMap<>();
        for (Result result : results) {
            String error = result.label().error();
            List<String> key = List.of(result.label().block(), result.label().scatter().word(),
                error.contains("ref. spots") ? "reference spots" : error, result.label().promise().words());
            sums.merge(key, Summary.of(result), Summary::and);
        }
        sums.forEach((key, sum) -> line(SUM, key.get(0), key.get(1), key.get(2), key.get(3), sum.cells(),
            String.format(Locale.ROOT, "%.1f..%.1f", sum.lowest().percent(), sum.highest().percent()),
            rate(sum.falseFlags()), rate(sum.atMargin()), sum.misses()));
    }

    private static String rate(Share share) {
        return share.isKnown() ? String.format(Locale.ROOT, "%.1f", share.percent()) : "-";
    }

    private void cells(List<Result> results) {
        line("""

            CELLS: design is particles x spots, elements, scatter. Coverage of the element covered least and of the one
            covered most. Alike: called consistent or equivalent, where true and at the margin (worse side). Shift: odds
            ratio 1.5 unless stated, flagged in its direction, or the wrong way.
            """);
        line(CELL, "block", "design", "circumstances", "coverage", "false flag", "alike: true", "at margin",
            "shift: seen", "wrongly", "look", "status");
        for (Result result : results) {
            Share low = result.lowestCoverage();
            String coverage = String.format(Locale.ROOT, "%.1f..%.1f +-%.1f", low.percent(),
                result.highestCoverage().percent(), low.error());
            line(CELL, result.label().block(), result.label().design(), result.label().circumstances(), coverage,
                Result.text(result.falseFlags()), Result.text(result.consistentAtNominal()),
                Result.text(result.consistentAtMargin()), Result.text(result.power()), Result.text(result.wrongWay()),
                result.look(), result.status());
        }
    }

    private void reliability(List<Reliability> cells) {
        line("""

            RELIABILITY OF CONFIDENCE (4 particles x 3 spots). If nothing differs, a flag at least so sure appears in at
            most one less the confidence of samples; likewise consistent at the margin. That is no chance of being
            right: of the flags in a class (from this confidence to the next), the share that is false depends on how
            many samples are exactly nominal (80 or 50 %%; the others shifted by log odds of deviation 0.4, invented).
            """);
        line(SURE, "cell", "confidence", "false flags", "at margin", "false@80", "false@50", "wrong way");
        for (Reliability cell : cells) {
            String name = cell.label().elements() + " elements, " + cell.label().error();
            for (int c = 0; c < Tally.CONFIDENCE.length; c++) {
                line(SURE, name, "from " + Tally.CONFIDENCE[c], exact(cell.falseFlagsFrom(c)),
                    exact(cell.consistentAtMarginFrom(c)), percent(cell.falsePercent(c, Reliability.NOMINAL_WORLDS[0])),
                    percent(cell.falsePercent(c, Reliability.NOMINAL_WORLDS[1])), exact(cell.wrongWay(c)));
            }
            line(SURE, name, "every flag", "", "", percent(cell.falsePercent(Reliability.NOMINAL_WORLDS[0])),
                percent(cell.falsePercent(Reliability.NOMINAL_WORLDS[1])), exact(cell.wrongWay()));
            line(LEANS, name, "leans", cell.rightLeansPercent(Reliability.NOMINAL_WORLDS[0]),
                cell.rightLeansPercent(Reliability.NOMINAL_WORLDS[1]));
        }
    }

    private static String exact(Share share) {
        return share.isKnown() ? String.format(Locale.ROOT, "%.2f +-%.2f", share.percent(), share.error()) : "-";
    }

    private static String percent(double value) {
        return Double.isNaN(value) ? "-" : String.format(Locale.ROOT, "%.1f", value);
    }

    /** Extremes over several cells. */
    private record Summary(int cells, Share lowest, Share highest, Share falseFlags, Share atMargin, int misses) {
        static Summary of(Result result) {
            return new Summary(1, result.lowestCoverage(), result.highestCoverage(), result.falseFlags(),
                result.consistentAtMargin(), result.misses().isEmpty() ? 0 : 1);
        }

        Summary and(Summary other) {
            return new Summary(cells + other.cells, Share.lower(lowest, other.lowest),
                Share.higher(highest, other.highest), Share.higher(falseFlags, other.falseFlags),
                Share.higher(atMargin, other.atMargin), misses + other.misses);
        }
    }
}
