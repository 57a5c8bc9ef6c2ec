package surfeit.segregation.answer;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;

/**
 * Whether the enrichment of one element in a feature lies at the surface or reaches deep, from spots at two or more
 * beam energies.
 *
 * @param feature    the lab's word for the feature
 * @param element    the enriched element
 * @param word       what the data say
 * @param energies   what each beam energy shows, shallowest first
 * @param pStays     p of "the enrichment is the same at the shallowest and the deepest reading", times the number of
 *                   questions asked; empty where it was not asked
 * @param pFilm      p of "it changes as under a film of the pure element on nominal", likewise
 * @param film       the film it would be, under that model; empty where the model does not reach
 * @param detail     the same in a sentence or two
 */
public record DepthReading(String feature, Element element, Word word, List<AtEnergy> energies, OptionalDouble pStays,
                           OptionalDouble pFilm, Optional<Film> film, String detail) {
    public DepthReading {
        energies = List.copyOf(energies);
    }

    /** What the data say about depth. */
    public enum Word {
        /** Grows as the sampled depth shrinks, as under a film. */
        SURFACE_FILM("surface film"),
        /** Stays while a film would have faded: it reaches as deep as the spots read. */
        DEEP("deep phase"),
        /** Neither a film nor a deep phase describes it. */
        NEITHER("neither"),
        /** Neither is excluded. */
        CANNOT_TELL("cannot tell");

        private final String word;

        Word(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /**
     * One beam energy.
     *
     * @param group         the group of spots
     * @param line          the line taken to be read, {@code Cu La}
     * @param meanDepthNm   mean depth in nm from which that line comes out of the nominal alloy, where its density is
     *                      known
     * @param oddsRatio     odds of the element over the odds of nominal, with the 95 % interval
     * @param filmOddsRatio what the film would show; empty where no film was fitted
     */
    public record AtEnergy(double beamEnergyKev, String group, String line, OptionalDouble meanDepthNm,
                           Estimate oddsRatio, OptionalDouble filmOddsRatio) {
    }

    /**
     * A film of the pure element on an alloy of nominal composition that would show this.
     *
     * <p>Intervals hold the random and the calibration error (95 %) and the film model's 15 % on either side. A high
     * end may be infinite. A film that holds other elements of the alloy too is thicker; what is determined is its
     * excess of the element per area.
     *
     * @param massThickness in g/cm²
     * @param thicknessNm   in nm at the density of the pure element, where that is a solid
     */
    public record Film(Estimate massThickness, Optional<Estimate> thicknessNm) {
    }
}
