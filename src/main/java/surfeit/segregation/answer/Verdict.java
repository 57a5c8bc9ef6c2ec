package surfeit.segregation.answer;

/** What the data say of one element of a group against its nominal. */
public enum Verdict {
    /** More than nominal, beyond chance and calibration error, at the risk alpha over the whole answer. */
    ENRICHED("enriched"),
    /** Less than nominal, likewise. */
    DEPLETED("depleted"),
    /** Shown to lie inside the margin around nominal; never given because nothing was significant. */
    CONSISTENT("consistent"),
    /** None of the others is shown; always with a reason, a bound and a next step. */
    INCONCLUSIVE("inconclusive");

    private final String word;

    Verdict(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
