package surfeit.segregation.nominal;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.answer.ReferenceUse;
import surfeit.segregation.answer.Scope;
import surfeit.segregation.sums.GroupData;
import surfeit.segregation.uncertainty.AdditiveFloor;
import surfeit.segregation.uncertainty.GroupRuns;

/**
 * One group tested against its nominal, before the adjustment over the whole answer.
 *
 * @param data           the group's sums
 * @param comparison     what it was compared with; holds the reference correction where it was used
 * @param units          the sums that were tested
 * @param particles      the sums for the measured particles themselves
 * @param tests          per element, for particles of the kind (or the one there is)
 * @param theseTests     per element, for the measured particles; empty below two particles or without repeats
 * @param reference      what the reference spots did, if there were any
 */
public record GroupAnalysis(GroupData data, Comparison comparison, GroupRuns units, GroupRuns particles, NominalTest[] tests,
                            Optional<NominalTest[]> theseTests, Optional<ReferenceUse> reference) {

    /** Tests a group, with its reference spots where they make the numbers better. */
    public static GroupAnalysis of(GroupData data, NominalFractions nominal, MethodSettings settings) {
        double[] weights = data.elements().stream().mapToDouble(Element::atomicWeight).toArray();
        Set<Element> dropped = new LinkedHashSet<>(data.notMeasured());
        Comparison plain = new Comparison(nominal.without(dropped), settings.accuracy().relativeUncertainty(),
            AdditiveFloor.ofMass(settings.floorMassFraction(), weights),
            Math.log(settings.judgement().marginOddsRatio()), Optional.empty());
        if (data.corrected().isPresent()) {
            Comparison referenced = plain.withReference(data.offer().correction());
            GroupRuns corrected = data.corrected().get();
            NominalTest[] tests = referenced.population(corrected);
            ReferenceUse use = ReferenceTrial.of(data, plain, referenced, corrected, tests);
            return use.used()
                ? complete(data, referenced, corrected, corrected, tests, Optional.of(use))
                : complete(data, plain, data.units(), data.particles(), plain.population(data.units()), Optional.of(use));
        }
        Optional<ReferenceUse> refused = data.offer().explanation().isEmpty() ? Optional.empty()
            : Optional.of(new ReferenceUse(false, data.offer().explanation(), data.offer().spotCount(),
                settings.judgement().referenceCorrelation(), List.of()));
        return complete(data, plain, data.units(), data.particles(), plain.population(data.units()), refused);
    }

    private static GroupAnalysis complete(GroupData data, Comparison comparison, GroupRuns units, GroupRuns particles,
                                          NominalTest[] tests, Optional<ReferenceUse> reference) {
        boolean several = particles.first().particleCount() > 1;
        Optional<NominalTest[]> these = several
            ? Optional.of(comparison.theseParticles(particles)).filter(own -> !own[0].parts().isEmpty())
            : Optional.empty();
        return new GroupAnalysis(data, comparison, units, particles, oneOfBinary(tests), these.map(GroupAnalysis::oneOfBinary),
            reference);
    }

    /** Two closed elements are one test: both carry the larger of their p values, which differ by rounding alone. */
    public static NominalTest[] oneOfBinary(NominalTest[] tests) {
        if (tests.length != 2) {
            return tests;
        }
        double both = Math.max(tests[0].p(), tests[1].p());
        return new NominalTest[] {tests[0].withP(both), tests[1].withP(both)};
    }

    public boolean referenceUsed() {
        return comparison.reference().isPresent();
    }

    public Scope scope() {
        if (units.first().particleCount() >= 2) {
            return Scope.PARTICLES;
        }
        return units.first().spotCount() > 1 ? Scope.THIS_PARTICLE : Scope.THIS_SPOT;
    }
}
