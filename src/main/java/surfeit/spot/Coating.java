package surfeit.spot;

import java.util.OptionalDouble;
import surfeit.element.Element;

/** The conductive coating put on the sample; its thickness in nanometres, if stated. */
public record Coating(Element element, OptionalDouble thicknessNm) {
    public Coating {
        if (thicknessNm.isPresent() && !(thicknessNm.getAsDouble() > 0 && Double.isFinite(thicknessNm.getAsDouble()))) {
            throw new IllegalArgumentException(
                "A coating thickness (nm) is a finite number above 0, got " + thicknessNm.getAsDouble() + ".");
        }
    }
}
