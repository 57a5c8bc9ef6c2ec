package surfeit.composition;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** What a fraction counts: atoms or mass. The two differ six-fold for a light element in a heavy alloy. */
public enum Basis {
    /** Parts of all atoms, shown as at%. */
    ATOMIC("at%", Set.of("at%", "atom%", "atomic%", "atompercent", "atomicpercent")),
    /** Parts of the mass, shown as wt%. */
    MASS("wt%", Set.of("wt%", "mass%", "weight%", "masspercent", "weightpercent"));

    private final String unit;
    private final Set<String> spellings;

    Basis(String unit, Set<String> spellings) {
        this.unit = unit;
        this.spellings = spellings;
    }

    /** The unit as the lab writes it: {@code at%} or {@code wt%}. */
    public String unit() {
        return unit;
    }

    /** The basis a unit names: {@code at%}, {@code at.%}, {@code atomic percent}, {@code wt%}, {@code mass %}. */
    public static Optional<Basis> ofUnit(String text) {
        String letters = text.toLowerCase(Locale.ROOT).replaceAll("[\\s._-]", "");
        return ATOMIC.spellings.contains(letters) ? Optional.of(ATOMIC)
            : MASS.spellings.contains(letters) ? Optional.of(MASS) : Optional.empty();
    }
}
