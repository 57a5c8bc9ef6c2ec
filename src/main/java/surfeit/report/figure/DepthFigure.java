package surfeit.report.figure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import surfeit.element.Element;
import surfeit.report.Digits;
import surfeit.report.Listing;
import surfeit.segregation.answer.Estimate;
import surfeit.xray.DepthCaveat;
import surfeit.xray.Material;
import surfeit.xray.SignalDepth;
import surfeit.xray.SignalDepthQuery;
import surfeit.xray.SignalDepths;

/**
 * How much of a line's signal comes from above a depth: for every usable line of an alloy, at one beam energy or more.
 *
 * <p>The signal is what reaches the detector: {@code shareOfTop} of {@link surfeit.xray.DepthProfile}. Beam energies
 * beyond {@value #MOST_PANELS}, and lines beyond {@value #MOST_LINES} of one energy, are left out; the figure says so.
 */
public final class DepthFigure {
    static final int MOST_PANELS = 4;
    static final int MOST_LINES = 10;
    /** Where the axis begins, at 10 nm at most, no line has given more than this; where it ends all gave the other. */
    private static final double FIRST_SHARE = 0.02;
    private static final double LAST_SHARE = 0.995;
    private static final double FILM_NM = 10;
    /** Between these shares the curves run steepest and lie furthest apart. */
    private static final double SIGNS_FROM = 0.2;
    private static final double SIGNS_TO = 0.8;

    private final SignalDepthQuery query;
    private final List<Panel> panels;
    private final List<String> labels;
    private final int energies;

    /** The lines drawn for one beam energy, the shallowest first. */
    private record Panel(SignalDepths.AtBeamEnergy at, List<DepthCurve> curves) {
        static Panel of(SignalDepths.AtBeamEnergy at, SignalDepthQuery query) {
            return new Panel(at, at.lines().stream().sorted(Comparator.comparing(SignalDepth::lineOfChoice).reversed())
                .limit(MOST_LINES).sorted(Comparator.comparingDouble(depth -> depth.emitted().depth50Nm().value()))
                .map(depth -> DepthCurve.of(depth, query)).toList());
        }

        String beam() {
            return Digits.setting(at.beamEnergyKev()) + " keV";
        }
    }

    private DepthFigure(SignalDepths depths) {
        query = depths.query();
        energies = depths.byBeamEnergy().size();
        panels = depths.byBeamEnergy().stream().limit(MOST_PANELS).map(at -> Panel.of(at, query)).toList();
        labels = panels.stream().flatMap(panel -> panel.curves.stream()).map(DepthFigure::label).distinct().toList();
    }

    /**
     * Draws the depths of an alloy.
     *
     * @param subject which alloy, {@code Ag-Cu eutectic}
     */
    public static Figure of(SignalDepths depths, String subject) {
        return new DepthFigure(depths).draw(subject);
    }

    private Figure draw(String subject) {
        Sheet sheet = new Sheet(subject + ": how deep the signal comes from", conditions());
        int lines = panels.stream().mapToInt(panel -> panel.curves.size()).max().orElse(0);
        double height = Math.max(panels.size() == 1 ? 250 : 170, lines * 38 - 20);
        CurvePlot plot = new CurvePlot(depthScale(), "depth below the surface, nm (log)",
            new LinearScale(0, 100, height, 0, 25), "signal from above, %");
        double at = sheet.top() + 10;
        for (int i = 0; i < panels.size(); i++) {
            boolean last = i == panels.size() - 1;
            at = plot.draw(curves(panels.get(i), plot.x()), 50, "beam " + panels.get(i).beam(), at, last,
                sheet.drawing()) + (last ? 0 : 14);
        }
        Legend legend = new Legend().add(CurvePlot.levelLine(), "half of the signal");
        return sheet.finish(at, legend, notes(), conditions() + " " + inWords());
    }

    private String conditions() {
        Material material = query.material();
        String parts = material.massFractions().entrySet().stream().filter(part -> part.getValue() > 0)
            .sorted(Map.Entry.<Element, Double>comparingByValue().reversed())
            .map(part -> part.getKey() + " " + Digits.plain(part.getValue() * 100)).collect(Collectors.joining(", "));
        return parts + " mass%; " + Digits.plain(material.densityGramPerCm3()) + " g/cm\u00b3"
            + (material.densityGiven() ? "" : " (from the elements' volumes)") + "; take-off angle "
            + Digits.setting(query.takeOffDeg()) + "\u00b0"
            + (query.tiltDeg() == 0 ? "" : ", tilt " + Digits.setting(query.tiltDeg()) + "\u00b0") + ".";
    }

