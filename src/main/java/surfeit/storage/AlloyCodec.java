package surfeit.storage;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.composition.Alloy;
import surfeit.composition.Nominal;
import surfeit.composition.Phase;
import surfeit.composition.SourceRead;
import surfeit.composition.StatedTemperature;
import surfeit.element.Element;

/** An alloy as a lab states it, in bytes and back, without loss. Stateless, thread-safe. */
final class AlloyCodec {
    private static final int FORM = 1;

    private AlloyCodec() {
    }

    static byte[] encode(Alloy alloy) {
        PackedWriter out = new PackedWriter().octet(FORM).text(alloy.id()).text(alloy.name());
        NominalCodec.write(out, alloy.nominal());
        out.octet(alloy.temperature().isPresent() ? 1 : 0);
        alloy.temperature().ifPresent(temperature -> out.text(temperature.celsius()).text(temperature.kind()));
        out.text(alloy.source()).text(alloy.sourceRead().words()).count(alloy.phases().size());
        alloy.phases().forEach(phase -> writePhase(out, phase));
        return out.toBytes();
    }

    static Alloy decode(byte[] bytes) {
        PackedReader in = new PackedReader(bytes);
        in.requireVersion(FORM, "An alloy");
        String id = in.text();
        String name = in.text();
        Nominal nominal = NominalCodec.read(in);
        Optional<StatedTemperature> temperature =
            in.octet() == 1 ? Optional.of(new StatedTemperature(in.text(), in.text())) : Optional.empty();
        String source = in.text();
        SourceRead sourceRead = sourceRead(in);
        List<Phase> phases = in.list(AlloyCodec::readPhase);
        in.requireEnd();
        return new Alloy(id, name, nominal, temperature, source, sourceRead, phases);
    }

    private static void writePhase(PackedWriter out, Phase phase) {
        out.text(phase.system()).text(phase.name()).count(phase.atomicFractions().size());
        phase.atomicFractions().forEach((element, fraction) -> {
            NominalCodec.element(out, element);
            out.real(fraction);
        });
        out.octet(phase.densityGPerCm3().isPresent() ? 1 : 0).real(phase.densityGPerCm3()).text(phase.role());
        out.octet(phase.temperatureCelsius().isPresent() ? 1 : 0).real(phase.temperatureCelsius());
        out.text(phase.source()).text(phase.sourceRead().words());
    }

    private static Phase readPhase(PackedReader in) {
        String system = in.text();
        String name = in.text();
        Map<Element, Double> fractions = new LinkedHashMap<>();
        for (long left = in.count(); left > 0; left--) {
            Element element = NominalCodec.element(in);
            fractions.put(element, in.real());
        }
        OptionalDouble density = in.real(in.octet() == 1);
        String role = in.text();
        OptionalDouble temperature = in.real(in.octet() == 1);
        String source = in.text();
        return new Phase(system, name, fractions, density, role, temperature, source, sourceRead(in));
    }

    private static SourceRead sourceRead(PackedReader in) {
        return StoredWords.find("state of reading", in.text(), SourceRead.values(), SourceRead::words);
    }
}
