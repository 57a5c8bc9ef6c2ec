package surfeit.spot;

/** Where on the particle the beam stood, seen from the detector. */
public enum Position {
    TOP("top"),
    TOWARDS_DETECTOR("towards detector"),
    AWAY_FROM_DETECTOR("away from detector"),
    SIDE("side");

    private final String words;

    Position(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
