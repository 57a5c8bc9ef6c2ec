package surfeit.intake;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import surfeit.composition.Basis;

/** The ways tables write at% and wt%: {@code at.%}, {@code atomic percent}, {@code Atom-%}, {@code Gew.-%}. */
final class UnitWords {
    private static final Set<String> ATOMIC = Set.of("at%", "atom%", "atomic%", "%at", "atpercent", "atompercent",
        "atomicpercent", "atpct", "atomprozent");
    private static final Set<String> MASS = Set.of("wt%", "weight%", "mass%", "%wt", "wtpercent", "weightpercent",
        "masspercent", "wtpct", "ma%", "masse%", "massen%", "gew%", "gewicht%", "gewichtsprozent", "massenprozent",
        "masseprozent");

    private UnitWords() {
    }

    /** The unit a text means; absent where it is none. */
    static Optional<Basis> basis(String text) {
        StringBuilder plain = new StringBuilder();
        for (char c : text.toLowerCase(Locale.ROOT).toCharArray()) {
            if (c != '.' && c != '-' && c != '_' && !CellText.isBlank(c)) {
                plain.append(c);
            }
        }
        String word = plain.toString();
        return ATOMIC.contains(word) ? Optional.of(Basis.ATOMIC)
            : MASS.contains(word) ? Optional.of(Basis.MASS) : Optional.empty();
    }
}
