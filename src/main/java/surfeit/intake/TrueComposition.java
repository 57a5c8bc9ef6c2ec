package surfeit.intake;

import java.util.Optional;
import surfeit.composition.Basis;
import surfeit.composition.CompositionException;
import surfeit.composition.Nominal;
import surfeit.composition.NominalText;
import surfeit.element.UnknownElementException;

/**
 * The composition of a reference piece as one cell holds it: {@code Ag:60.1,Cu:39.9+-0.5}, in the unit of the spot's
 * values, or with its own after a blank: {@code Ag:71.9,Cu:28.1 wt%}. Its decimal mark is a point in every table.
 */
final class TrueComposition {
    private TrueComposition() {
    }

    static Nominal parse(String text, Basis basis) {
        int blank = text.lastIndexOf(' ');
        Optional<Basis> own = blank < 0 ? Optional.empty() : UnitWords.basis(text.substring(blank + 1));
        try {
            return NominalText.parse(own.isPresent() ? text.substring(0, blank) : text, own.orElse(basis));
        } catch (UnknownElementException e) {
            throw new Refusal(FaultCode.UNKNOWN_ELEMENT, e.getMessage());
        } catch (CompositionException e) {
            throw new Refusal(code(e.kind()), e.getMessage());
        }
    }

    private static FaultCode code(CompositionException.Kind kind) {
        return switch (kind) {
            case NOT_SUMMING_TO_ONE, NOT_CLOSABLE -> FaultCode.NOMINAL_INCOMPLETE;
            case TOO_FEW_ELEMENTS -> FaultCode.TOO_FEW_ELEMENTS;
            case VALUE_OUT_OF_RANGE, UNREADABLE -> FaultCode.VALUE_OUT_OF_RANGE;
        };
    }
}
