package surfeit.segregation.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import surfeit.element.Spelling;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.segregation.nominal.SampleReading;
import surfeit.segregation.uncertainty.GroupRuns;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.segregation.uncertainty.ReferenceScatter;
import surfeit.statistics.Moments;
import surfeit.statistics.NestedVariance;
import surfeit.statistics.RandomPart;

/**
 * One group of a pilot sample, as a source of scatter for a plan.
 *
 * <p>Components of variance of spots nested in particles ({@link NestedVariance}), taken on the fractions and turned to
 * log odds at the group's mean m by {@code 1 / (m (1 - m))}. Where values lie below their limit, the larger scatter of
 * both ways of filling them counts.
 */
record PilotGroup(GroupAnalysis analysis) {
    private static final int FEW_PARTICLES = 6;

    /** @throws PlanException where the pilot has no such group */
    static PilotGroup find(SampleReading pilot, String name) {
        return pilot.analyses().stream().filter(analysis -> Spelling.composed(analysis.data().name()).equals(Spelling.composed(name))).findFirst()
            .map(PilotGroup::new).orElseThrow(() -> new PlanException("Expected a group of the pilot, one of "
                + pilot.analyses().stream().map(analysis -> "\"" + analysis.data().name() + "\"").toList() + ", got \""
                + name + "\"."));
    }

    /** Tests in the pilot's answer: every element of every group, a binary group once. */
    static int tests(SampleReading pilot) {
        return pilot.analyses().stream().map(analysis -> analysis.data().elements().size())
            .mapToInt(elements -> elements == 2 ? 1 : elements).sum();
    }

    /** @throws PlanException where the pilot does not tell the scatter of this element */
    ParticleScatter scatter(int element) {
        GroupRuns runs = analysis.particles();
        String symbol = analysis.data().elements().get(element).symbol();
        if (runs.allBelow()[element]) {
            throw new PlanException("Every spot of the pilot has " + symbol + " below its limit; nothing tells its "
                + "scatter. Lower the limit first.");
        }
        if (runs.first().particleCount() < 2) {
            throw new PlanException("The pilot has one particle; nothing tells how much particles differ. Measure "
                + "three, or state the scatter.");
        }
        double mean = runs.mean()[element];
        if (!(mean > 0 && mean < 1)) {
            throw new PlanException("The pilot's mean of " + symbol + " is not above zero, so that no factor can be "
                + "planned for. Count longer.");
        }
        Optional<ParticleScatter> widest = Optional.empty();
        for (GroupSums sums : runs.runs()) {
            ParticleScatter own = scatter(sums, element, mean * (1 - mean));
            boolean wider = widest.isEmpty() || own.ofParticleMeans(1) > widest.get().ofParticleMeans(1);
            widest = wider ? Optional.of(own) : widest;
        }
        return widest.orElseThrow();
    }

    private static ParticleScatter scatter(GroupSums sums, int element, double q) {
        List<Moments> particles = sums.particles().stream().map(particle -> Moments.ofSums(particle.spots(),
            particle.centre()[element] / q, particle.squares()[element] / (q * q))).toList();
        NestedVariance nested = NestedVariance.of(particles);
        double step = sums.roundingStep()[element] / Math.sqrt(12) / q;
        OptionalInt from = OptionalInt.of(nested.groupCount());
        if (nested.degreesOfFreedomWithin() == 0) {
            double all = Math.sqrt(nested.meanSquareBetween());
            return new ParticleScatter(Math.max(all, step), OptionalDouble.empty(), from);
        }
        double within = Math.max(Math.sqrt(nested.meanSquareWithin()), step);
        return new ParticleScatter(Math.sqrt(nested.varianceBetween()), OptionalDouble.of(within), from);
    }

    /** What the pilot's reference spots scatter, if its numbers were corrected with them. */
    Optional<RandomPart> referenceScatter(int element) {
        GroupSums sums = analysis.particles().first();
        return analysis.comparison().reference()
            .flatMap(correction -> ReferenceScatter.of(correction, sums, sums.mean(), element));
    }

    List<Caveat> caveats(int element) {
        List<Caveat> caveats = new ArrayList<>();
        ParticleScatter scatter = scatter(element);
        int particles = scatter.estimatedFrom().getAsInt();
        if (particles < FEW_PARTICLES) {
            caveats.add(Caveat.note("scatter-from-few-particles", "The scatter is estimated from " + particles
                + " particles and may well be larger; the number of particles for that case is given too."));
        }
        if (scatter.within().isEmpty()) {
            caveats.add(Caveat.note("spots-not-repeated", "The pilot has one spot on each particle, so the scatter "
                + "between spots is not known apart; what more spots on each would bring cannot be told."));
        } else if (scatter.between() == 0) {
            caveats.add(Caveat.note("no-scatter-between", "The pilot's particles differ no more than their spots do; "
                + "the plan counts on that, and a few particles cannot show it."));
        }
        return caveats;
    }
}
