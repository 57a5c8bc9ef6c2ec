package surfeit.storage;

import java.util.LinkedHashMap;
import java.util.Map;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalPart;
import surfeit.element.Element;
import surfeit.element.ElementTable;

/** A nominal composition in bytes, within the record that states it. */
final class NominalCodec {
    private static final int POINT = 0;
    private static final int RANGE = 1;
    private static final int BALANCE = 2;
    private static final Basis[] BASES = {Basis.ATOMIC, Basis.MASS};
    private static final Element[] ELEMENTS = elementsByNumber();

    private NominalCodec() {
    }

    static void write(PackedWriter out, Nominal nominal) {
        basis(out, nominal.basis());
        out.count(nominal.parts().size());
        nominal.parts().forEach((element, part) -> {
            element(out, element);
            if (part instanceof NominalPart.Point point) {
                out.octet(POINT).real(point.value()).real(point.tolerance());
            } else if (part instanceof NominalPart.Range range) {
                out.octet(RANGE).real(range.low()).real(range.high());
            } else {
                out.octet(BALANCE);
            }
        });
    }

    static Nominal read(PackedReader in) {
        Basis basis = basis(in);
        int size = (int) in.count();
        Map<Element, NominalPart> parts = new LinkedHashMap<>();
        for (int i = 0; i < size; i++) {
            Element element = element(in);
            parts.put(element, switch (in.octet()) {
                case POINT -> new NominalPart.Point(in.real(), in.real());
                case RANGE -> new NominalPart.Range(in.real(), in.real());
                default -> new NominalPart.Balance();
            });
        }
        return new Nominal(basis, parts);
    }

    static void basis(PackedWriter out, Basis basis) {
        out.octet(basis == Basis.ATOMIC ? 0 : 1);
    }

    static Basis basis(PackedReader in) {
        return in.oneOf(BASES);
    }

    static void element(PackedWriter out, Element element) {
        out.octet(element.atomicNumber());
    }

    static Element element(PackedReader in) {
        int number = in.octet();
        if (number >= ELEMENTS.length || ELEMENTS[number] == null) {
            throw new StorageException("A stored record names an element with atomic number " + number
                + ", which this program does not know. Use the program version that wrote it.");
        }
        return ELEMENTS[number];
    }

    private static Element[] elementsByNumber() {
        Element[] elements = new Element[119];
        ElementTable.standard().all().forEach(element -> elements[element.atomicNumber()] = element);
        return elements;
    }
}
