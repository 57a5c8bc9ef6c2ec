package surfeit.segregation.depth;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.nominal.BelowLimit;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.segregation.nominal.NominalTest;
import surfeit.segregation.sums.GroupKey;
import surfeit.segregation.uncertainty.ParticleSums;
import surfeit.segregation.uncertainty.ReferenceScatter;
import surfeit.spot.Sample;
import surfeit.statistics.CombinedError;
import surfeit.statistics.RandomPart;
import surfeit.xray.BeamEnergy;
import surfeit.xray.FilmedBulk;
import surfeit.xray.Material;
import surfeit.xray.ProfileCache;
import surfeit.xray.SignalDepthQuery;

/**
 * One element of a group at one beam energy, on the logit scale, and the film model for it.
 *
 * @param theta    logit of the mean less logit of nominal
 * @param random   its random part
 * @param shared   standard uncertainty of the calibration error
 * @param nominalU standard uncertainty of the nominal itself: of its tolerance, or of a range taken as rectangular
 */
record DepthPoint(GroupAnalysis analysis, int element, double beamEnergyKev, double theta, RandomPart random,
                  double shared, double nominalU, FilmedBulk model) {
    private static final int PAIRS_FROM = 3;

    /** Empty where the group says nothing usable of the element, or a line is missing at this energy. */
    static Optional<DepthPoint> of(GroupAnalysis analysis, Element element, Sample sample, ProfileCache profiles) {
        int i = analysis.data().elements().indexOf(element);
        OptionalDouble beam = analysis.data().beamEnergyKev();
        if (i < 0 || beam.isEmpty() || !BeamEnergy.holds(beam.getAsDouble())) {
            return Optional.empty();
        }
        double m = analysis.units().mean()[i];
        NominalFractions nominal = analysis.comparison().nominal();
        double c0 = nominal.middles()[i];
        NominalTest test = analysis.tests()[i];
        if (!(m > 0 && m < 1 && c0 > 0 && c0 < 1) || test.parts().isEmpty() || test.scale().equals(BelowLimit.SCALE)) {
            return Optional.empty();
        }
        RandomPart widest = test.parts().stream().max(Comparator.comparingDouble(RandomPart::standardError))
            .orElseThrow();
        double range = nominal.isPoint(i) ? analysis.comparison().limits(i).uncertainty()
            : (nominal.high(i) - nominal.low(i)) / 2 / Math.sqrt(3);
        return model(nominal, element, beam.getAsDouble(), sample, profiles).map(model -> new DepthPoint(analysis, i,
            beam.getAsDouble(), NominalTest.logit(m) - NominalTest.logit(c0), widest.times(1 / (m * (1 - m))),
            analysis.comparison().shared(analysis.units().mean()).logit(i), range / (c0 * (1 - c0)), model))
            .filter(point -> point.standardUncertainty() > 0);
    }

    private static Optional<FilmedBulk> model(NominalFractions nominal, Element element, double beam, Sample sample,
                                              ProfileCache profiles) {
        Map<Element, Double> fractions = Material.massFractions(nominal.elements(), nominal.middles());
        // Mass depths are free of the density.
        return FilmedBulk.of(Material.of(Map.of(element, 1.0), 1), Material.of(fractions, 1), beam,
            sample.geometry().takeOffAngleDeg().orElse(SignalDepthQuery.USUAL_TAKE_OFF_DEG), profiles);
    }

    Element symbol() {
        return analysis.data().elements().get(element);
    }

    double meanMassDepth() {
        return model.meanMassDepth(symbol());
    }

    /** theta that a film of this mass thickness (g/cm²) on nominal would show. */
    double ofFilm(double massThickness) {
        return Math.log(model.atomicOdds(symbol(), massThickness))
            - NominalTest.logit(analysis.comparison().nominal().middles()[element]);
    }

    double standardUncertainty() {
        return Math.hypot(random.standardError(), shared);
    }

    double degreesOfFreedom() {
        return CombinedError.degreesOfFreedom(random.standardError(), random.degreesOfFreedom(), shared);
    }

    Estimate oddsRatio() {
        double h = CombinedError.halfWidth(random, Math.hypot(shared, nominalU), 0.95);
        return new Estimate(Math.exp(theta), Math.exp(theta - h), Math.exp(theta + h));
    }

    /**
     * Random part of {@code a theta_this + b theta_other}: particle by particle where three or more carry both, else
     * of the two groups.
     */
    RandomPart randomOfSum(double a, DepthPoint other, double b) {
        List<String> common = commonParticles(other);
        if (common.size() < PAIRS_FROM) {
            return random.times(a).plus(other.random.times(b));
        }
        double[] own = values(common, a);
        double[] others = other.values(common, b);
        for (int p = 0; p < own.length; p++) {
            own[p] += others[p];
        }
        RandomPart part = RandomPart.ofMean(own).atLeast(Math.hypot(a * rounding(), b * other.rounding()));
        for (RandomPart added : referenceScatter(a)) {
            part = part.plus(added);
        }
        for (RandomPart added : other.referenceScatter(b)) {
            part = part.plus(added);
        }
        return part;
    }

    private List<String> commonParticles(DepthPoint other) {
        if (analysis.data().sessionsAreUnits() || other.analysis.data().sessionsAreUnits()) {
            return List.of();
        }
        List<String> names = new ArrayList<>();
        analysis.units().first().particles().forEach(particle -> names.add(particle.name()));
        names.retainAll(other.analysis.units().first().particles().stream().map(ParticleSums::name).toList());
        names.remove(GroupKey.UNNAMED_PARTICLE);
        return names;
    }

    private double slope() {
        double m = analysis.units().mean()[element];
        return 1 / (m * (1 - m));
    }

    private double[] values(List<String> particles, double weight) {
        return analysis.units().first().only(particles).particles().stream()
            .mapToDouble(particle -> weight * slope() * particle.centre()[element]).toArray();
    }

    private double rounding() {
        return slope() * analysis.units().first().roundingStep()[element] / Math.sqrt(12);
    }

    private List<RandomPart> referenceScatter(double weight) {
        return analysis.comparison().reference().flatMap(reference -> ReferenceScatter.of(reference,
            analysis.units().first(), analysis.units().mean(), element)).stream().map(part -> part.times(weight))
            .toList();
    }
}
