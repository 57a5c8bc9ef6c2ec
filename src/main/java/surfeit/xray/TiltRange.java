package surfeit.xray;

/**
 * The effective take-off angles a spot may have had, in degrees, and why.
 *
 * <p>Angles under {@link #LOWEST_DEG} are left out: such a spot lies practically in shadow and shows it by its count
 * rate (judgement); {@code shadowPossible} says that such angles were left out. Immutable, thread-safe.
 */
public record TiltRange(double nominalDeg, double lowDeg, double highDeg, boolean shadowPossible) {
    public static final double LOWEST_DEG = 10;
    /** What a flat polished piece on a stub may be off by (judgement). */
    public static final double POLISHED_TILT_DEG = 2;
    /** Half width of a stated direction such as "towards the detector", as azimuth (judgement). */
    public static final double DIRECTION_WIDTH_DEG = 45;

    /** Which way the local surface faces, seen from above. */
    public enum Facing {
        TOWARDS_DETECTOR, SIDE, AWAY_FROM_DETECTOR
    }

    public TiltRange {
        if (!(lowDeg <= highDeg && lowDeg > 0 && highDeg <= 90)) {
            throw new IllegalArgumentException("Expected 0 < low <= high <= 90 degrees, got " + lowDeg + " to "
                + highDeg + ".");
        }
    }

    /** Anywhere on a particle or a rough surface: from grazing to straight at the detector. */
    public static TiltRange anywhere(double takeOffDeg) {
        return within(takeOffDeg, 0, 90, 0, 180);
    }

    /** A flat polished surface or film: within 2 degrees of level. */
    public static TiltRange polished(double takeOffDeg) {
        return statedTilt(takeOffDeg, 0, POLISHED_TILT_DEG);
    }

    /** The local tilt is known to within a width, its direction is not. */
    public static TiltRange statedTilt(double takeOffDeg, double tiltDeg, double widthDeg) {
        return within(takeOffDeg, Math.max(0, tiltDeg - widthDeg), tiltDeg + widthDeg, 0, 180);
    }

    /** The direction is known, the tilt only to within a width; a width of 90 leaves the tilt open. */
    public static TiltRange stated(double takeOffDeg, double tiltDeg, double widthDeg, Facing facing) {
        double least = Math.max(0, tiltDeg - widthDeg);
        double most = tiltDeg + widthDeg;
        return switch (facing) {
            case TOWARDS_DETECTOR -> within(takeOffDeg, least, most, 0, DIRECTION_WIDTH_DEG);
            case SIDE -> within(takeOffDeg, least, most, 90 - DIRECTION_WIDTH_DEG, 90 + DIRECTION_WIDTH_DEG);
            case AWAY_FROM_DETECTOR -> within(takeOffDeg, least, most, 180 - DIRECTION_WIDTH_DEG, 180);
        };
    }

    /**
     * All tilts between two limits (0 to 90) and all azimuths between two limits (0 to 180), as in
     * {@link TakeOff#tiltedDeg}. Where all of them hide the detector the lowest angle stands alone.
     */
    public static TiltRange within(double takeOffDeg, double leastTiltDeg, double mostTiltDeg, double leastAzimuthDeg,
                                   double mostAzimuthDeg) {
        double most = Math.min(90, mostTiltDeg);
        if (!(leastTiltDeg >= 0 && leastTiltDeg <= most && leastAzimuthDeg >= 0 && leastAzimuthDeg <= mostAzimuthDeg
            && mostAzimuthDeg <= 180)) {
            throw new IllegalArgumentException("Expected tilts in 0 to 90 and azimuths in 0 to 180 degrees, low"
                + " to high.");
        }
        // For a fixed azimuth the angle is a sine of the tilt: its summit may lie between the ends.
        double cosine = Math.cos(Math.toRadians(leastAzimuthDeg));
        double summit = Math.toDegrees(Math.atan2(Math.cos(Math.toRadians(takeOffDeg)) * cosine,
            Math.sin(Math.toRadians(takeOffDeg))));
        double best = Math.max(leastTiltDeg, Math.min(most, summit));
        double high = TakeOff.tiltedDeg(takeOffDeg, best, leastAzimuthDeg);
        double low = Math.min(TakeOff.tiltedDeg(takeOffDeg, leastTiltDeg, mostAzimuthDeg),
            TakeOff.tiltedDeg(takeOffDeg, most, mostAzimuthDeg));
        double floor = Math.min(LOWEST_DEG, takeOffDeg);
        return new TiltRange(takeOffDeg, Math.max(floor, low), Math.max(floor, high), low < floor);
    }
}
