package surfeit.report.figure;

import java.util.function.Function;
import surfeit.report.figure.Drawing.Stroke;

/** What the signs of a plot of ratios mean; only those that occur. */
final class VerdictLegend {
    private VerdictLegend() {
    }

    static Legend of(ForestPlot plot, Function<Mark, String> word, String one, String margin) {
        Legend legend = new Legend();
        plot.marks().forEach(mark -> legend.add(mark, word.apply(mark)));
        legend.add(one, (x, y, drawing) -> drawing.vertical(x + 11, y - 7, y + 7, Stroke.of(Ink.TEXT, 1.1)));
        legend.add(margin, (x, y, drawing) -> drawing.rectangle(x, y - 7, 22, 14, Ink.BAND));
        if (plot.hasInner()) {
            legend.add(Stroke.of(Ink.TEXT, ForestPlot.INNER), "for the two measured particles themselves");
            legend.add(Stroke.of(Ink.TEXT, 1.6).dashed("4 3"), "for particles of their kind, from two only (weak)");
        }
        if (plot.hasOpenEnds()) {
            legend.add("goes on beyond the axis, or has no bound", (x, y, drawing) -> {
                drawing.horizontal(x, x + 20, y, Stroke.of(Ink.TEXT, 1.6));
                ForestPlot.arrow(x + 22, 1, y, Ink.TEXT, drawing);
            });
        }
        return legend;
    }
}
