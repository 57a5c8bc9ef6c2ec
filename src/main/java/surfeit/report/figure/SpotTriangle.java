package surfeit.report.figure;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.report.Digits;
import surfeit.report.Listing;
import surfeit.report.figure.Drawing.Stroke;
import surfeit.report.figure.DrawnSpots.Feature;
import surfeit.report.figure.DrawnSpots.Lane;
import surfeit.report.figure.DrawnSpots.Point;

/** Spots of three elements in a triangle, or the part of it they lie in; each particle's spots joined to their mean. */
final class SpotTriangle {
    private static final double LEFT = 76;
    private static final double PANEL = 562;
    private static final double LINE = 19;
    private static final double LOCATOR = 84;
    private static final double NAME_WIDTH = 90;
    /** More spots than this are drawn without names and without words on pointing. Judgement. */
    private static final int MOST_WITH_NAMES = 300;

    private final DrawnSpots spots;
    private final NominalFractions nominal;
    private final List<PhasePoint> phases;
    private final TriangleFrame frame;
    private final FreeNames names = new FreeNames();
    /** Phases in the picture whose name found no room there. */
    private final List<String> nameless = new ArrayList<>();

    SpotTriangle(DrawnSpots spots, List<PhasePoint> phases) {
        this.spots = spots;
        this.nominal = spots.nominal();
        this.phases = phases;
        List<double[]> shown = new ArrayList<>();
        shown.add(nominal.middles());
        spots.points().filter(SpotTriangle::isWhole).forEach(point -> shown.add(point.fractions()));
        this.frame = TriangleFrame.around(shown);
    }

    /** Draws triangle and key from the given height on, adds what must be said, and tells where it ends. */
    double draw(double top, Drawing drawing, List<String> notes) {
        TrianglePicture picture = new TrianglePicture(frame, LEFT, top + 26);
        picture.draw(nominal.elements(), drawing);
        List<PhasePoint> inside = phases.stream().filter(phase -> frame.holds(phase.fractions())).toList();
        inside.forEach(phase -> phaseSign(picture.x(phase.fractions()), picture.y(phase.fractions()), drawing));
        for (int i = 0; i < spots.features().size(); i++) {
            for (Lane lane : spots.features().get(i).lanes()) {
                lane(lane, spots.features().get(i).name(), new Series(i), picture, drawing);
            }
        }
        nominalSign(picture.x(nominal.middles()), picture.y(nominal.middles()), drawing);
        names.take(picture.x(nominal.middles()), picture.y(nominal.middles()), 14);
        picture.occupy(names);
        namePhases(inside, picture, drawing);
        if (spots.pointCount() <= MOST_WITH_NAMES) {
            spots.features().forEach(feature -> nameParticles(feature, picture, drawing));
        }
        addWords(notes);
        return Math.max(picture.bottom() + 48, key(top + 14, drawing));
    }

    private void addWords(List<String> notes) {
        notes.add("Thin lines join the spots of one particle and feature to their mean.");
        List<String> outside = phases.stream().filter(phase -> !frame.holds(phase.fractions())).map(PhasePoint::name)
            .distinct().toList();
        if (!outside.isEmpty()) {
            notes.add("Outside the part drawn: " + Listing.and(outside) + "; the small triangle shows where.");
        }
        if (!nominal.isPoint(0) || !nominal.isPoint(1) || !nominal.isPoint(2)) {
            notes.add("The nominal is drawn at the middle of its ranges.");
        }
        long partial = spots.points().filter(point -> !isWhole(point)).count();
        if (partial > 0) {
            notes.add(Listing.count(partial, "spot") + " not drawn: one of the three elements is not measured there.");
        }
    }

    private static boolean isWhole(Point point) {
        return point.has(0) && point.has(1) && point.has(2);
    }

    private static void phaseSign(double x, double y, Drawing drawing) {
        drawing.circle(x, y, 6, Ink.PAPER, Ink.MUTED);
        drawing.circle(x, y, 2.4, Ink.PAPER, Ink.MUTED);
    }

    /** Four strokes around the place, which stays free. */
    private static void nominalSign(double x, double y, Drawing drawing) {
        for (Stroke stroke : List.of(Stroke.of(Ink.PAPER, 3.2), Stroke.of(Ink.TEXT, 2))) {
            for (int side : new int[] {-1, 1}) {
                drawing.horizontal(x + side * 6, x + side * 13, y, stroke);
                drawing.vertical(x, y + side * 6, y + side * 13, stroke);
            }
        }
    }

    private void lane(Lane lane, String feature, Series series, TrianglePicture picture, Drawing drawing) {
        List<Point> whole = lane.points().stream().filter(SpotTriangle::isWhole).toList();
        mean(whole).ifPresent(mean -> whole.forEach(spot -> drawing.line(picture.x(mean), picture.y(mean),
            picture.x(spot.fractions()), picture.y(spot.fractions()), Stroke.of(Ink.MUTED, 0.6))));
        boolean titled = spots.pointCount() <= MOST_WITH_NAMES;
        for (Point spot : whole) {
            double x = picture.x(spot.fractions());
            double y = picture.y(spot.fractions());
            names.take(x, y, 4);
            if (titled) {
                String particle = lane.particle().isEmpty() ? "" : ", " + lane.particle();
                drawing.open(spot.label() + particle + ", " + feature + ": " + inWords(spot));
            }
            series.draw(x, y, drawing);
            if (titled) {
                drawing.close();
            }
        }
    }

