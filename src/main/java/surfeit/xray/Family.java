package surfeit.xray;

/** The shell whose vacancy a line fills: K, L or M. Names the family of lines in the trade's (Siegbahn) notation. */
public enum Family {
    K, L, M;

    /** The family of a line that starts from this edge, for example {@code L3}. */
    public static Family ofEdge(String edge) {
        return switch (edge.isEmpty() ? ' ' : edge.charAt(0)) {
            case 'K' -> K;
            case 'L' -> L;
            case 'M' -> M;
            default -> throw new IllegalArgumentException("Expected an edge of K, L or M, got \"" + edge + "\".");
        };
    }

    /**
     * The exponent m of the ionisation cross-section Q = ln U / (U^m Ec²).
     *
     * <p>K: 0.86 + 0.12 exp(-(Z/5)²); L: 0.82; M: 0.78, with Z the emitting element.
     * Source: Pouchou &amp; Pichoir 1991 (see {@link DepthProfile}), coefficients from memory.
     */
    double crossSectionExponent(int emitterAtomicNumber) {
        return switch (this) {
            case K -> 0.86 + 0.12 * Math.exp(-Math.pow(emitterAtomicNumber / 5.0, 2));
            case L -> 0.82;
            case M -> 0.78;
        };
    }
}
