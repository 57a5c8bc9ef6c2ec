package surfeit.spot;

/** How the spots of one particle are put together: their mean, or their median from three spots on. */
public enum SpotCentre {
    MEAN("mean"),
    MEDIAN("median");

    private final String words;

    SpotCentre(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
