package surfeit.storage;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import surfeit.composition.Nominal;
import surfeit.element.Element;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Coating;
import surfeit.spot.Form;
import surfeit.spot.Judgement;
import surfeit.spot.PreparationStep;
import surfeit.spot.Sample;
import surfeit.spot.SpotCentre;

/** A sample's description in bytes and back, without loss. Stateless, thread-safe. */
final class SampleCodec {
    private static final int FORM = 1;

    private SampleCodec() {
    }

    static byte[] encode(Sample sample) {
        PackedWriter out = new PackedWriter();
        out.octet(FORM);
        optional(out, sample.alloy());
        out.octet(sample.nominal().isPresent() ? 1 : 0);
        sample.nominal().ifPresent(nominal -> NominalCodec.write(out, nominal));
        out.count(sample.excludedElements().size());
        sample.excludedElements().forEach(element -> NominalCodec.element(out, element));
        out.text(sample.accuracyClass().words()).text(sample.form().words());
        Sample.Geometry geometry = sample.geometry();
        optional(out, geometry.beamEnergyKev());
        optional(out, geometry.takeOffAngleDeg());
        optional(out, geometry.detectorFwhmEv());
        optional(out, geometry.particleDiameterUm());
        out.octet(sample.coating().isPresent() ? 1 : 0);
        sample.coating().ifPresent(coating -> {
            NominalCodec.element(out, coating.element());
            optional(out, coating.thicknessNm());
        });
        optional(out, sample.mount());
        writeJudgement(out, sample.judgement());
        out.count(sample.preparation().size());
        sample.preparation().forEach(step -> {
            out.text(step.step());
            optional(out, step.reagent());
        });
        out.count(sample.diffractionPhases().size());
        sample.diffractionPhases().forEach(out::text);
        return out.text(sample.description()).octet(sample.spotsIndependent() ? 1 : 0).toBytes();
    }

    static Sample decode(byte[] bytes) {
        PackedReader in = new PackedReader(bytes);
        in.requireVersion(FORM, "A sample");
        Optional<String> alloy = optionalText(in);
        Optional<Nominal> nominal = in.octet() == 1 ? Optional.of(NominalCodec.read(in)) : Optional.empty();
        Set<Element> excluded = new HashSet<>(in.list(NominalCodec::element));
        AccuracyClass accuracy =
            StoredWords.find("accuracy class", in.text(), AccuracyClass.values(), AccuracyClass::words);
        Form form = StoredWords.find("form", in.text(), Form.values(), Form::words);
        Sample.Geometry geometry =
            new Sample.Geometry(optionalReal(in), optionalReal(in), optionalReal(in), optionalReal(in));
        Optional<Coating> coating = in.octet() == 1
            ? Optional.of(new Coating(NominalCodec.element(in), optionalReal(in))) : Optional.empty();
        Optional<String> mount = optionalText(in);
        Judgement judgement = readJudgement(in);
        List<PreparationStep> preparation =
            in.list(reader -> new PreparationStep(reader.text(), optionalText(reader)));
        List<String> phases = in.list(PackedReader::text);
        String description = in.text();
        boolean spotsIndependent = in.octet() == 1;
        in.requireEnd();
        return new Sample(alloy, nominal, excluded, accuracy, form, geometry, coating, mount, judgement, preparation,
            phases, description, spotsIndependent);
    }

    private static void writeJudgement(PackedWriter out, Judgement judgement) {
        out.real(judgement.marginOddsRatio()).real(judgement.alpha()).count(judgement.uLevel())
            .real(judgement.referenceCorrelation()).text(judgement.spotCentre().words());
    }

    private static Judgement readJudgement(PackedReader in) {
        return new Judgement(in.real(), in.real(), (int) in.count(), in.real(),
            StoredWords.find("spot centre", in.text(), SpotCentre.values(), SpotCentre::words));
    }

    private static void optional(PackedWriter out, Optional<String> text) {
        out.octet(text.isPresent() ? 1 : 0).text(text);
    }

    private static void optional(PackedWriter out, OptionalDouble value) {
        out.octet(value.isPresent() ? 1 : 0).real(value);
    }

    private static Optional<String> optionalText(PackedReader in) {
        return in.text(in.octet() == 1);
    }

    private static OptionalDouble optionalReal(PackedReader in) {
        return in.real(in.octet() == 1);
    }
}
