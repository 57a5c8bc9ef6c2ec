package surfeit.segregation.answer;

/** Something a reader must know beside the numbers. A clean measurement shows no warning. */
public record Caveat(String code, Weight weight, String detail) {
    /** How much it matters. */
    public enum Weight { NOTE, WARNING }

    public static Caveat note(String code, String detail) {
        return new Caveat(code, Weight.NOTE, detail);
    }

    public static Caveat warning(String code, String detail) {
        return new Caveat(code, Weight.WARNING, detail);
    }
}
