package surfeit.report.figure;

import java.util.List;
import java.util.Optional;
import surfeit.composition.NominalFractions;
import surfeit.report.Digits;
import surfeit.report.figure.Drawing.Stroke;

/**
 * The axis of one element's share in at%, with its nominal and the phases.
 *
 * <p>It shows all spots and the nominal. Where these lie within 15 at% it shows that part only, and phases beyond are
 * named at the side; else it reaches to the phases too.
 */
final class SpotAxis {
    private static final double WIDE = 15;
    private static final double LEAST_SPAN = 2;

    private final int element;
    private final NominalFractions nominal;
    private final List<PhasePoint> phases;
    private final LinearScale scale;

    private SpotAxis(int element, NominalFractions nominal, List<PhasePoint> phases, LinearScale scale) {
        this.element = element;
        this.nominal = nominal;
        this.phases = phases;
        this.scale = scale;
    }

    /** The axis of an element; with {@code bars} it leaves room for two standard uncertainties around each spot. */
    static SpotAxis of(DrawnSpots spots, List<PhasePoint> phases, int element, boolean bars, double from, double to) {
        NominalFractions nominal = spots.nominal();
        double[] ends = {nominal.low(element) * 100, nominal.high(element) * 100};
        spots.points().filter(point -> point.has(element)).forEach(point -> {
            double percent = point.fractions()[element] * 100;
            double around = bars && !point.below()[element] ? point.uncertainties()[element] * 200 : 0;
            reach(ends, Math.max(percent - around, Math.min(percent, 0)));
            reach(ends, Math.min(percent + around, Math.max(percent, 100)));
        });
        double lowest = Math.min(ends[0], 0);
        double highest = Math.max(ends[1], 100);
        if (ends[1] - ends[0] >= WIDE) {
            phases.forEach(phase -> reach(ends, phase.fractions()[element] * 100));
        }
        double pad = Math.max((ends[1] - ends[0]) * 0.04, (LEAST_SPAN - ends[1] + ends[0]) / 2);
        int steps = (int) Math.max(3, Math.min(8, (to - from) / 70));
        LinearScale scale = LinearScale.around(ends[0] - pad, ends[1] + pad, lowest, highest, from, to, steps);
        return new SpotAxis(element, nominal, phases, scale);
    }

    private static void reach(double[] ends, double value) {
        ends[0] = Math.min(ends[0], value);
        ends[1] = Math.max(ends[1], value);
    }

    int element() {
        return element;
    }

    LinearScale scale() {
        return scale;
    }

    /** Names nominal and phases above the picture and tells where it may begin. */
    double flags(double top, Drawing drawing) {
        Flags flags = new Flags(scale.from(), scale.to());
        String value = Digits.nominalPercent(nominal.low(element))
            + (nominal.isPoint(element) ? "" : " to " + Digits.nominalPercent(nominal.high(element)));
        flags.add(scale, nominal.middle(element) * 100, "nominal " + value, Type.SMALL.in(Ink.TEXT).strong(),
            Optional.of(nominalLine()).filter(line -> nominal.isPoint(element)));
        for (PhasePoint phase : phases) {
            double percent = phase.fractions()[element] * 100;
            flags.add(scale, percent, phase.name() + " " + Digits.plain(Math.round(percent * 10) / 10.0), Type.SMALL,
                Optional.of(phaseLine()));
        }
        return flags.draw(top, drawing);
    }

    static Stroke nominalLine() {
        return Stroke.of(Ink.TEXT, 1.3);
    }

    static Stroke phaseLine() {
        return Stroke.of(Ink.MUTED, 1.1).dashed("3 3");
    }

    /** Marks, nominal and phases behind the spots. */
    void grid(double from, double to, Drawing drawing) {
        double low = scale.within(nominal.low(element) * 100);
        double high = scale.within(nominal.high(element) * 100);
        if (high > low) {
            drawing.rectangle(low, from, high - low, to - from, Ink.BAND);
        }
        for (Tick tick : scale.ticks()) {
            drawing.vertical(scale.at(tick.value()), from, to, Stroke.of(Ink.RULE, 0.7));
        }
        for (PhasePoint phase : phases) {
            double percent = phase.fractions()[element] * 100;
            if (scale.holds(percent)) {
                drawing.vertical(scale.at(percent), from, to, phaseLine());
            }
        }
        if (high == low) {
            drawing.vertical(low, from, to, nominalLine());
        }
    }

    /** The axis itself with its values and its name. */
    void line(double y, Drawing drawing) {
        drawing.horizontal(scale.from(), scale.to(), y, Stroke.of(Ink.TEXT, 1));
        for (Tick tick : scale.ticks()) {
            drawing.vertical(scale.at(tick.value()), y, y + 4, Stroke.of(Ink.TEXT, 1));
            drawing.text(scale.at(tick.value()), y + 17, tick.label(), Type.SMALL.in(Ink.TEXT).middle());
        }
        drawing.text((scale.from() + scale.to()) / 2, y + 34, nominal.elements().get(element) + ", at%",
            Type.BODY.middle());
    }
}