    /** From a thin film's depth or less to where all lines are spent, at round values. */
    private Scale depthScale() {
        double low = FILM_NM;
        double high = 10 * FILM_NM;
        for (Panel panel : panels) {
            for (DepthCurve curve : panel.curves) {
                low = Math.min(low, curve.depthNm(FIRST_SHARE));
                high = Math.max(high, curve.depthNm(LAST_SHARE));
            }
        }
        return new LogScale(Math.max(1, LinearScale.roundStep(low / 2.01)), high * 1.05, CurvePlot.LEFT,
            CurvePlot.RIGHT);
    }

    /** Signs stand at different heights, that of the shallowest line lowest, so that they keep apart. */
    private List<CurvePlot.Curve> curves(Panel panel, Scale x) {
        List<CurvePlot.Curve> curves = new ArrayList<>();
        for (int i = 0; i < panel.curves.size(); i++) {
            DepthCurve curve = panel.curves.get(i);
            double share = SIGNS_FROM + (SIGNS_TO - SIGNS_FROM) * (i + 0.5) / panel.curves.size();
            String name = label(curve) + switch (curve.depth().excitation()) {
                case USABLE -> "";
                case MARGINAL -> " (marginally excited)";
                case BARELY_EXCITED, NOT_EXCITED -> " (barely excited)";
            };
            double width = curve.depth().lineOfChoice() ? 2.1 : 1.2;
            curves.add(new CurvePlot.Curve(new Series(labels.indexOf(label(curve))), width,
                curve.points(x), new double[] {curve.depthNm(share), share * 100}, name,
                "half above " + interval(curve.depth().emitted().depth50Nm())));
        }
        return curves;
    }

    private static String label(DepthCurve curve) {
        return curve.depth().line().label();
    }

    /** {@code 70.7 nm (65.5 to 73.6)}. */
    private static String interval(surfeit.xray.Estimate estimate) {
        String numbers = Digits.interval(new Estimate(estimate.value(), estimate.low(), estimate.high()));
        return numbers.replace(" (", " nm (");
    }

    private List<String> notes() {
        List<String> notes = new ArrayList<>();
        notes.add("The signal is what reaches the detector. In brackets: as far as the model was found from "
            + "independent calculations. Thick: the line usually taken for its element.");
        Set<DepthCaveat> caveats = EnumSet.noneOf(DepthCaveat.class);
        for (Panel panel : panels) {
            panel.curves.forEach(curve -> caveats.addAll(curve.depth().caveats()));
            if (!panel.at.withoutLine().isEmpty()) {
                notes.add("At " + panel.beam() + " no line can be used of "
                    + Listing.and(panel.at.withoutLine().stream().map(choice -> choice.element().symbol()).toList())
                    + ".");
            }
        }
        if (!caveats.isEmpty()) {
            notes.add(caveats.stream().map(DepthCaveat::detail).collect(Collectors.joining(" ")));
        }
        if (energies > MOST_PANELS) {
            notes.add("Drawn are the first " + MOST_PANELS + " of " + energies + " beam energies.");
        }
        if (panels.stream().anyMatch(panel -> panel.at.lines().size() > MOST_LINES)) {
            notes.add("Drawn are " + MOST_LINES + " lines of each beam energy, those usually taken before others.");
        }
        return notes;
    }

    private String inWords() {
        List<String> sentences = new ArrayList<>();
        for (Panel panel : panels) {
            List<String> lines = panel.curves.stream().map(curve -> label(curve) + " half above "
                + interval(curve.depth().emitted().depth50Nm()) + ", nine tenths above "
                + interval(curve.depth().emitted().depth90Nm())).toList();
            sentences.add("At " + panel.beam()
                + (lines.isEmpty() ? " no line is drawn" : ", " + String.join("; ", lines)) + ".");
        }
        return String.join(" ", sentences);
    }
}
