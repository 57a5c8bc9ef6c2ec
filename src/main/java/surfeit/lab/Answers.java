package surfeit.lab;

import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;
import surfeit.composition.CompositionException;
import surfeit.composition.Nominal;
import surfeit.segregation.ComparedSample;
import surfeit.segregation.GroupBy;
import surfeit.segregation.Interpretation;
import surfeit.segregation.Interpreter;
import surfeit.segregation.SpotScreening;
import surfeit.segregation.MeasurementPlan;
import surfeit.segregation.PlanGoal;
import surfeit.segregation.Planner;
import surfeit.segregation.SampleComparison;
import surfeit.segregation.SpotSource;
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
        return new InputRevisions(stored.revision(), stored.sample().nominal().isPresent() ? OptionalLong.empty()
            : OptionalLong.of(alloys.require(access, stored.sample().alloy().orElseThrow()).revision()));
    }

    Segregation stored(ReadAccess access, StoredSample stored, InputRevisions inputs, GroupBy by) {
        Optional<StoredAlloy> alloy = Optional.empty();
        if (inputs.alloy().isPresent()) {
            String id = stored.sample().alloy().orElseThrow();
            alloy = Optional.of(alloys.find(access, id, inputs.alloy().getAsLong()).orElseThrow(() ->
                new ProblemException(Problem.NOT_FOUND,
                    "Alloy " + id + " has no revision " + inputs.alloy().getAsLong() + ".")));
        }
        return new Segregation(stored.sample(), alloy, Optional.of(stored),
            interpretation(stored.sample(), alloy, access.spotSource(stored), by));
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
        Nominal nominal = stored.sample().nominal()
            .orElseGet(() -> alloys.require(access, stored.sample().alloy().orElseThrow()).alloy().nominal());
        return new ComparedSample(stored.name(), stored.sample(), nominal, access.spotSource(stored));
    }

    Segregation unstored(Sample sample, Optional<StoredAlloy> alloy, SpotSource spots, GroupBy by) {
        return new Segregation(sample, alloy, Optional.empty(), interpretation(sample, alloy, spots, by));
    }

    private Interpretation interpretation(Sample sample, Optional<StoredAlloy> alloy, SpotSource spots, GroupBy by) {
        Nominal nominal = sample.nominal().orElseGet(() -> alloy.orElseThrow().alloy().nominal());
        try {
            return interpreter.interpret(sample, nominal, spots, by, detectionLimitMassFraction);
        } catch (CompositionException e) {
            throw new ProblemException(Problem.of(e), e.getMessage());
        }
    }

    /** The composition a sample on record is compared with now: its own, or its alloy's. */
    Nominal nominal(ReadAccess access, StoredSample stored) {
        return stored.sample().nominal().orElseGet(() ->
            alloys.require(access, stored.sample().alloy().orElseThrow()).alloy().nominal());
    }

    /** Screens the spots of a sample one by one. */
    void screen(StoredSample stored, Nominal nominal, RecordedSpots spots, Consumer<StoredReading> consumer) {
        try {
            new SpotScreening(stored.sample(), nominal, spots, detectionLimitMassFraction)
                .forEach(reading -> consumer.accept(new StoredReading(spots.current(), reading)));
        } catch (CompositionException e) {
            throw new ProblemException(Problem.of(e), e.getMessage());
        }
    }
}
