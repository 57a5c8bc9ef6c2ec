package surfeit.segregation.answer;

import java.util.List;

/**
 * A phase that spots and diffraction do not tell alike, and what may be the reason.
 *
 * @param phase           its name: the known phase's, or as stated where none is meant
 * @param kind            who shows it
 * @param groups          groups of spots that show it, or that may be it
 * @param possibleReasons why the other does not, most of them harmless
 */
public record DiffractionMismatch(String phase, Kind kind, List<String> groups, List<String> possibleReasons) {
    public DiffractionMismatch {
        groups = List.copyOf(groups);
        possibleReasons = List.copyOf(possibleReasons);
    }

    /** Who shows the phase. */
    public enum Kind {
        /** A group of spots shows it, the diffraction phases stated for the sample do not name it. */
        SPOTS_ONLY("spots only"),
        /** Stated as found by diffraction, shown by no group of spots. */
        DIFFRACTION_ONLY("diffraction only"),
        /** Stated as found by diffraction, and none of the phases known of this alloy. */
        NOT_A_KNOWN_PHASE("not a known phase");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
