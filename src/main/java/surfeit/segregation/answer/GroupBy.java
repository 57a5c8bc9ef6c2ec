package surfeit.segregation.answer;

/** How the spots of a sample are put into groups: by the feature they show, by particle, or all together. */
public enum GroupBy {
    FEATURE("feature"),
    PARTICLE("particle"),
    SAMPLE("sample");

    private final String word;

    GroupBy(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
