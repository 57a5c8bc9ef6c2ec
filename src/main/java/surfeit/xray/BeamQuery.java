package surfeit.xray;

import java.util.Collections;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import surfeit.element.Element;

/**
 * For which alloy, question and instrument to advise on the beam energy.
 *
 * @param takeOffDeg       take-off angle of the detector
 * @param resolution       of the detector
 * @param probeDiameterNm  width of the beam where it meets the surface
 * @param beamEnergiesKev  energies to compare
 * @param others           elements outside the material whose peaks are shown as overlaps; they do not decide, since
 *                         nobody knows how much of them there is
 */
public record BeamQuery(Material material, BeamQuestion question, double takeOffDeg, Resolution resolution,
                        double probeDiameterNm, List<Double> beamEnergiesKev, SortedSet<Element> others) {
    /** 3 to 30 keV, in the steps instruments are set to (common practice, no source). */
    public static final List<Double> USUAL_ENERGIES_KEV =
        List.of(3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 12.0, 15.0, 18.0, 20.0, 25.0, 30.0);

    public BeamQuery {
        beamEnergiesKev = beamEnergiesKev.stream().distinct().sorted().toList();
        others = Collections.unmodifiableSortedSet(new TreeSet<>(others));
        depths(material, takeOffDeg, resolution, probeDiameterNm, beamEnergiesKev, others);
    }

    /** Take-off 35 degrees, 130 eV, point probe, 3 to 30 keV. */
    public static BeamQuery of(Material material, BeamQuestion question) {
        return new BeamQuery(material, question, SignalDepthQuery.USUAL_TAKE_OFF_DEG, Resolution.USUAL, 0,
            USUAL_ENERGIES_KEV, Collections.emptySortedSet());
    }

    SignalDepthQuery depths() {
        return depths(material, takeOffDeg, resolution, probeDiameterNm, beamEnergiesKev, others);
    }

    private static SignalDepthQuery depths(Material material, double takeOff, Resolution resolution, double probe,
                                           List<Double> energies, SortedSet<Element> others) {
        return new SignalDepthQuery(material, energies, takeOff, 0, 0, resolution, probe, others);
    }
}
