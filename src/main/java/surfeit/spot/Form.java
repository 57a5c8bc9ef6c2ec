package surfeit.spot;

/** What the specimen's surface is like; it sets what local tilt may do to the numbers. */
public enum Form {
    PARTICLE("particle"),
    ROUGH("rough"),
    POLISHED("polished"),
    FILM("film");

    private final String words;

    Form(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
