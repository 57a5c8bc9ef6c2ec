package surfeit.report.figure;

import java.util.DoubleSummaryStatistics;
import surfeit.report.Digits;
import surfeit.report.figure.DrawnSpots.Feature;

/** From where to where the spots of a feature reach in one element. */
final class SpotRange {
    private SpotRange() {
    }

    /** {@code 73.88 to 80.04 at%}. */
    static String of(Feature feature, int element) {
        DoubleSummaryStatistics range = feature.lanes().stream().flatMap(lane -> lane.points().stream())
            .filter(point -> point.has(element)).mapToDouble(point -> point.fractions()[element] * 100)
            .summaryStatistics();
        if (range.getCount() == 0) {
            return "not measured";
        }
        String low = Digits.plain(range.getMin());
        return (range.getMin() == range.getMax() ? low : low + " to " + Digits.plain(range.getMax())) + " at%";
    }
}
