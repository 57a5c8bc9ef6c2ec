package surfeit.segregation.plan;

import java.util.List;
import java.util.OptionalDouble;
import surfeit.xray.BeamQuestion;

/**
 * What a beam energy is wanted for.
 *
 * @param question        surface film, patch of a size, or bulk
 * @param beamEnergiesKev energies to compare, in keV
 * @param probeDiameterNm width of the beam where it meets the surface, in nm
 * @param densityGPerCm3  density of the alloy in g/cm³; that of its elements' volumes where it is not stated
 */
public record BeamGoal(BeamQuestion question, List<Double> beamEnergiesKev, double probeDiameterNm,
                       OptionalDouble densityGPerCm3) {
    public BeamGoal {
        beamEnergiesKev = List.copyOf(beamEnergiesKev);
    }
}
