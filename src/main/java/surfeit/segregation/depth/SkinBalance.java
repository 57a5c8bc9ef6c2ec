package surfeit.segregation.depth;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.composition.Basis;
import surfeit.composition.Closure;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.SkinLimit;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.spot.Form;
import surfeit.spot.Sample;
import surfeit.xray.Absorption;
import surfeit.xray.BeamEnergy;
import surfeit.xray.DepthProfile;
import surfeit.xray.Line;
import surfeit.xray.LineChoice;
import surfeit.xray.Material;
import surfeit.xray.SignalDepthQuery;

/**
 * Works out the {@link SkinLimit} of a group.
 *
 * <p>Volumes add, so that the core's density need not be known: {@code v = g V(w) / V(w0)} with V the volume of a gram.
 */
public final class SkinBalance {
    private static final double NM_PER_UM = 1000;

    private final GroupAnalysis analysis;
    private final List<Element> elements;
    private final double[] divisors;
    private final double[] nominalMass;
    private final double radiusNm;

    private SkinBalance(GroupAnalysis analysis, double diameterUm) {
        this.analysis = analysis;
        this.elements = analysis.data().elements();
        this.divisors = Closure.divisors(elements, Basis.ATOMIC, Basis.MASS);
        this.nominalMass = mass(analysis.comparison().nominal().middles());
        this.radiusNm = diameterUm / 2 * NM_PER_UM;
    }

    /** The limit; empty without a particle diameter, an enriched element, or densities, and for flat samples. */
    public static Optional<SkinLimit> of(GroupAnalysis analysis, List<ElementFinding> findings, Sample sample) {
        OptionalDouble diameter = sample.geometry().particleDiameterUm();
        if (diameter.isEmpty() || sample.form() != Form.PARTICLE) {
            return Optional.empty();
        }
        return new SkinBalance(analysis, diameter.getAsDouble()).limit(findings, sample);
    }

    private Optional<SkinLimit> limit(List<ElementFinding> findings, Sample sample) {
        double[] mean = analysis.units().mean();
        int deciding = -1;
        double most = 1;
        double mostVolume = 1;
        for (int i = 0; i < mean.length; i++) {
            double low = findings.get(i).outcome().low();
            if (findings.get(i).outcome().verdict() == Verdict.ENRICHED && low > 0) {
                double[] atLow = mass(moved(mean, i, low));
                double own = share(atLow);
                if (own < most) {
                    most = own;
                    mostVolume = own * volume(atLow) / volume(nominalMass);
                    deciding = i;
                }
            }
        }
        if (deciding < 0) {
            return Optional.empty();
        }
        Optional<Material> skin = Material.byVolumesIfKnown(Material.massFractions(elements, mean));
        if (skin.isEmpty() || !volumesKnown()) {
            return Optional.empty();
        }
        double[] atMean = mass(mean);
        double thickness = thickness(share(atMean) * volume(atMean) / volume(nominalMass));
        return Optional.of(new SkinLimit(elements.get(deciding), most, thickness,
            Math.max(thickness, thickness(mostVolume)), sampledDepth(skin.orElseThrow(), elements.get(deciding),
            sample)));
    }

    /** Whether the volume of the nominal alloy is known: see {@link Material#byVolumesIfKnown}. */
    private boolean volumesKnown() {
        double gases = 0;
        for (int i = 0; i < nominalMass.length; i++) {
            Element element = elements.get(i);
            gases += element.gasAtRoomTemperature() ? nominalMass[i] : 0;
            if (nominalMass[i] > 0 && !element.gasAtRoomTemperature() && element.density().isEmpty()) {
                return false;
            }
        }
        return gases <= Material.MOST_GAS_FORMERS;
    }

    /** g: the largest share of the mass that holds no more of any element than the nominal's upper limit. */
    private double share(double[] skin) {
        NominalFractions nominal = analysis.comparison().nominal();
        double share = 1;
        for (int i = 0; i < skin.length; i++) {
            if (nominal.high(i) > 0 && skin[i] > 0) {
                double limit = nominal.isPoint(i) ? nominalMass[i]
                    : mass(moved(nominal.middles(), i, nominal.high(i)))[i];
                share = Math.min(share, limit / skin[i]);
            }
        }
        return share;
    }

    private double thickness(double volumeShare) {
        return radiusNm * (1 - Math.cbrt(1 - Math.min(volumeShare, 1)));
    }

    private double volume(double[] mass) {
        double volume = 0;
        for (int i = 0; i < mass.length; i++) {
            Element element = elements.get(i);
            volume += element.gasAtRoomTemperature() ? 0 : mass[i] / element.density().orElse(Double.POSITIVE_INFINITY);
        }
        return volume;
    }

    /** The composition with one element at another fraction and the rest scaled. */
    private static double[] moved(double[] atomic, int element, double fraction) {
        double[] moved = atomic.clone();
        if (atomic[element] >= 1) {
            return moved;
        }
        for (int i = 0; i < moved.length; i++) {
            moved[i] = i == element ? fraction : Math.max(moved[i], 0) * (1 - fraction) / (1 - atomic[element]);
        }
        return moved;
    }

    private double[] mass(double[] atomic) {
        double[] parts = atomic.clone();
        for (int i = 0; i < parts.length; i++) {
            parts[i] = Math.max(parts[i], 0);
        }
        return Closure.close(parts, divisors);
    }

    private OptionalDouble sampledDepth(Material skin, Element element, Sample sample) {
        OptionalDouble beam = analysis.data().beamEnergyKev();
        if (beam.isEmpty() || !BeamEnergy.holds(beam.getAsDouble())) {
            return OptionalDouble.empty();
        }
        Optional<Line> line = LineChoice.at(element, beam.getAsDouble()).chosen();
        double takeOff = sample.geometry().takeOffAngleDeg().orElse(SignalDepthQuery.USUAL_TAKE_OFF_DEG);
        return line.map(own -> OptionalDouble.of(skin.depthNm(DepthProfile.of(skin, own, beam.getAsDouble())
            .massDepthOfShare(0.9, Absorption.chi(own, skin, takeOff))))).orElse(OptionalDouble.empty());
    }
}
