package surfeit.segregation.screening;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import surfeit.composition.Nominal;
import surfeit.composition.NominalFractions;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.blocks.Grouping;
import surfeit.segregation.blocks.SpotSource;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.segregation.sums.ClosedNominal;
import surfeit.segregation.sums.GroupData;
import surfeit.segregation.sums.GroupKey;
import surfeit.segregation.sums.References;
import surfeit.segregation.sums.SpotInHand;
import surfeit.spot.Sample;
import surfeit.spot.Spot;
import surfeit.statistics.PValueFamily;
import surfeit.statistics.StepUpAdjustment;

/**
 * Screens the spots of a sample one by one against nominal. Thread-safe once made. Memory grows with the groups
 * and particles, not with the spots: numbers about each of them lie {@linkplain SpotSource#aside() aside} where they are
 * many.
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
    private final List<GroupAnalysis> analyses = new ArrayList<>();
    private final StepUpAdjustment adjustment;

    /**
     * Reads the spots: once for the groups, once more for the family of tests. An adjustment needs the p values of all
     * tested spots (and elements, beyond two) in their order; then only its steps stay.
     */
    public SpotScreening(Sample sample, Nominal nominal, SpotSource source, double detectionLimitMassFraction) {
        this.sample = sample;
        this.defaultLimit = detectionLimitMassFraction;
        MethodSettings settings = MethodSettings.of(sample.judgement(), sample.accuracyClass(), detectionLimitMassFraction);
        NominalFractions fractions = ClosedNominal.of(nominal, sample);
        References references = new References(source.references(), sample, settings.floorMassFraction(), detectionLimitMassFraction);
        grouping = new Grouping(new SpotInHand(sample, fractions, detectionLimitMassFraction, List.of()), GroupBy.FEATURE,
            references, source);
        for (GroupData group : grouping.read(source)) {
            if (group.elements().size() >= 2 && !group.units().runs().isEmpty()) {
                analyses.add(GroupAnalysis.of(group, fractions, settings));
            }
        }
        adjustment = adjustment(source);
    }

    private StepUpAdjustment adjustment(SpotSource source) {
        ScreenedSpots spots = spots();
        try (PValueFamily family = new PValueFamily(source::aside)) {
            DoubleConsumer member = family::add;
            source.forEachSpecimen(spot -> spots.pValues(spot, member));
            return StepUpAdjustment.of(family);
        }
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

    /** How many numbers it keeps besides those of its groups, those put aside among them. */
    public long size() {
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

    GroupData groupOf(GroupKey.Sought sought) {
        return grouping.groupOf(sought);
    }

    /** The groups whose spots can be tested: at least two elements were measured. */
    List<GroupAnalysis> analyses() {
        return analyses;
    }
}
