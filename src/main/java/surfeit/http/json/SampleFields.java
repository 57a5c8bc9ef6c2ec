package surfeit.http.json;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import surfeit.composition.Nominal;
import surfeit.element.Element;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Coating;
import surfeit.spot.Form;
import surfeit.spot.Judgement;
import surfeit.spot.PreparationStep;
import surfeit.spot.Sample;
import surfeit.spot.SpotCentre;

/** A sample's description while it is being read; what is not stated has its default. Not thread-safe. */
final class SampleFields {
    Optional<String> alloy = Optional.empty();
    Optional<Nominal> nominal = Optional.empty();
    boolean nominalGiven;
    final Set<Element> excludedElements = new TreeSet<>();
    AccuracyClass accuracyClass = AccuracyClass.STANDARDLESS;
    Form form = Form.PARTICLE;
    OptionalDouble beamEnergyKev = OptionalDouble.empty();
    OptionalDouble takeOffAngleDeg = OptionalDouble.empty();
    OptionalDouble detectorFwhmEv = OptionalDouble.empty();
    OptionalDouble particleDiameterUm = OptionalDouble.empty();
    Optional<Coating> coating = Optional.empty();
    Optional<String> mount = Optional.empty();
    double marginOddsRatio = Judgement.DEFAULT.marginOddsRatio();
    double alpha = Judgement.DEFAULT.alpha();
    int uLevel = Judgement.DEFAULT.uLevel();
    double referenceCorrelation = Judgement.DEFAULT.referenceCorrelation();
    SpotCentre spotCentre = Judgement.DEFAULT.spotCentre();
    final List<PreparationStep> preparation = new ArrayList<>();
    final List<String> diffractionPhases = new ArrayList<>();
    String description = "";
    boolean spotsIndependent;

    Sample sample() {
        return new Sample(alloy, nominal, excludedElements, accuracyClass, form,
            new Sample.Geometry(beamEnergyKev, takeOffAngleDeg, detectorFwhmEv, particleDiameterUm), coating, mount,
            judgement(), preparation, diffractionPhases, description, spotsIndependent);
    }

    Judgement judgement() {
        return new Judgement(marginOddsRatio, alpha, uLevel, referenceCorrelation, spotCentre);
    }
}
