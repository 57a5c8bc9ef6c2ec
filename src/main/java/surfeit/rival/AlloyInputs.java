package surfeit.rival;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import surfeit.element.Element;

/**
 * What the physics of a group follows from; the key under which it is kept. The array is read only.
 *
 * @param elements      closed elements
 * @param nominal       their nominal, closed atomic fractions
 * @param beamEnergyKev beam energy, 1 to 40 keV
 * @param takeOffDeg    take-off angle above the level sample
 * @param fwhmEv        detector width at Mn Ka
 * @param lines         lines as reported, where they were
 */
record AlloyInputs(List<Element> elements, double[] nominal, double beamEnergyKev, double takeOffDeg, double fwhmEv,
                   Map<Element, String> lines) {

    @Override
    public boolean equals(Object other) {
        return other instanceof AlloyInputs that && beamEnergyKev == that.beamEnergyKev && takeOffDeg == that.takeOffDeg
            && fwhmEv == that.fwhmEv && Arrays.equals(nominal, that.nominal) && elements.equals(that.elements)
            && lines.equals(that.lines);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(nominal) + Double.hashCode(beamEnergyKev) + elements.hashCode();
    }
}
