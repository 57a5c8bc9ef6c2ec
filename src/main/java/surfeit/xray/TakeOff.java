package surfeit.xray;

/**
 * Angles between the local surface and the detector, in degrees; at 0 or below the surface hides the detector.
 *
 * <p>The beam comes from above. Only the way out is described: the models of this package keep normal incidence.
 * Stateless.
 */
public final class TakeOff {

    private TakeOff() {
    }

    /**
     * Effective take-off angle above a flat surface tilted by t.
     *
     * <pre>   sin psi' = sin psi cos t + cos psi sin t cos d </pre>
     *
     * psi take-off of the untilted sample, t tilt (0 to 90), d azimuth between the downhill direction and the detector
     * (0: the surface faces the detector, 180: it faces away). A negative tilt is a tilt away. Result -90 to 90.
     */
    public static double tiltedDeg(double takeOffDeg, double tiltDeg, double azimuthDeg) {
        double psi = Math.toRadians(check(takeOffDeg));
        double tilt = Math.toRadians(tiltDeg);
        double towards = Math.cos(Math.toRadians(azimuthDeg));
        return arcSine(Math.sin(psi) * Math.cos(tilt) + Math.cos(psi) * Math.sin(tilt) * towards);
    }

    /**
     * Tilt of the surface of a sphere where the beam meets it, in degrees: sin t = 2 offset/diameter.
     *
     * <p>The azimuth that {@link #tiltedDeg} asks for is then that between the way out from the top and the detector.
     * Lengths in one unit.
     *
     * @throws IllegalArgumentException where the beam passes by
     */
    public static double tiltOnSphereDeg(double diameter, double offset) {
        if (!(diameter > 0 && offset >= 0 && 2 * offset < diameter)) {
            throw new IllegalArgumentException("An offset of " + offset + " from the top of a sphere with a diameter of "
                + diameter + " lies beside it: expected 0 or more and less than the radius.");
        }
        return Math.toDegrees(Math.asin(2 * offset / diameter));
    }

    private static double check(double takeOffDeg) {
        if (!(takeOffDeg > 0 && takeOffDeg <= 90)) {
            throw new IllegalArgumentException("Take-off angle is " + takeOffDeg
                + " degrees, must lie above 0 and up to 90.");
        }
        return takeOffDeg;
    }

    private static double arcSine(double sine) {
        return Math.toDegrees(Math.asin(Math.max(-1, Math.min(1, sine))));
    }
}
