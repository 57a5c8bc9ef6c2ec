package surfeit.composition;

/** What a fraction counts: atoms or mass. The two differ six-fold for a light element in a heavy alloy. */
public enum Basis {
    /** Parts of all atoms, shown as at%. */
    ATOMIC("at%"),
    /** Parts of the mass, shown as wt%. */
    MASS("wt%");

    private final String unit;

    Basis(String unit) {
        this.unit = unit;
    }

    /** The unit as the lab writes it: {@code at%} or {@code wt%}. */
    public String unit() {
        return unit;
    }
}
