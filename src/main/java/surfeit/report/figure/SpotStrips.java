package surfeit.report.figure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import surfeit.report.Digits;
import surfeit.report.Listing;
import surfeit.report.figure.Drawing.Stroke;
import surfeit.report.figure.DrawnSpots.Feature;
import surfeit.report.figure.DrawnSpots.Lane;
import surfeit.report.figure.DrawnSpots.Point;

/**
 * Spots along the axis of one element, or of several side by side: a band for each feature, a lane in it for each
 * particle.
 */
final class SpotStrips {
    private static final double HEADER = 22;
    private static final double BAND_GAP = 6;
    private static final double AXIS_HEIGHT = 42;
    private static final double PART_GAP = 12;
    private static final double MOST_LANE = 16;
    /** Lanes this high have room for the particle's name. */
    private static final double NAMED_LANE = 13;
    /** Height of all lanes together, as far as that leaves some for each. Judgement. */
    private static final double LANES_HEIGHT = 640;
    /** In a named lane the spots stand in up to three rows, so that they cover each other less. */
    private static final double ROW = 3.2;
    private static final int MOST_ROWS = 3;
    private static final double COLUMN_GAP = 34;
    private static final int MOST_COLUMNS = 3;
    /** More signs than this show no uncertainty of their own. Judgement. */
    private static final int MOST_WITH_BARS = 150;
    /** More signs than this show nothing on pointing. Judgement: the file's size. */
    private static final int MOST_WITH_TITLES = 600;

    private final DrawnSpots spots;
    private final List<PhasePoint> phases;
    private final int[] elements;
    private final double lane;
    private final double left;
    private final long signs;
    private final List<Part> parts;

    /** Features along a row of axes, the first of them that of this one of the elements. */
    private record Part(int first, List<Feature> features) {
    }

    SpotStrips(DrawnSpots spots, int[] elements, List<PhasePoint> phases) {
        this.spots = spots;
        this.phases = phases;
        this.elements = elements;
        int rows = (elements.length + MOST_COLUMNS - 1) / MOST_COLUMNS;
        int lanes = spots.features().stream().mapToInt(feature -> feature.lanes().size()).sum();
        lane = Math.max(1, Math.min(MOST_LANE, LANES_HEIGHT / rows / Math.max(lanes, 1)));
        left = hasLaneNames() ? Sheet.LEFT + 100 : Sheet.LEFT + 14;
        signs = spots.pointCount() * elements.length;
        parts = IntStream.range(0, rows).mapToObj(row -> new Part(row * MOST_COLUMNS, spots.features())).toList();
    }

    private SpotStrips(SpotStrips whole, List<Part> parts) {
        spots = whole.spots;
        phases = whole.phases;
        elements = whole.elements;
        lane = whole.lane;
        left = whole.left;
        signs = whole.signs;
        this.parts = parts;
    }

    /** The same in strips that each fit a printed page, all on the same axes. */
    List<SpotStrips> pages() {
        List<SpotStrips> pages = new ArrayList<>();
        List<Part> page = new ArrayList<>();
        double height = 0;
        for (Part part : parts) {
            double around = flags(axes(part), 0, new Drawing()) + AXIS_HEIGHT + PART_GAP;
            List<Feature> features = new ArrayList<>();
            height += around;
            for (Feature feature : part.features) {
                if (height + height(feature) > Sheet.PAGE && !(page.isEmpty() && features.isEmpty())) {
                    add(part.first, features, page);
                    pages.add(new SpotStrips(this, List.copyOf(page)));
                    page.clear();
                    features.clear();
                    height = around;
                }
                features.add(feature);
                height += height(feature);
            }
            add(part.first, features, page);
        }
        pages.add(spots.features().isEmpty() ? this : new SpotStrips(this, List.copyOf(page)));
        return pages;
    }

    private static void add(int first, List<Feature> features, List<Part> page) {
        if (!features.isEmpty()) {
            page.add(new Part(first, List.copyOf(features)));
        }
    }

    /** The features shown, each once. */
    List<Feature> features() {
        return parts.stream().flatMap(part -> part.features.stream()).distinct().toList();
    }

    /** Whether the particles are named at the side. */
    boolean hasLaneNames() {
        return lane >= NAMED_LANE;
    }

    /** Draws everything from the given height on and tells where it ends. */
    double draw(double top, Drawing drawing) {
        double y = top;
        for (Part part : parts) {
            SpotAxis[] axes = axes(part);
            y = flags(axes, y, drawing);
            for (Feature feature : part.features) {
                y = band(feature, axes, y, drawing);
            }
            for (SpotAxis axis : axes) {
                axis.line(y, drawing);
            }
            y += AXIS_HEIGHT + PART_GAP;
        }
        return y - PART_GAP;
    }

