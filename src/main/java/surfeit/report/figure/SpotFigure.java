package surfeit.report.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import surfeit.composition.NominalFractions;
import surfeit.composition.Phase;
import surfeit.report.Listing;
import surfeit.report.MeasuredWords;
import surfeit.segregation.answer.Verdict;

/**
 * Every spot as a point, by feature and particle, with the nominal and the phases the alloy may be made of.
 *
 * <p>Two elements: one axis, that of the minor element of nominal. Three: a triangle. More: an axis for each of up to
 * {@value #MOST_ELEMENTS} elements. At most {@value DrawnSpots#MOST_SIGNS} signs are drawn, evenly thinned; the figure
 * says so.
 */
public final class SpotFigure {
    /** Axes in one figure. Judgement. */
    static final int MOST_ELEMENTS = 9;
    private static final int TERNARY = 3;
    private static final String TITLE = ": every spot, by feature and particle";

    private SpotFigure() {
    }

    /**
     * Draws the spots of a sample.
     *
     * @param points  its spots, each screened against the same nominal
     * @param phases  phases the alloy may be made of; none known is an empty list
     * @param subject what was measured, {@code Sample A7}
     */
    public static Figure of(SpotPoints points, List<Phase> phases, String subject) {
        DrawnSpots spots = points.drawn();
        List<PhasePoint> marked = PhasePoint.of(phases, spots.nominal());
        return spots.nominal().size() == TERNARY ? triangle(spots, marked, subject + TITLE)
            : strips(spots, marked, subject + TITLE, new SpotStrips(spots, elements(spots.nominal()), marked));
    }

    /** The same in as many figures as it takes printed pages. */
    public static List<Figure> pages(SpotPoints points, List<Phase> phases, String subject) {
        DrawnSpots spots = points.drawn();
        if (spots.nominal().size() == TERNARY) {
            return List.of(of(points, phases, subject));
        }
        List<PhasePoint> marked = PhasePoint.of(phases, spots.nominal());
        List<SpotStrips> pages = new SpotStrips(spots, elements(spots.nominal()), marked).pages();
        return IntStream.range(0, pages.size()).mapToObj(page -> strips(spots, marked,
            Sheet.pageTitle(subject + TITLE, page, pages.size()), pages.get(page))).toList();
    }

    private static Figure triangle(DrawnSpots spots, List<PhasePoint> phases, String title) {
        Sheet sheet = new Sheet(title, counts(spots));
        List<String> notes = new ArrayList<>();
        double bottom = new SpotTriangle(spots, phases).draw(sheet.top(), sheet.drawing(), notes);
        return finish(sheet, bottom, new Legend(), notes, spots, spots.features(), phases);
    }

    private static Figure strips(DrawnSpots spots, List<PhasePoint> phases, String title, SpotStrips strips) {
        Sheet sheet = new Sheet(title, counts(spots));
        double bottom = strips.draw(sheet.top(), sheet.drawing());
        Legend legend = new Legend();
        legend(strips, spots.nominal(), !phases.isEmpty(), legend);
        List<String> notes = new ArrayList<>();
        notes.add("Each sign screens that spot alone. All spots share one calibration error, so the signs come and "
            + "go together: no verdict on the group."
            + (strips.hasLaneNames() ? "" : " Each row of signs is one particle.")
            + (strips.hasBars() ? " Lines: two standard uncertainties of one spot to each side." : "")
            + (strips.isWithoutScatter() ? " Nothing tells the scatter of these spots, so none is told from nominal by itself."
                : ""));
        return finish(sheet, bottom, legend, notes, spots, strips.features(), phases);
    }

    private static Figure finish(Sheet sheet, double bottom, Legend legend, List<String> notes, DrawnSpots spots,
                                 List<DrawnSpots.Feature> features, List<PhasePoint> phases) {
        if (!phases.isEmpty()) {
            notes.add(PhasePoint.note(phases));
        }
        notes.addAll(leftOut(spots));
        return sheet.finish(bottom, legend, notes, counts(spots) + " " + inWords(spots.nominal(), features, phases));
    }

    private static String counts(DrawnSpots spots) {
        return Listing.count(spots.spotCount(), "spot") + ", each normalised to 100 at% over "
            + Listing.and(spots.nominal().elements().stream().map(Object::toString).toList()) + ".";
    }

    /** The axes to draw: one where two elements say the same, else one for each element. */
    private static int[] elements(NominalFractions nominal) {
        if (nominal.size() == 2) {
            return new int[] {nominal.middle(1) <= nominal.middle(0) ? 1 : 0};
        }
        return IntStream.range(0, Math.min(nominal.size(), MOST_ELEMENTS)).toArray();
    }

    private static void legend(SpotStrips strips, NominalFractions nominal, boolean phases, Legend legend) {
        for (Mark mark : strips.marks()) {
            legend.add(mark, switch (mark) {
                case MORE -> Verdict.ENRICHED.word();
                case LESS -> Verdict.DEPLETED.word();
                case SAME -> Verdict.CONSISTENT.word();
                case OPEN -> Verdict.INCONCLUSIVE.word();
                case BELOW -> "below its limit, drawn at the limit";
            });
        }
        boolean ranges = IntStream.range(0, nominal.size()).anyMatch(i -> !nominal.isPoint(i));
        legend.add("nominal", (x, y, drawing) -> {
            if (ranges) {
                drawing.rectangle(x, y - 7, 22, 14, Ink.BAND);
            } else {
                drawing.vertical(x + 11, y - 7, y + 7, SpotAxis.nominalLine());
            }
        });
        if (phases) {
            legend.add("phase", (x, y, drawing) -> drawing.vertical(x + 11, y - 7, y + 7, SpotAxis.phaseLine()));
        }
    }

    private static List<String> leftOut(DrawnSpots spots) {
        List<String> notes = new ArrayList<>();
        if (!spots.isComplete()) {
            boolean lanes = spots.features().stream().anyMatch(DrawnSpots.Feature::moreParticles);
            notes.add(spots.pointCount() + " of " + spots.spotCount() + " spots are drawn, thinned evenly"
                + (lanes ? "; of each feature the first " + SpotPoints.MOST_LANES + " particles" : "")
                + (spots.otherFeatureSpots() > 0 ? "; the first " + SpotPoints.MOST_FEATURES + " features" : "") + ".");
        }
        if (spots.nominal().size() > MOST_ELEMENTS) {
            notes.add("Drawn are the first " + MOST_ELEMENTS + " of " + spots.nominal().size() + " elements.");
        }
        return notes;
    }

    private static String inWords(NominalFractions nominal, List<DrawnSpots.Feature> features, List<PhasePoint> phases) {
        StringBuilder words = new StringBuilder("Nominal in at%: ").append(MeasuredWords.nominal(nominal)).append('.');
        for (DrawnSpots.Feature feature : features) {
            List<String> ranges = new ArrayList<>();
            for (int i = 0; i < nominal.size(); i++) {
                ranges.add(nominal.elements().get(i) + " " + SpotRange.of(feature, i));
            }
            words.append(' ').append(feature.name()).append(" (").append(SpotStrips.counts(feature)).append("): ")
                .append(String.join(", ", ranges)).append('.');
        }
        return words + (phases.isEmpty() ? "" : " " + PhasePoint.note(phases));
    }
}
