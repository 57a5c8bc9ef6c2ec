package surfeit.intake;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import surfeit.composition.Basis;

/**
 * The ways tables write at% and wt%: {@code at.%}, {@code atomic percent}, {@code Atom-%}, {@code Gew.-%}, in English,
 * German, French and Chinese. Other languages from memory.
 */
final class UnitWords {
    private static final Set<String> ATOMIC = Set.of("at%", "atom%", "atomic%", "%at", "atpercent", "atompercent",
        "atomicpercent", "atpct", "atomprozent", "%atomic", "%atom", "atomicconc%", "atomicconcentration%", "%atomique",
        "atomique%", "\u539F\u5B50%", "\u539F\u5B50\u767E\u5206\u6BD4");
    private static final Set<String> MASS = Set.of("wt%", "weight%", "mass%", "%wt", "wtpercent", "weightpercent",
        "masspercent", "wtpct", "ma%", "masse%", "massen%", "gew%", "gewicht%", "gewichtsprozent", "massenprozent",
        "masseprozent", "%weight", "%mass", "weightconc%", "massconc%", "weightconcentration%", "massconcentration%",
        "%massique", "massique%", "%masse", "\u8D28\u91CF%", "\u8D28\u91CF\u767E\u5206\u6BD4", "\u91CD\u91CF%",
        "\u91CD\u91CF\u767E\u5206\u6BD4");

    private UnitWords() {
    }

    /** The unit a text means; absent where it is none. */
    static Optional<Basis> basis(String text) {
        StringBuilder plain = new StringBuilder();
        for (char c : text.toLowerCase(Locale.ROOT).toCharArray()) {
            if (c != '.' && c != '-' && c != '_' && !CellText.isBlank(c)) {
                plain.append(c == '\uFF05' ? '%' : c);
            }
        }
        String word = plain.toString();
        return ATOMIC.contains(word) ? Optional.of(Basis.ATOMIC)
            : MASS.contains(word) ? Optional.of(Basis.MASS) : Optional.empty();
    }
}
