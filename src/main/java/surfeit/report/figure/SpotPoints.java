package surfeit.report.figure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import surfeit.composition.NominalFractions;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.screening.SpotReading;
import surfeit.segregation.screening.SpotReading.ElementReading;

/**
 * Collects the spots of a sample for a figure: by feature and particle, with their closed fractions.
 *
 * <p>Takes any number of readings in constant memory. Of one particle's spots of one feature at most
 * {@value #MOST_OF_A_LANE} are kept, every second, fourth, eighth ... of them in their order; of one feature's
 * particles the first {@value #MOST_LANES}, and the first {@value #MOST_FEATURES} features. All are
 * counted. The same readings give the same points. For one use, not thread-safe.
 */
public final class SpotPoints implements Consumer<SpotReading> {
    /** Kept of one particle and feature. Judgement: beyond that points cover each other. */
    static final int MOST_OF_A_LANE = 48;
    /** Particles kept of one feature. Judgement: what a printed page can tell apart. */
    static final int MOST_LANES = 40;
    /** Features kept. Judgement. */
    static final int MOST_FEATURES = 24;

    private final NominalFractions nominal;
    private final Map<String, Feature> features = new LinkedHashMap<>();
    private long spotCount;
    private long otherFeatureSpots;

    /** Spots of one feature; of one particle of it. */
    private static final class Feature {
        private final Map<String, Lane> lanes = new LinkedHashMap<>();
        private long count;
        private boolean moreParticles;
    }

    /** The spots of one particle that show one feature; every so many are kept. */
    private static final class Lane {
        private final List<DrawnSpots.Point> points = new ArrayList<>();
        private long count;
        private long every = 1;

        private void add(SpotReading reading, NominalFractions nominal) {
            if (count % every == 0 && points.size() == MOST_OF_A_LANE) {
                List<DrawnSpots.Point> thinned = DrawnSpots.thinned(points, 2);
                points.clear();
                points.addAll(thinned);
                every *= 2;
            }
            if (count % every == 0) {
                points.add(point(reading, nominal));
            }
            count++;
        }
    }

    /** An empty set for spots closed over the elements of this nominal. */
    public SpotPoints(NominalFractions nominal) {
        this.nominal = nominal;
    }

    /** The points of a list of readings. */
    public static SpotPoints of(NominalFractions nominal, List<SpotReading> readings) {
        SpotPoints points = new SpotPoints(nominal);
        readings.forEach(points);
        return points;
    }

    /** Adds a spot. */
    @Override
    public void accept(SpotReading reading) {
        spotCount++;
        if (!features.containsKey(reading.group()) && features.size() == MOST_FEATURES) {
            otherFeatureSpots++;
            return;
        }
        Feature feature = features.computeIfAbsent(reading.group(), name -> new Feature());
        feature.count++;
        String particle = reading.spot().particle().orElse("");
        if (!feature.lanes.containsKey(particle) && feature.lanes.size() == MOST_LANES) {
            feature.moreParticles = true;
            return;
        }
        feature.lanes.computeIfAbsent(particle, name -> new Lane()).add(reading, nominal);
    }

    /** What is drawn of them. */
    DrawnSpots drawn() {
        List<DrawnSpots.Feature> drawn = new ArrayList<>();
        features.forEach((name, feature) -> {
            List<DrawnSpots.Lane> lanes = new ArrayList<>();
            feature.lanes.forEach((particle, lane) -> lanes.add(new DrawnSpots.Lane(particle, lane.points)));
            drawn.add(new DrawnSpots.Feature(name, feature.count, feature.moreParticles, lanes));
        });
        return DrawnSpots.of(nominal, drawn, spotCount, otherFeatureSpots);
    }

    private static DrawnSpots.Point point(SpotReading reading, NominalFractions nominal) {
        int size = nominal.size();
        double[] fractions = new double[size];
        Arrays.fill(fractions, Double.NaN);
        double[] uncertainties = new double[size];
        boolean[] below = new boolean[size];
        Verdict[] verdicts = new Verdict[size];
        Arrays.fill(verdicts, Verdict.INCONCLUSIVE);
        for (ElementReading own : reading.elements()) {
            int i = nominal.elements().indexOf(own.element());
            if (i >= 0) {
                OptionalDouble limit = own.belowLimit() ? own.limit() : OptionalDouble.empty();
                fractions[i] = limit.orElse(own.atomicFraction());
                below[i] = own.belowLimit();
                uncertainties[i] = own.uncertainty().orElse(0);
                verdicts[i] = own.verdict();
            }
        }
        return new DrawnSpots.Point(reading.spot().label(), fractions, uncertainties, below, verdicts);
    }
}
