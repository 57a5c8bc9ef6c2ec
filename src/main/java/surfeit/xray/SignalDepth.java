package surfeit.xray;

import java.util.List;
import surfeit.element.Element;

/**
 * Where the X-rays of one line come from at one beam energy.
 *
 * <p>{@code generated} depths count every X-ray that arises, {@code emitted} those that reach the detector.
 * {@code lateralDiameterNm} holds the probe. {@code lineOfChoice}: the line an analyst would take for the element.
 * {@code fwhmEv} is the width of the peak in the detector, {@code massAbsorption} the material's coefficient in cm²/g.
 * Ranges are rules of thumb for orientation. Immutable, thread-safe.
 */
public record SignalDepth(Element element, Line line, double beamEnergyKev, double overvoltage, Excitation excitation,
                          boolean lineOfChoice, double fwhmEv, Estimate massAbsorption, Estimate absorptionFactor,
                          DepthFigures generated, DepthFigures emitted, double lateralDiameterNm, double xrayRangeNm,
                          List<Overlap> overlaps,
                          List<DepthCaveat> caveats) {

    public SignalDepth {
        overlaps = List.copyOf(overlaps);
        caveats = List.copyOf(caveats);
    }

    /** The same with the overlaps of the material's own elements only. */
    SignalDepth overlappedOnlyBy(Material material) {
        return new SignalDepth(element, line, beamEnergyKev, overvoltage, excitation, lineOfChoice, fwhmEv, massAbsorption,
            absorptionFactor, generated, emitted, lateralDiameterNm, xrayRangeNm, overlaps.stream()
            .filter(overlap -> material.massFraction(overlap.disturber().element()) > 0).toList(), caveats);
    }
}
