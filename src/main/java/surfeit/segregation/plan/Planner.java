package surfeit.segregation.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import surfeit.composition.CompositionException;
import surfeit.composition.Nominal;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.answer.Scope;
import surfeit.segregation.blocks.SpotSource;
import surfeit.segregation.nominal.Comparison;
import surfeit.segregation.nominal.SampleReading;
import surfeit.segregation.plan.MeasurementPlan.CurvePoint;
import surfeit.segregation.plan.MeasurementPlan.Given;
import surfeit.segregation.plan.MeasurementPlan.Limit;
import surfeit.segregation.plan.MeasurementPlan.SpotsRow;
import surfeit.segregation.sums.ClosedNominal;
import surfeit.segregation.uncertainty.AdditiveFloor;
import surfeit.spot.Sample;
import surfeit.statistics.ChiSquare;
import surfeit.statistics.Power;

/**
 * Plans how many particles and spots show a wanted shift of one element against nominal, from stated scatter or from
 * that of a pilot sample.
 *
 * <pre>
 *     se^2 = s_b^2 / k + s_w^2 / (k n)        k particles, n spots on each, standard deviations in log odds
 * </pre>
 * Power as in {@link Power}: the study will estimate its scatter, and the calibration error u does not shrink. Where
 * 2.80 u passes the wanted shift (5 %, power 0.8), no number of particles suffices; where 2.93 u passes the margin,
 * "consistent" cannot be shown. Order of advice settled by simulation on invented data: reference spots, then
 * particles, last more spots on each. Stateless, thread-safe.
 */
public final class Planner {
    private static final int SPOTS_MOST = 6;
    private static final int CURVE_TO = 20;
    /** One-sided limit of the pilot's scatter to plan with: Browne, Statist. Med. 14 (1995) 1933, from memory. */
    private static final double HIGH_SCATTER = 0.8;

    /**
     * The plan from stated scatter.
     *
     * @throws PlanException        for a goal no plan can answer
     * @throws CompositionException where the nominal leaves fewer than two elements to compare
     */
    public MeasurementPlan plan(PlanGoal goal, Sample sample, Nominal nominal, ParticleScatter scatter) {
        MethodSettings settings = MethodSettings.of(sample.judgement(), sample.accuracyClass(),
            MethodSettings.DEFAULT_DETECTION_LIMIT_MASS_FRACTION);
        NominalFractions fractions = ClosedNominal.of(nominal, sample);
        double[] weights = fractions.elements().stream().mapToDouble(Element::atomicWeight).toArray();
        Comparison comparison = new Comparison(fractions, settings.accuracy().relativeUncertainty(),
            AdditiveFloor.ofMass(settings.floorMassFraction(), weights),
            Math.log(sample.judgement().marginOddsRatio()), Optional.empty());
        int element = indexOf(goal.element(), fractions.elements());
        PlanModel model = new PlanModel(comparison, element, limit(goal, fractions, element), scatter, Optional.empty());
        return plan(withPlannedReference(goal, sample, model, goal.tests().orElse(1), List.of()));
    }

    /**
     * The plan from the scatter of a pilot: one group of a sample.
     *
     * @param group the group's name in the pilot's answer
     * @throws PlanException        for a goal no plan can answer, or a pilot that does not tell the scatter
     * @throws CompositionException where the pilot has no two elements of the nominal
     */
    public MeasurementPlan plan(PlanGoal goal, Sample sample, Nominal nominal, SpotSource pilot, GroupBy by,
                                String group, double detectionLimitMassFraction) {
        NominalFractions fractions = ClosedNominal.of(nominal, sample);
        SampleReading reading = SampleReading.of(sample, fractions, pilot, by, detectionLimitMassFraction);
        PilotGroup own = PilotGroup.find(reading, group);
        int element = indexOf(goal.element(), own.analysis().data().elements());
        Comparison comparison = own.analysis().comparison();
        PlanModel model = new PlanModel(comparison, element, limit(goal, comparison.nominal(), element),
            own.scatter(element), own.referenceScatter(element).map(PlannedReference::ofPilot));
        int tests = goal.tests().orElse(PilotGroup.tests(reading));
        return plan(comparison.reference().isPresent()
            ? new PlanCase(goal, sample, model, tests, comparison.reference().get().spotCount(), own.caveats(element))
            : withPlannedReference(goal, sample, model, tests, own.caveats(element)));
    }

    /** With the wanted reference spots, where answers would use them. */
    private static PlanCase withPlannedReference(PlanGoal goal, Sample sample, PlanModel model, int tests,
                                                 List<Caveat> caveats) {
        PlanCase without = new PlanCase(goal, sample, model, tests, 0, caveats);
        if (goal.referenceSpots() == 0) {
            return without;
        }
        PlanModel with = model.withReferenceSpots(goal.referenceSpots(), sample.judgement().referenceCorrelation());
        if (with.isWorthIt(model, without.shift(), goal.spotsPerParticle())) {
            return new PlanCase(goal, sample, with, tests, goal.referenceSpots(), caveats);
        }
        List<Caveat> told = new ArrayList<>(caveats);
        told.add(Caveat.note("reference-not-worth", "So few reference spots scatter more than the calibration error they "
            + "would take away; answers would leave them aside, and this plan does not count with them."));
        return new PlanCase(goal, sample, model, tests, 0, told);
    }

    private static int indexOf(Element element, List<Element> elements) {
        int index = elements.indexOf(element);
        if (index < 0) {
            throw new PlanException("Expected an element that is compared with nominal, one of " + elements + ", got "
                + element + ".");
        }
        return index;
    }

