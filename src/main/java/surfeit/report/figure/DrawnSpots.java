package surfeit.report.figure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.segregation.answer.Verdict;

/**
 * The spots that a figure shows, thinned evenly so that there are not too many signs, over the elements that any of
 * them lists.
 *
 * @param nominal           the nominal over those elements
 * @param features          the features, in order of first appearance
 * @param spotCount         spots of the sample
 * @param otherFeatureSpots spots of features beyond those shown
 */
record DrawnSpots(NominalFractions nominal, List<Feature> features, long spotCount, long otherFeatureSpots) {
    /** Signs in one figure; beyond that they cover each other and the file grows. Judgement. */
    static final int MOST_SIGNS = 2000;

    /** The spots of one feature; {@code count} are all of them, {@code moreParticles} where some have no lane. */
    record Feature(String name, long count, boolean moreParticles, List<Lane> lanes) {
    }

    /** Spots of one particle that show the feature. */
    record Lane(String particle, List<Point> points) {
    }

    /**
     * A spot; arrays go by the elements of the nominal.
     *
     * @param label     the lab's name of it
     * @param fractions closed fractions; for one below its limit the limit; not a number where its group lacks it
     */
    record Point(String label, double[] fractions, double[] uncertainties, boolean[] below, Verdict[] verdicts) {
        boolean has(int element) {
            return !Double.isNaN(fractions[element]);
        }

        Mark mark(int element) {
            return below[element] ? Mark.BELOW : Mark.of(verdicts[element]);
        }

        private Point over(int[] kept) {
            boolean[] keptBelow = new boolean[kept.length];
            for (int i = 0; i < kept.length; i++) {
                keptBelow[i] = below[kept[i]];
            }
            return new Point(label, Arrays.stream(kept).mapToDouble(i -> fractions[i]).toArray(),
                Arrays.stream(kept).mapToDouble(i -> uncertainties[i]).toArray(), keptBelow,
                Arrays.stream(kept).mapToObj(i -> verdicts[i]).toArray(Verdict[]::new));
        }
    }

    static DrawnSpots of(NominalFractions nominal, List<Feature> features, long spotCount, long otherFeatureSpots) {
        List<Point> all = points(features).toList();
        int[] measured = IntStream.range(0, nominal.size()).filter(i -> all.stream().anyMatch(point -> point.has(i)))
            .toArray();
        int[] kept = measured.length < 2 ? IntStream.range(0, nominal.size()).toArray() : measured;
        Set<Element> dropped = new HashSet<>(nominal.elements());
        Arrays.stream(kept).forEach(i -> dropped.remove(nominal.elements().get(i)));
        long signs = (long) all.size() * (kept.length > 3 ? kept.length : 1);
        int every = (int) Math.max(1, (signs + MOST_SIGNS - 1) / MOST_SIGNS);
        List<Feature> shown = features.stream()
            .map(feature -> new Feature(feature.name, feature.count, feature.moreParticles,
            feature.lanes.stream().map(lane -> new Lane(lane.particle,
                thinned(lane.points, every).stream().map(point -> point.over(kept)).toList())).toList())).toList();
        return new DrawnSpots(nominal.without(dropped), shown, spotCount, otherFeatureSpots);
    }

    /** One in so many, the first always. */
    static List<Point> thinned(List<Point> points, int every) {
        List<Point> thinned = new ArrayList<>();
        for (int i = 0; i < points.size(); i += every) {
            thinned.add(points.get(i));
        }
        return thinned;
    }

    Stream<Point> points() {
        return points(features);
    }

    static Stream<Point> points(List<Feature> features) {
        return features.stream().flatMap(feature -> feature.lanes.stream()).flatMap(lane -> lane.points.stream());
    }

    long pointCount() {
        return points().count();
    }

    boolean isComplete() {
        return pointCount() == spotCount;
    }
}
