package surfeit.spot;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import surfeit.composition.Nominal;
import surfeit.element.Element;

/**
 * What the lab says of a sample: what it should be made of, how it was made, and how it was and is to be judged.
 *
 * @param alloy                 catalogue name of its alloy, if given
 * @param nominal               its own nominal composition, if given; it wins over the alloy's
 * @param excludedElements      elements left out before closing
 * @param accuracyClass         how concentrations were computed
 * @param form                  what its surface is like
 * @param geometry              beam, detector and particle, where they hold for all spots
 * @param coating               conductive coating, if any
 * @param mount                 what it sat on, in the lab's words, if stated
 * @param judgement             margin, alpha and the other choices of the method
 * @param preparation           steps of its making
 * @param diffractionPhases     phases found by diffraction
 * @param description           free text, may be empty
 * @param spotsIndependent      true where spots without a particle are each a unit of their own (polished bulk)
 */
public record Sample(Optional<String> alloy, Optional<Nominal> nominal, Set<Element> excludedElements,
                     AccuracyClass accuracyClass, Form form, Geometry geometry, Optional<Coating> coating,
                     Optional<String> mount, Judgement judgement, List<PreparationStep> preparation,
                     List<String> diffractionPhases, String description, boolean spotsIndependent) {
    public Sample {
        excludedElements = Collections.unmodifiableSortedSet(new TreeSet<>(excludedElements));
        preparation = List.copyOf(preparation);
        diffractionPhases = List.copyOf(diffractionPhases);
        if (alloy.isEmpty() && nominal.isEmpty()) {
            throw new IllegalArgumentException("A sample needs an alloy of the catalogue or a nominal composition.");
        }
    }

    /** A sample with defaults for all but its alloy or nominal. */
    public static Sample of(Optional<String> alloy, Optional<Nominal> nominal) {
        return new Sample(alloy, nominal, Set.of(), AccuracyClass.STANDARDLESS, Form.PARTICLE, Geometry.UNKNOWN,
            Optional.empty(), Optional.empty(), Judgement.DEFAULT, List.of(), List.of(), "", false);
    }

    /**
     * Beam, detector and particle as stated for the whole sample; a spot's own statement wins.
     *
     * @param beamEnergyKev      beam energy in keV
     * @param takeOffAngleDeg    take-off angle of the detector in degrees
     * @param detectorFwhmEv     resolution of the detector at Mn Ka in eV
     * @param particleDiameterUm diameter of the particles in micrometres
     */
    public record Geometry(OptionalDouble beamEnergyKev, OptionalDouble takeOffAngleDeg, OptionalDouble detectorFwhmEv,
                           OptionalDouble particleDiameterUm) {
        public static final Geometry UNKNOWN = new Geometry(OptionalDouble.empty(), OptionalDouble.empty(),
            OptionalDouble.empty(), OptionalDouble.empty());

        public Geometry {
            requireWithin("A beam energy (keV)", beamEnergyKev, 0, 1000);
            requireWithin("A take-off angle (degrees)", takeOffAngleDeg, 0, 90);
            requireWithin("A detector resolution (eV)", detectorFwhmEv, 0, 1000);
            requireWithin("A particle diameter (um)", particleDiameterUm, 0, 1e6);
        }

        private static void requireWithin(String what, OptionalDouble value, double above, double atMost) {
            if (value.isPresent() && !(value.getAsDouble() > above && value.getAsDouble() <= atMost)) {
                throw new IllegalArgumentException(
                    what + " lies above " + above + " and at most at " + atMost + ", got " + value.getAsDouble() + ".");
            }
        }
    }
}