    private static double limit(PlanGoal goal, NominalFractions nominal, int element) {
        boolean up = goal.wanted().isUp();
        double limit = up ? nominal.high(element) : nominal.low(element);
        if (!(limit > 0 && limit < 1)) {
            throw new PlanException(up ? goal.element() + " may be all of it; no enrichment can be shown."
                : "The nominal says \"at most\" of " + goal.element() + ", so that having none is in order; no "
                + "depletion can be shown.");
        }
        return limit;
    }

    private static MeasurementPlan plan(PlanCase planned) {
        PlanGoal goal = planned.goal();
        PlanModel model = planned.model();
        Power power = planned.power();
        double shift = planned.shift();
        double shared = model.shared(shift);
        List<SpotsRow> bySpots = bySpots(planned);
        OptionalInt particles = planned.particlesFor(model, goal.spotsPerParticle());
        List<CurvePoint> curve = IntStream.rangeClosed(Power.FEWEST_PARTICLES, CURVE_TO).mapToObj(k -> new CurvePoint(k,
            model.chance(power, shift, model.random(k, goal.spotsPerParticle())))).toList();
        Optional<Given> given = goal.particles().isPresent() ? Optional.of(given(planned, goal.particles().getAsInt()))
            : Optional.empty();
        OptionalInt ifHigh = model.scatter().estimatedFrom().isEmpty() ? OptionalInt.empty()
            : planned.particlesFor(model.withScatter(high(model.scatter())), goal.spotsPerParticle());
        List<MeasurementPlan.Remedy> remedies = planned.remedies();
        Limit limit = limit(planned);
        PlanWords words = new PlanWords(planned, particles, bySpots, given, limit, remedies, ifHigh);
        return new MeasurementPlan(goal.element(), model.limit(), model.factor(shift), Math.exp(shift),
            goal.spotsPerParticle(), goal.power(), planned.judgement().alpha(), planned.tests(), model.scatter(),
            shared, planned.referenceSpots(), particles, ifHigh, bySpots, curve, given, words.givenWords(), limit,
            remedies, words.answer(), words.advice(), words.caveats());
    }

    private static List<SpotsRow> bySpots(PlanCase planned) {
        PlanModel model = planned.model();
        List<SpotsRow> rows = new ArrayList<>();
        if (model.scatter().within().isEmpty()) {
            int spots = planned.goal().spotsPerParticle();
            return List.of(new SpotsRow(spots, planned.particlesFor(model, spots)));
        }
        for (int n = 1; n <= SPOTS_MOST; n++) {
            rows.add(new SpotsRow(n, planned.particlesFor(model, n)));
        }
        return rows;
    }

    /** The scatter the pilot leaves open: {@code sd sqrt(df / chi2(0.2, df))}, df one less than its particles. */
    private static ParticleScatter high(ParticleScatter scatter) {
        int df = scatter.estimatedFrom().getAsInt() - 1;
        return scatter.times(Math.sqrt(df / ChiSquare.quantile(1 - HIGH_SCATTER, df)));
    }

    private static Given given(PlanCase planned, int particles) {
        PlanModel model = planned.model();
        int spots = planned.goal().spotsPerParticle();
        boolean kind = particles >= Power.FEWEST_PARTICLES;
        Optional<PlannedError> random = kind ? Optional.of(model.random(particles, spots))
            : model.ofTheseParticles(particles, spots);
        Scope scope = kind ? Scope.PARTICLES : particles == 2 ? Scope.THESE_PARTICLES
            : spots > 1 ? Scope.THIS_PARTICLE : Scope.THIS_SPOT;
        if (random.isEmpty()) {
            OptionalDouble none = OptionalDouble.empty();
            return new Given(particles, spots, scope, none, none, none, none, none, none);
        }
        Power power = planned.power();
        int direction = planned.goal().wanted().isUp() ? 1 : -1;
        double wanted = model.detectable(power, random.get(), direction);
        OptionalDouble other = planned.otherDirection().map(turned ->
            turned.factorWithin(turned.detectable(power, random.get(), -direction))).orElse(OptionalDouble.empty());
        OptionalDouble own = model.factorWithin(wanted);
        double margin = model.smallestMargin(planned.single(), random.get());
        return new Given(particles, spots, scope,
            OptionalDouble.of(model.chance(power, planned.shift(), random.get())),
            direction > 0 ? own : other, direction > 0 ? other : own, oddsRatio(own, wanted),
            OptionalDouble.of(model.chanceOfConsistent(planned.single(), planned.margin(), random.get())), margin(margin));
    }

    private static OptionalDouble margin(double logOdds) {
        return logOdds < Double.POSITIVE_INFINITY ? OptionalDouble.of(Math.exp(logOdds)) : OptionalDouble.empty();
    }

    private static OptionalDouble oddsRatio(OptionalDouble factor, double shift) {
        return factor.isPresent() ? OptionalDouble.of(Math.exp(shift)) : OptionalDouble.empty();
    }

    private static Limit limit(PlanCase planned) {
        PlanModel model = planned.model();
        int spots = planned.goal().spotsPerParticle();
        double smallest = model.smallest(planned.power(), spots, planned.goal().wanted().isUp() ? 1 : -1);
        OptionalDouble factor = model.factorWithin(smallest);
        return new Limit(factor, oddsRatio(factor, smallest), Math.exp(planned.margin()),
            margin(model.smallestMargin(planned.single(), spots)),
            model.particlesForConsistent(planned.single(), planned.margin(), spots));
    }
}
