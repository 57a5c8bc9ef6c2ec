package surfeit.report.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import surfeit.report.Digits;

/** The power curves of a plan: chance to show the shift against the number of particles, with the wanted chance. */
public final class PowerFigure {
    private static final double HEIGHT = 260;
    /** From this many times the smallest number on, the axis is logarithmic. Judgement. */
    private static final double WIDE = 40;
    /** Up to so many points each carries its sign. Judgement. */
    private static final int MOST_SIGNS = 24;

    private PowerFigure() {
    }

    /** Draws the curves of a plan. */
    public static Figure of(PowerCurves plan) {
        Sheet sheet = new Sheet(plan.title(), plan.subtitle());
        String wanted = "wanted: " + Digits.setting(plan.target() * 100) + " %";
        CurvePlot plot = new CurvePlot(particles(plan), "particles measured (number)",
            LinearScale.between(0, 100, HEIGHT, 0, 5),
            "chance to show it, %");
        List<CurvePlot.Curve> curves = new ArrayList<>();
        for (int i = 0; i < plan.curves().size(); i++) {
            curves.add(curve(plan.curves().get(i), new Series(i), plan.target()));
        }
        double bottom = plot.draw(curves, plan.target() * 100, "what it takes", sheet.top() + 10, true,
            sheet.drawing());
        String words = plan.curves().stream().map(curve -> curve.name() + ": " + reading(curve, plan.target()))
            .collect(Collectors.joining("; ", "", "."));
        return sheet.finish(bottom, new Legend().add(CurvePlot.levelLine(), wanted), plan.notes(),
            (plan.subtitle() + " " + words).strip());
    }

    private static Scale particles(PowerCurves plan) {
        int least = plan.curves().stream().mapToInt(curve -> curve.points().get(0).particles()).min().orElse(1);
        int most = Math.max(least + 1, plan.curves().stream().mapToInt(PowerCurves.Curve::largest).max().orElse(2));
        if (most > WIDE * least) {
            return new LogScale(least, most * 1.02, CurvePlot.LEFT, CurvePlot.RIGHT);
        }
        LinearScale scale = LinearScale.around(0, most, 0, Double.MAX_VALUE, CurvePlot.LEFT, CurvePlot.RIGHT, 8);
        return scale.step() >= 1 ? scale : new LinearScale(0, most, CurvePlot.LEFT, CurvePlot.RIGHT, 1);
    }

    private static CurvePlot.Curve curve(PowerCurves.Curve curve, Series series, double target) {
        double[] points = new double[2 * curve.points().size()];
        for (int i = 0; i < curve.points().size(); i++) {
            points[2 * i] = curve.points().get(i).particles();
            points[2 * i + 1] = curve.points().get(i).power() * 100;
        }
        return new CurvePlot.Curve(series, 1.5, points, curve.points().size() <= MOST_SIGNS ? points : new double[0],
            curve.name(),
            reading(curve, target));
    }

    private static String reading(PowerCurves.Curve curve, double target) {
        String percent = Digits.setting(target * 100) + " %";
        return curve.reaches(target).stream().mapToObj(number -> percent + " from " + number + " particles on")
            .findFirst()
            .orElse(percent + " not reached up to " + curve.largest() + " particles");
    }
}
