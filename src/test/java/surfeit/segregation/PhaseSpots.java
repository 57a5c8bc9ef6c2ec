package surfeit.segregation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import surfeit.composition.Alloy;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.Basis;
import surfeit.composition.Phase;
import surfeit.element.Element;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.PhaseReading;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Conditions;
import surfeit.spot.Form;
import surfeit.spot.Judgement;
import surfeit.spot.ReferencePiece;
import surfeit.spot.ReportedValue;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/** Invented spots on an alloy of the catalogue, and what is read from them. */
public final class PhaseSpots {
    private final Alloy alloy;
    private final List<Spot> spots = new ArrayList<>();
    private AccuracyClass accuracy = AccuracyClass.STANDARDS_BASED;
    private Form form = Form.PARTICLE;
    private OptionalDouble diameterUm = OptionalDouble.empty();
    private List<String> diffraction = List.of();
    private List<Phase> phases;
    private OptionalDouble featureSizeUm = OptionalDouble.empty();
    private Optional<String> session = Optional.empty();
    private Optional<ReferencePiece> piece = Optional.empty();
    private Map<Element, Double> beside = Map.of();

    private PhaseSpots(Alloy alloy) {
        this.alloy = alloy;
        this.phases = alloy.phases();
    }

    public static PhaseSpots on(String alloy) {
        return new PhaseSpots(AlloyCatalogue.packaged().require(alloy));
    }

    public PhaseSpots standardless() {
        accuracy = AccuracyClass.STANDARDLESS;
        return this;
    }

    public PhaseSpots polished() {
        form = Form.POLISHED;
        return this;
    }

    public PhaseSpots diameterUm(double diameter) {
        diameterUm = OptionalDouble.of(diameter);
        return this;
    }

    public PhaseSpots featureSizeUm(double size) {
        featureSizeUm = OptionalDouble.of(size);
        return this;
    }

    public PhaseSpots session(String name) {
        session = Optional.of(name);
        return this;
    }

    /** The next spots are on a piece of the alloy's nominal composition. */
    public PhaseSpots onReference() {
        piece = Optional.of(new ReferencePiece(alloy.nominal(), false));
        return this;
    }

    public PhaseSpots onSpecimen() {
        piece = Optional.empty();
        return this;
    }

    /** The next spots also hold this percentage of an element outside the nominal. */
    public PhaseSpots beside(String symbol, double percent) {
        beside = Map.of(Element.of(symbol), percent);
        return this;
    }

    public PhaseSpots diffraction(String... names) {
        diffraction = List.of(names);
        return this;
    }

    public PhaseSpots phases(List<Phase> own) {
        phases = own;
        return this;
    }

    /** A spot: percent of every element of the alloy, in the order of the nominal. */
    public PhaseSpots spot(String feature, String particle, OptionalDouble beamKev, Basis basis, double... percent) {
        Map<Element, ReportedValue> values = new LinkedHashMap<>();
        List<Element> elements = alloy.nominal().elements();
        for (int i = 0; i < percent.length; i++) {
            values.put(elements.get(i), Double.isNaN(percent[i])
                ? new ReportedValue.NotDetected(OptionalDouble.empty(), "n.d.")
                : ReportedValue.Measured.of(percent[i] / 100, String.format(Locale.ROOT, "%.4f", percent[i])));
        }
        beside.forEach((element, part) -> values.put(element, ReportedValue.Measured.of(part / 100, String.valueOf(part))));
        spots.add(new Spot("s" + spots.size(), Optional.of(particle), Optional.of(feature), session, Optional.empty(),
            new Conditions(beamKev, OptionalDouble.empty(), featureSizeUm, OptionalDouble.empty(), Optional.empty(),
                OptionalDouble.empty()), piece, basis, values));
        return this;
    }

    /** A spot of a binary in wt%: the second element, the first being the rest. */
    public PhaseSpots mass(String particle, double secondPercent) {
        return spot("patch", particle, OptionalDouble.empty(), Basis.MASS, 100 - secondPercent, secondPercent);
    }

    /** A spot of a binary in at%. */
    public PhaseSpots atomic(String particle, double secondPercent) {
        return spot("patch", particle, OptionalDouble.empty(), Basis.ATOMIC, 100 - secondPercent, secondPercent);
    }

    public Interpretation interpret() {
        Sample sample = new Sample(Optional.of(alloy.id()), Optional.empty(), Set.of(), accuracy, form,
            new Sample.Geometry(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), diameterUm),
            Optional.empty(), Optional.empty(), Judgement.DEFAULT, List.of(), diffraction, "", false);
        return new Interpreter().interpret(sample, alloy.nominal(), phases, SpotSource.of(spots), GroupBy.FEATURE,
            0.003);
    }

    public GroupFinding group() {
        return interpret().groups().get(0);
    }

    public PhaseReading reading() {
        return group().phaseReading().orElseThrow();
    }
}
