package surfeit.segregation;

import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.function.Consumer;
import surfeit.composition.Nominal;
import surfeit.composition.NominalFractions;
import surfeit.spot.Sample;
import surfeit.spot.Spot;
import surfeit.statistics.StepUpAdjustment;

/**
 * Screens the spots of a sample one by one against nominal. Thread-safe once made; what it keeps does not grow with the
 * spots but by the steps of the adjustment.
 *
 * <p>The standard uncertainty of a spot is the stated one, the one from its counts, or the root of the mean square within
 * particles of its group (N - k degrees of freedom); without any of these it gets no p. The p values over all spots and
 * elements are adjusted after Benjamini and Hochberg (J. R. Stat. Soc. B 57 (1995) 289, from memory); a binary spot is
 * one test. All flags share one calibration error, so they come and go together: a screening, not a verdict.
 */
public final class SpotScreening {
    private final Sample sample;
    private final double defaultLimit;
    private final Grouping grouping;
    private final Map<GroupData, GroupAnalysis> analyses = new IdentityHashMap<>();
    private final StepUpAdjustment adjustment;

    /**
     * Reads the spots: once for the groups, once more for the family of tests. An adjustment needs all p values at once:
     * 8 bytes for each tested spot (and element, beyond two), up to 20 while they are gathered; then only its steps stay.
     */
    public SpotScreening(Sample sample, Nominal nominal, SpotSource source, double detectionLimitMassFraction) {
        this.sample = sample;
        this.defaultLimit = detectionLimitMassFraction;
        MethodSettings settings = MethodSettings.of(sample.judgement(), sample.accuracyClass(), detectionLimitMassFraction);
        NominalFractions fractions = Interpreter.closedNominal(nominal, sample);
        References references = new References(source.references(), sample, settings.floorMassFraction(), detectionLimitMassFraction);
        grouping = new Grouping(sample, fractions, GroupBy.FEATURE, detectionLimitMassFraction, references);
        for (GroupData group : grouping.read(source)) {
            if (group.elements().size() >= 2 && !group.units().runs().isEmpty()) {
                analyses.put(group, GroupAnalysis.of(group, fractions, settings));
            }
        }
        adjustment = StepUpAdjustment.of(family(source));
    }

    private double[] family(SpotSource source) {
        ScreenedSpots spots = spots();
        PValues values = new PValues();
        source.forEachSpecimen(spot -> {
            for (double p : spots.family(spot)) {
                values.add(p);
            }
        });
        return values.toArray();
    }

    /** A reader of its spots, in any order and as many of them as wanted. */
    public ScreenedSpots spots() {
        return new ScreenedSpots(this);
    }

    /** Hands a reading of every spot of the specimen to the consumer, in the order they were recorded. */
    public void forEach(SpotSource source, Consumer<SpotReading> consumer) {
        ScreenedSpots spots = spots();
        source.forEachSpecimen(spot -> consumer.accept(spots.read(spot)));
    }

    /** How many numbers it keeps besides those of its groups. */
    public int size() {
        return 2 * adjustment.size();
    }

    Sample sample() {
        return sample;
    }

    double defaultLimit() {
        return defaultLimit;
    }

    StepUpAdjustment adjustment() {
        return adjustment;
    }

    GroupData groupOf(Spot spot) {
        return grouping.groupOf(spot);
    }

    /** True where spots of the group can be tested: at least two elements were measured. */
    boolean isTested(GroupData group) {
        return analyses.containsKey(group);
    }

    GroupAnalysis analysis(GroupData group) {
        return analyses.get(group);
    }

    /** A growing list of p values without boxing. */
    private static final class PValues {
        private double[] values = new double[64];
        private int size;

        void add(double value) {
            values = size == values.length ? Arrays.copyOf(values, values.length + values.length / 2) : values;
            values[size++] = value;
        }

        double[] toArray() {
            return Arrays.copyOf(values, size);
        }
    }
}