    private String inWords(Point spot) {
        List<String> parts = new ArrayList<>();
        for (int i = 0; i < nominal.size(); i++) {
            parts.add(nominal.elements().get(i) + (spot.below()[i] ? " below " : " ")
                + Digits.rounded(spot.fractions()[i] * 100, spot.uncertainties()[i] * 100));
        }
        return String.join(", ", parts) + " at%";
    }

    private static Optional<double[]> mean(List<Point> whole) {
        double[] mean = new double[3];
        for (Point spot : whole) {
            for (int i = 0; i < mean.length; i++) {
                mean[i] += spot.fractions()[i] / whole.size();
            }
        }
        return whole.isEmpty() ? Optional.empty() : Optional.of(mean);
    }

    /** One name for phases of the same name, which lie side by side. */
    private void namePhases(List<PhasePoint> inside, TrianglePicture picture, Drawing drawing) {
        inside.forEach(phase -> names.take(picture.x(phase.fractions()), picture.y(phase.fractions()), 6));
        Set<String> named = new HashSet<>();
        for (PhasePoint phase : inside) {
            if (named.add(phase.name())) {
                names.place(picture.x(phase.fractions()), picture.y(phase.fractions()), phase.name(), 10, List.of())
                    .ifPresentOrElse(name -> names.draw(name, drawing), () -> nameless.add(phase.name()));
            }
        }
    }

    /** The particles of a feature by name beside their means: all of them, or none where the names find no room. */
    private void nameParticles(Feature feature, TrianglePicture picture, Drawing drawing) {
        List<FreeNames.Name> placed = new ArrayList<>();
        for (Lane lane : feature.lanes()) {
            Optional<double[]> mean = mean(lane.points().stream().filter(SpotTriangle::isWhole).toList());
            if (mean.isEmpty()) {
                continue;
            }
            String text = TextWidth.fitted(lane.particle(), Type.SMALL, NAME_WIDTH);
            Optional<FreeNames.Name> name = names.place(picture.x(mean.get()), picture.y(mean.get()), text, 8, placed);
            if (name.isEmpty()) {
                return;
            }
            placed.add(name.get());
        }
        placed.forEach(name -> names.draw(name, drawing));
    }

    /** Features, nominal and phases beside the triangle; tells where it ends. */
    private double key(double top, Drawing drawing) {
        double y = top;
        double textAt = PANEL + 28;
        for (int i = 0; i < spots.features().size(); i++) {
            Feature feature = spots.features().get(i);
            new Series(i).draw(PANEL + 10, y, drawing);
            drawing.fitted(textAt, y + 4.5, feature.name(), Type.BODY.strong(), Sheet.RIGHT - textAt);
            y += LINE - 3;
            drawing.fitted(textAt, y + 4, SpotStrips.counts(feature), Type.SMALL, Sheet.RIGHT - textAt);
            y += LINE + 3;
        }
        y += 6;
        nominalSign(PANEL + 10, y, drawing);
        drawing.text(textAt, y + 4.5, "nominal", Type.BODY);
        y += LINE + 10;
        if (!phases.isEmpty()) {
            phaseSign(PANEL + 10, y, drawing);
            drawing.fitted(textAt, y + 4.5, nameless.isEmpty() ? "phase" : "phase " + Listing.and(nameless), Type.BODY,
                Sheet.RIGHT - textAt);
            y += LINE + 6;
        }
        return frame.isWhole() ? y : locator(y + 12, drawing);
    }

    /** A small whole triangle that shows where the drawn part lies. */
    private double locator(double top, Drawing drawing) {
        List<Element> elements = nominal.elements();
        double left = PANEL + 24;
        double height = LOCATOR * Math.sqrt(3) / 2;
        double side = LOCATOR * frame.side();
        double x = left + LOCATOR * (frame.least()[1] + frame.least()[2] / 2);
        double y = top + 14 + height * (1 - frame.least()[2]);
        drawing.polygon(Ink.MUTED, Ink.MUTED, x, y, x + side, y, x + side / 2, y - side * Math.sqrt(3) / 2);
        TrianglePicture.outline(left, top + 14, LOCATOR, Ink.TEXT, drawing);
        for (PhasePoint phase : phases) {
            double[] shares = phase.fractions();
            drawing.circle(left + LOCATOR * (shares[1] + shares[2] / 2), top + 14 + height * (1 - shares[2]), 3,
                Ink.PAPER, Ink.TEXT);
        }
        drawing.text(left - 6, top + 14 + height, elements.get(0).symbol(), Type.SMALL.end());
        drawing.text(left + LOCATOR + 6, top + 14 + height, elements.get(1).symbol(), Type.SMALL);
        drawing.text(left + LOCATOR / 2, top + 9, elements.get(2).symbol(), Type.SMALL.middle());
        drawing.text(left - 6, top + height + 34, "the part drawn", Type.SMALL);
        return top + height + 42;
    }
}
