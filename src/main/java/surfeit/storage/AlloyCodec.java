package surfeit.storage;

import java.util.ArrayList;
import java.util.List;
import surfeit.composition.Nominal;
import surfeit.lab.Alloy;

/** An alloy as a lab states it, in bytes and back. Stateless, thread-safe. */
final class AlloyCodec {
    private static final int FORM = 1;

    private AlloyCodec() {
    }

    static byte[] encode(Alloy alloy) {
        PackedWriter out = new PackedWriter().octet(FORM).text(alloy.id()).text(alloy.name());
        NominalCodec.write(out, alloy.nominal());
        out.count(alloy.phases().size());
        alloy.phases().forEach(out::text);
        return out.text(alloy.source()).toBytes();
    }

    static Alloy decode(byte[] bytes) {
        PackedReader in = new PackedReader(bytes);
        in.requireVersion(FORM, "An alloy");
        String id = in.text();
        String name = in.text();
        Nominal nominal = NominalCodec.read(in);
        int size = (int) in.count();
        List<String> phases = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            phases.add(in.text());
        }
        String source = in.text();
        in.requireEnd();
        return new Alloy(id, name, nominal, phases, source);
    }
}
