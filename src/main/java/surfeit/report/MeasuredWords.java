package surfeit.report;

import java.util.stream.Collectors;
import java.util.stream.IntStream;
import surfeit.composition.NominalFractions;
import surfeit.segregation.answer.Interpretation;

/** What was measured and what it should be, each in a clause. */
public final class MeasuredWords {
    private MeasuredWords() {
    }

    /** {@code 24 spots on 4 particles in 1 session}. */
    public static String counts(Interpretation interpretation) {
        return Listing.count(interpretation.spotCount(), "spot") + " on "
            + Listing.count(interpretation.particleCount(), "particle") + " in "
            + Listing.count(interpretation.sessionCount(), "session");
    }

    /** {@code Ag 60.1, Cu 39.9}; a range as {@code Cr 16 to 18}. */
    public static String nominal(NominalFractions nominal) {
        return IntStream.range(0, nominal.size())
            .mapToObj(i -> nominal.elements().get(i) + " " + Digits.nominalPercent(nominal.low(i))
                + (nominal.isPoint(i) ? "" : " to " + Digits.nominalPercent(nominal.high(i)))
                + (nominal.isDerived(i) ? " (balance)" : ""))
            .collect(Collectors.joining(", "));
    }
}
