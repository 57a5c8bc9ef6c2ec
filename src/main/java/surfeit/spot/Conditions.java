package surfeit.spot;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How one spot was measured, as far as it was stated.
 *
 * @param beamEnergyKev beam energy in keV
 * @param liveTimeS     live time of the spectrum in seconds
 * @param featureSizeUm diameter of the feature the beam stood on, in micrometres
 * @param rawTotal      sum of all elements before normalising, as a fraction (0.974 for 97.4 %)
 * @param position      where on the particle the beam stood
 * @param tiltDeg       tilt of the local surface in degrees, positive towards the detector
 */
public record Conditions(OptionalDouble beamEnergyKev, OptionalDouble liveTimeS, OptionalDouble featureSizeUm,
                         OptionalDouble rawTotal, Optional<Position> position, OptionalDouble tiltDeg) {
    /** Nothing stated. */
    public static final Conditions UNKNOWN = new Conditions(OptionalDouble.empty(), OptionalDouble.empty(),
        OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty());

    public Conditions {
        requirePositive("A beam energy (keV)", beamEnergyKev);
        requirePositive("A live time (s)", liveTimeS);
        requirePositive("A feature size (um)", featureSizeUm);
        requirePositive("A raw total", rawTotal);
        if (tiltDeg.isPresent() && !(Math.abs(tiltDeg.getAsDouble()) <= 90)) {
            throw new IllegalArgumentException("A tilt lies between -90 and 90 degrees, got " + tiltDeg.getAsDouble() + ".");
        }
    }

    private static void requirePositive(String what, OptionalDouble value) {
        if (value.isPresent() && !(value.getAsDouble() > 0 && Double.isFinite(value.getAsDouble()))) {
            throw new IllegalArgumentException(what + " is a finite number above 0, got " + value.getAsDouble() + ".");
        }
    }
}