    private SpotAxis[] axes(Part part) {
        int columns = Math.min(MOST_COLUMNS, elements.length);
        double width = (Sheet.RIGHT - 12 - left - (columns - 1) * COLUMN_GAP) / columns;
        SpotAxis[] axes = new SpotAxis[Math.min(columns, elements.length - part.first)];
        for (int i = 0; i < axes.length; i++) {
            double from = left + i * (width + COLUMN_GAP);
            axes[i] = SpotAxis.of(spots, phases, elements[part.first + i], hasBars(), from, from + width);
        }
        return axes;
    }

    private static double flags(SpotAxis[] axes, double top, Drawing drawing) {
        double y = top;
        for (SpotAxis axis : axes) {
            y = Math.max(y, axis.flags(top, drawing));
        }
        return y;
    }

    /** {@code n = 12 spots on 4 particles}. */
    static String counts(Feature feature) {
        return "n = " + Listing.count(feature.count(), "spot") + " on " + (feature.moreParticles() ? "more than " : "")
            + Listing.count(feature.lanes().size(), "particle");
    }

    private double band(Feature feature, SpotAxis[] axes, double top, Drawing drawing) {
        drawing.horizontal(Sheet.LEFT, Sheet.RIGHT, top + 1, Stroke.of(Ink.RULE, 0.7));
        String counts = counts(feature);
        double room = Sheet.RIGHT - Sheet.LEFT - TextWidth.of(counts, Type.SMALL) - 12;
        drawing.fitted(Sheet.LEFT, top + HEADER - 6, feature.name(), Type.BODY.strong(), room);
        drawing.text(Sheet.RIGHT, top + HEADER - 6, counts, Type.SMALL.end());
        double y = top + HEADER;
        double bottom = top + height(feature) - BAND_GAP;
        for (SpotAxis axis : axes) {
            axis.grid(y, bottom, drawing);
        }
        for (Lane own : feature.lanes()) {
            if (hasLaneNames()) {
                String name = own.particle().isEmpty() ? "not named" : own.particle();
                Type type = Type.SMALL.in(Ink.TEXT).end();
                drawing.fitted(left - 10, y + lane / 2 + 4, name, type, left - 10 - Sheet.LEFT);
            }
            for (SpotAxis axis : axes) {
                lane(own, axis, y + lane / 2, drawing);
            }
            y += lane;
        }
        return bottom + BAND_GAP;
    }

    private double height(Feature feature) {
        return HEADER + Math.max(feature.lanes().size() * lane, MOST_LANE) + BAND_GAP;
    }

    private void lane(Lane own, SpotAxis axis, double middle, Drawing drawing) {
        for (int i = 0; i < own.points().size(); i++) {
            Point point = own.points().get(i);
            if (point.has(axis.element())) {
                int rows = Math.min(MOST_ROWS, own.points().size());
                double away = hasLaneNames() ? (i % rows - (rows - 1) / 2.0) * ROW : 0;
                point(point, own.particle(), axis, middle + away, drawing);
            }
        }
    }

    private void point(Point point, String particle, SpotAxis axis, double y, Drawing drawing) {
        int element = axis.element();
        double percent = point.fractions()[element] * 100;
        double u = point.uncertainties()[element] * 100;
        Mark mark = point.mark(element);
        if (signs <= MOST_WITH_TITLES) {
            drawing.open(point.label() + (particle.isEmpty() ? "" : ", " + particle) + ": "
                + spots.nominal().elements().get(element) + (point.below()[element] ? " below " : " ")
                + Digits.rounded(percent, u) + " at%");
        }
        double x = axis.scale().within(percent);
        if (point.below()[element]) {
            drawing.horizontal(axis.scale().within(0), x, y, Stroke.of(Ink.MUTED, 1));
        } else if (u > 0 && hasBars()) {
            drawing.horizontal(axis.scale().within(percent - 2 * u), axis.scale().within(percent + 2 * u), y,
                Stroke.of(mark.ink(), 0.9));
        }
        mark.draw(x, y, lane >= 8 ? 4 : 2.6, drawing);
        if (signs <= MOST_WITH_TITLES) {
            drawing.close();
        }
    }

    /** Whether the uncertainties of single spots are drawn. */
    boolean hasBars() {
        return signs <= MOST_WITH_BARS && spots.points().anyMatch(point -> point.uncertainties()[elements[0]] > 0);
    }

    /** True where no spot has an uncertainty, from repeats or stated: then every sign is the same, wherever it lies. */
    boolean isWithoutScatter() {
        return spots.points().findAny().isPresent()
            && spots.points().allMatch(point -> Arrays.stream(point.uncertainties()).allMatch(u -> !(u > 0)));
    }

    /** The signs used, each once, in their own order. */
    List<Mark> marks() {
        return DrawnSpots.points(features())
            .flatMap(point -> IntStream.of(elements).filter(point::has).mapToObj(point::mark)).distinct().sorted().toList();
    }
}
