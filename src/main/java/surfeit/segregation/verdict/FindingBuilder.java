package surfeit.segregation.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.composition.Basis;
import surfeit.composition.Closure;
import surfeit.element.Element;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.Outcome;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.nominal.BelowLimit;
import surfeit.segregation.nominal.Comparison;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.segregation.nominal.NominalTest;
import surfeit.segregation.sums.GroupData;
import surfeit.segregation.uncertainty.RandomLadder;
import surfeit.segregation.uncertainty.SharedError;

/** Turns the tests of one group, adjusted over the whole answer, into findings per element. */
record FindingBuilder(VerdictRule rule, NextSteps nextSteps) {

    List<ElementFinding> build(GroupAnalysis analysis, double[] adjusted, Optional<double[]> adjustedThese,
                               List<NominalTest[]> family, int group) {
        NominalTest[] tests = analysis.tests();
        Comparison comparison = analysis.comparison();
        List<Element> elements = analysis.data().elements();
        double[] mean = analysis.units().mean();
        SharedError shared = comparison.shared(mean);
        double[] mass = Closure.close(mean, Closure.divisors(elements, Basis.ATOMIC, Basis.MASS));
        Outcome[] outcomes = new Outcome[tests.length];
        Verdict[] verdicts = new Verdict[tests.length];
        for (int i = 0; i < tests.length; i++) {
            outcomes[i] = rule.outcome(tests[i], adjusted[i], comparison.limits(i), shared.linear(i),
                source(analysis, tests[i], i, mean[i]));
            verdicts[i] = outcomes[i].verdict();
        }
        List<List<String>> fragile = ParticleRobustness.fragileWithout(analysis.units(), comparison, rule, family, group, verdicts);
        List<Optional<ElementFinding.SeenOn>> seen =
            ParticleRobustness.seenOn(analysis.particles(), comparison, rule.alpha(), tests);
        List<ElementFinding> findings = new ArrayList<>();
        for (int i = 0; i < tests.length; i++) {
            GroupData.Below below = analysis.data().below().get(i);
            int element = i;
            Optional<Outcome> these = analysis.theseTests().map(own -> rule.outcome(own[element],
                adjustedThese.orElseThrow()[element], comparison.limits(element), shared.linear(element),
                RandomLadder.theseParticles(analysis.particles().first(), element).source()));
            findings.add(new ElementFinding(elements.get(i), comparison.nominal().low(i), comparison.nominal().high(i),
                comparison.nominal().isDerived(i), outcomes[i], these, mass[i], fragile.get(i), seen.get(i), below.count(),
                below.count() > 0 ? OptionalDouble.of(below.highestLimit()) : OptionalDouble.empty(), below.assumed(),
                nextSteps.of(outcomes[i], tests[i], analysis.units().first(), i, comparison.limits(i),
                analysis.referenceUsed())));
        }
        return findings;
    }

    private static String source(GroupAnalysis analysis, NominalTest test, int element, double mean) {
        if (test.scale().equals(BelowLimit.SCALE)) {
            return "detection limit";
        }
        String source = RandomLadder.population(analysis.units().first(), element, mean).source();
        return analysis.data().sessionsAreUnits() ? source.replace("particles", "sessions") : source;
    }
}
