package surfeit.lab;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import surfeit.composition.CompositionException;
import surfeit.composition.Nominal;
import surfeit.composition.Phase;
import surfeit.segregation.Interpreter;
import surfeit.segregation.SampleComparison;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.blocks.GrowingSums;
import surfeit.segregation.blocks.SampleSums;
import surfeit.segregation.blocks.SpotSource;
import surfeit.segregation.contrast.ComparedSample;
import surfeit.segregation.plan.MeasurementPlan;
import surfeit.segregation.plan.PlanGoal;
import surfeit.segregation.plan.Planner;
import surfeit.segregation.screening.SpotScreening;
import surfeit.spot.Sample;

/** Brings a sample, its alloy and its spots together and asks the method what they show. Thread-safe. */
final class Answers {
    private final Alloys alloys;
    private final Interpreter interpreter;
    private final SampleComparison comparison = new SampleComparison();
    private final double detectionLimitMassFraction;

    Answers(Alloys alloys, Interpreter interpreter, double detectionLimitMassFraction) {
        this.alloys = alloys;
        this.interpreter = interpreter;
        this.detectionLimitMassFraction = detectionLimitMassFraction;
    }

    double detectionLimitMassFraction() {
        return detectionLimitMassFraction;
    }

    InputRevisions inputRevisions(ReadAccess access, StoredSample stored) {
        return new InputRevisions(stored.revision(), named(access, stored.sample())
            .map(alloy -> OptionalLong.of(alloy.revision())).orElse(OptionalLong.empty()));
    }

    Segregation stored(ReadAccess access, StoredSample stored, InputRevisions inputs, GroupBy by) {
        Optional<StoredAlloy> alloy = Optional.empty();
        if (inputs.alloy().isPresent()) {
            String id = stored.sample().alloy().orElseThrow();
            alloy = Optional.of(alloys.find(access, id, inputs.alloy().getAsLong()).orElseThrow(() ->
                new ProblemException(Problem.NOT_FOUND,
                    "Alloy " + id + " has no revision " + inputs.alloy().getAsLong() + ".")));
        }
        return segregation(stored.sample(), alloy, Optional.of(stored), access.spotSource(stored), by);
    }

    ComparedRecord compare(ReadAccess access, StoredSample a, StoredSample b, GroupBy by, boolean sameParticles) {
        try {
            return new ComparedRecord(a, b, comparison.compare(compared(access, a), compared(access, b), by, sameParticles,
                detectionLimitMassFraction));
        } catch (CompositionException e) {
            throw new ProblemException(Problem.of(e), e.getMessage());
        } catch (IllegalArgumentException e) {
            throw new ProblemException(Problem.VALUE_OUT_OF_RANGE, e.getMessage());
        }
    }

    MeasurementPlan plan(ReadAccess access, StoredSample stored, PlanGoal goal, GroupBy by, String group) {
        ComparedSample pilot = compared(access, stored);
        try {
            return new Planner().plan(goal, pilot.sample(), pilot.nominal(), pilot.source(), by, group, detectionLimitMassFraction);
        } catch (CompositionException e) {
            throw new ProblemException(Problem.of(e), e.getMessage());
        }
    }

    private ComparedSample compared(ReadAccess access, StoredSample stored) {
        Optional<StoredAlloy> alloy = named(access, stored.sample());
        Nominal nominal = nominal(stored.sample(), alloy);
        return new ComparedSample(stored.name(), stored.sample(), nominal, phases(nominal, alloy),
            access.spotSource(stored));
    }

    /**
     * The sums of a sample's spots, going on from those the source has kept, for every way of grouping that has no more
     * particles than given; empty where its spots cannot be compared.
     */
    Optional<Map<GroupBy, SampleSums>> sums(ReadAccess access, StoredSample stored, SpotSource source,
                                            Map<GroupBy, Integer> mostParticles) {
        return growingSums(access, stored, source, mostParticles).map(sums -> sums.finish(source));
    }

    /** The same, to be gone on with; empty where the sample's spots cannot be compared. */
    Optional<GrowingSums> growingSums(ReadAccess access, StoredSample stored, SpotSource soFar,
                                      Map<GroupBy, Integer> mostParticles) {
        try {
            return Optional.of(GrowingSums.of(summedBy(access, stored), soFar, mostParticles));
        } catch (ProblemException | CompositionException e) {
            return Optional.empty();
        }
    }

    /**
     * The same after the spot of one place has changed: where that is enough, only its block and later spots are read.
     *
     * @param mostParticles the ways of grouping of which sums are kept
     */
    Optional<Map<GroupBy, SampleSums>> sumsAfterChange(ReadAccess access, StoredSample stored,
                                                       Map<GroupBy, Integer> mostParticles, long place) {
        try {
            return Optional.of(GrowingSums.changed(summedBy(access, stored), access.spotSource(stored), mostParticles, place));
        } catch (ProblemException | CompositionException e) {
            return Optional.empty();
        }
    }

    /** What the spots of a sample are summed up by. @throws ProblemException alloy-unknown */
    GrowingSums.Inputs summedBy(ReadAccess access, StoredSample stored) {
        Optional<StoredAlloy> alloy = named(access, stored.sample());
        Nominal nominal = nominal(stored.sample(), alloy);
        return new GrowingSums.Inputs(stored.sample(), nominal, phases(nominal, alloy), detectionLimitMassFraction);
    }

    /** @param alloy the alloy the sample names, if it names one */
    Segregation unstored(Sample sample, Optional<StoredAlloy> alloy, SpotSource spots, GroupBy by) {
        return segregation(sample, alloy, Optional.empty(), spots, by);
    }

    private Segregation segregation(Sample sample, Optional<StoredAlloy> alloy, Optional<StoredSample> stored,
                                    SpotSource spots, GroupBy by) {
        Nominal nominal = nominal(sample, alloy);
        try {
            return new Segregation(sample, sample.nominal().isPresent() ? Optional.empty() : alloy, stored,
                interpreter.interpret(sample, nominal, phases(nominal, alloy), spots, by, detectionLimitMassFraction));
        } catch (CompositionException e) {
            throw new ProblemException(Problem.of(e), e.getMessage());
        }
    }

    private Optional<StoredAlloy> named(ReadAccess access, Sample sample) {
        return sample.alloy().map(id -> alloys.require(access, id));
    }

    private static Nominal nominal(Sample sample, Optional<StoredAlloy> alloy) {
        return sample.nominal().orElseGet(() -> alloy.orElseThrow().alloy().nominal());
    }

    /** What groups are read against: the phases of the alloy the sample names, else the handbook's of its nominal. */
    private List<Phase> phases(Nominal nominal, Optional<StoredAlloy> alloy) {
        return alloy.map(stored -> stored.alloy().phases()).orElseGet(() -> alloys.handbookPhases(nominal));
    }

    /** The composition a sample on record is compared with now: its own, or its alloy's. */
    Nominal nominal(ReadAccess access, StoredSample stored) {
        return nominal(stored.sample(), stored.sample().nominal().isPresent() ? Optional.empty()
            : named(access, stored.sample()));
    }

    /** The spots of a sample screened one by one. @throws ProblemException too-few-elements */
    SpotScreening screening(StoredSample stored, Nominal nominal, SpotSource spots) {
        try {
            return new SpotScreening(stored.sample(), nominal, spots, detectionLimitMassFraction);
        } catch (CompositionException e) {
            throw new ProblemException(Problem.of(e), e.getMessage());
        }
    }
}
