package surfeit.xray;

import java.util.Collections;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import surfeit.element.Element;

/**
 * For which material, beam energies and geometry to say where the X-rays come from.
 *
 * <p>Tilt in degrees, positive towards the detector when the azimuth is 0 (see {@link TakeOff#tiltedDeg}).
 * {@code others}: elements outside the material whose peaks may fall on its lines. {@code topDepthsNm}: thicknesses in
 * nm whose share of the signal is asked for. Immutable, thread-safe.
 */
public record SignalDepthQuery(Material material, List<Double> beamEnergiesKev, double takeOffDeg, double tiltDeg,
                               double tiltAzimuthDeg, Resolution resolution, double probeDiameterNm,
                               SortedSet<Element> others, List<Double> topDepthsNm) {
    /** Usual take-off angle of a scanning microscope (common practice, no source). */
    public static final double USUAL_TAKE_OFF_DEG = 35;
    /** Most beam energies in one question: 3 to 30 keV in steps of half a keV, with room. */
    public static final int MOST_BEAM_ENERGIES = 64;
    /** Taken where no thicknesses are asked for. */
    public static final List<Double> USUAL_TOP_DEPTHS_NM = List.of(1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0);
    /** Most thicknesses in one question. */
    public static final int MOST_TOP_DEPTHS = 32;
    private static final double DEEPEST_NM = 1e5;

    public SignalDepthQuery {
        beamEnergiesKev = List.copyOf(beamEnergiesKev);
        others = Collections.unmodifiableSortedSet(new TreeSet<>(others));
        if (beamEnergiesKev.isEmpty() || beamEnergiesKev.size() > MOST_BEAM_ENERGIES) {
            throw new IllegalArgumentException("Expected 1 to " + MOST_BEAM_ENERGIES + " beam energies, got "
                + beamEnergiesKev.size() + ".");
        }
        beamEnergiesKev.forEach(BeamEnergy::check);
        topDepthsNm = topDepthsNm.stream().distinct().sorted().toList();
        if (topDepthsNm.isEmpty() || topDepthsNm.size() > MOST_TOP_DEPTHS) {
            throw new IllegalArgumentException("Expected 1 to " + MOST_TOP_DEPTHS + " thicknesses of the top, got "
                + topDepthsNm.size() + ".");
        }
        topDepthsNm.forEach(depth -> {
            if (!(depth > 0 && depth <= DEEPEST_NM)) {
                throw new IllegalArgumentException("Thickness of the top is " + depth + " nm, must lie above 0 and up to "
                    + DEEPEST_NM + " nm.");
            }
        });
        if (!(Math.abs(tiltDeg) < 90)) {
            throw new IllegalArgumentException("Tilt is " + tiltDeg + " degrees, must lie within -90 to 90.");
        }
        LateralSpread.withProbeNm(0, probeDiameterNm);
        if (!(TakeOff.tiltedDeg(takeOffDeg, tiltDeg, tiltAzimuthDeg) > 0)) {
            throw new IllegalArgumentException("A tilt of " + tiltDeg + " degrees hides the detector at a take-off"
                + " angle of " + takeOffDeg + " degrees.");
        }
    }

    /** A question with the usual thicknesses of the top. */
    public SignalDepthQuery(Material material, List<Double> beamEnergiesKev, double takeOffDeg, double tiltDeg,
                            double tiltAzimuthDeg, Resolution resolution, double probeDiameterNm,
                            SortedSet<Element> others) {
        this(material, beamEnergiesKev, takeOffDeg, tiltDeg, tiltAzimuthDeg, resolution, probeDiameterNm, others,
            USUAL_TOP_DEPTHS_NM);
    }

    /** Level surface, take-off 35 degrees, 130 eV, point probe, no other elements. */
    public static SignalDepthQuery of(Material material, List<Double> beamEnergiesKev) {
        return new SignalDepthQuery(material, beamEnergiesKev, USUAL_TAKE_OFF_DEG, 0, 0, Resolution.USUAL, 0,
            Collections.emptySortedSet());
    }

    /** Take-off angle above the tilted surface, degrees. */
    public double effectiveTakeOffDeg() {
        return TakeOff.tiltedDeg(takeOffDeg, tiltDeg, tiltAzimuthDeg);
    }
}
