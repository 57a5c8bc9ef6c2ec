package surfeit.calibration;

import java.util.List;
import java.util.Locale;

/**
 * The benchmark as a chart: a row per cell, with coverage, errors and power side by side, and the reliability of
 * confidence below.
 */
final class Chart {
    private static final double WIDTH = 1320;
    private static final double ROW = 14;
    private static final double TOP = 120;
    private static final double HEADING = 20;
    private static final double RELIABILITY_GAP = 100;

    private final Svg svg = new Svg();
    private final Panel coverage = new Panel(svg, "coverage of the 95 % interval, %", 560, 300, 85, 100, 2.5);
    private final Panel errors = new Panel(svg, "false flags, consistent at the margin, %", 890, 220, 0, 15, 5);
    private final Panel power = new Panel(svg, "shift seen, %", 1140, 150, 0, 100, 25);
    private final Panel ratio = new Panel(svg, "errors so sure, % of what is promised", 560, 300, 0, 200, 50);

    private Chart() {
    }

    static String of(List<Result> results) {
        Chart chart = new Chart();
        double bottom = chart.cells(results);
        double end = chart.reliability(Reliability.of(results), bottom + RELIABILITY_GAP);
        chart.legend();
        String description = results.size() + " ways of making invented samples: how often the 95 % interval covers the"
            + " truth, how often a flag or a verdict of consistent or equivalent is false, how often a shift is seen;"
            + " targets are drawn as grey lines.";
        return chart.svg.document(WIDTH, end + 40, "Calibration of Surfeit on invented samples", description);
    }

    private void legend() {
        svg.words(20, 28, "Calibration on invented samples", 18, "start", true);
        svg.words(20, 48, "Thin line: Monte Carlo error, 95 %. Thick grey line: from the element covered least to the"
            + " one covered most.", 11, "start", false);
        svg.words(20, 64, "Vertical grey lines: targets. Filled: promised. Hollow: few particles, or outside the"
            + " promise. Cross: misses a target. Triangle: beyond the axis.", 11, "start", false);
        svg.disc(890, 44, true);
        svg.words(900, 48, "false flag while nothing differs (target 5)", 11, "start", false);
        svg.diamond(890, 60, true);
        svg.words(900, 64, "consistent or equivalent at the margin (target 5.5)", 11, "start", false);
    }

    private double cells(List<Result> results) {
        long blocks = results.stream().map(result -> result.label().block()).distinct().count();
        double bottom = TOP + results.size() * ROW + blocks * HEADING;
        double from = coverage.x(Result.COVERAGE_FROM);
        svg.band(from, TOP, coverage.x(Result.COVERAGE_TO) - from, bottom - TOP, "#f3f3f3");
        for (Panel panel : List.of(coverage, errors, power)) {
            panel.axis(TOP, bottom);
        }
        coverage.target(Result.COVERAGE_FROM, TOP, bottom);
        coverage.target(Result.COVERAGE_TO, TOP, bottom);
        errors.target(Result.FALSE_FLAGS_TO, TOP, bottom);
        errors.target(Result.CONSISTENT_TO, TOP, bottom);
        double y = TOP;
        String block = "";
        for (Result result : results) {
            if (!result.label().block().equals(block)) {
                block = result.label().block();
                svg.words(20, y + HEADING - 5, block + " (particles x spots)", 11, "start", true);
                y += HEADING;
            }
            row(result, y + ROW / 2);
            y += ROW;
        }
        return bottom;
    }

    private void row(Result result, double y) {
        boolean filled = result.label().promise() == Label.Promise.FULL;
        svg.words(28, y + 3.5, result.label().design(), 10, "start", false);
        svg.words(190, y + 3.5, result.label().circumstances(), 10, "start", false);
        Share low = result.lowestCoverage();
        Share high = result.highestCoverage();
        coverage.range(low.percent(), high.percent(), y);
        Panel.Mark mark = (drawing, x, at) -> drawing.disc(x, at, filled);
        Panel.Mark cross = (drawing, x, at) -> drawing.cross(x, at);
        coverage.value(high, y, result.misses().contains(Result.TOO_MUCH) ? cross : mark);
        coverage.value(low, y, result.misses().contains(Result.TOO_LITTLE) ? cross : mark);
        errors.value(result.consistentAtMargin(), y, result.misses().contains(Result.ALIKE) ? cross
            : (drawing, x, at) -> drawing.diamond(x, at, filled));
        errors.value(result.falseFlags(), y, result.misses().contains(Result.FALSE_FLAGS) ? cross : mark);
        power.value(result.power(), y, mark);
        if (!result.misses().isEmpty()) {
            svg.words(552, y + 3.5, "miss", 10, "end", true);
        }
    }

    private double reliability(List<Reliability> cells, double top) {
        svg.words(20, top - 40, "Reliability of confidence: how often a verdict at least so sure is false, against"
            + " what is promised", 14, "start", true);
        double bottom = top + cells.size() * Tally.CONFIDENCE.length * ROW;
        ratio.axis(top, bottom);
        ratio.target(100, top, bottom);
        double y = top;
        for (Reliability cell : cells) {
            for (int c = 0; c < Tally.CONFIDENCE.length; c++) {
                String name = String.format(Locale.ROOT, "confidence from %s: %d elements, %s", Tally.CONFIDENCE[c],
                    cell.label().elements(), cell.label().error());
                svg.words(28, y + ROW / 2 + 3.5, name, 10, "start", false);
                ratio(cell.falseFlagsFrom(c), c, y + ROW / 2, (drawing, x, at) -> drawing.disc(x, at, true));
                ratio(cell.consistentAtMarginFrom(c), c, y + ROW / 2, (drawing, x, at) -> drawing.diamond(x, at, true));
                y += ROW;
            }
        }
        return bottom;
    }

    private void ratio(Share share, int c, double y, Panel.Mark mark) {
        double promised = 1 - Tally.CONFIDENCE[c];
        double x = share.percent() / promised;
        double error = share.error() / promised;
        svg.line(ratio.x(x - error), y, ratio.x(x + error), y, Svg.INK, 1);
        mark.draw(svg, ratio.x(x), y);
    }
}
