package surfeit.segregation.answer;

import java.util.List;
import java.util.stream.Stream;
import surfeit.composition.Nominal;
import surfeit.composition.NominalFractions;
import surfeit.composition.Phase;

/**
 * The whole answer for a sample: what each group of spots shows, and what a reader must know beside it.
 *
 * @param nominal           the nominal compared with, as stated
 * @param nominalFractions  the same as closed atomic fractions, less the excluded elements and those of nominal 0
 * @param spotCount         spots of the specimen
 * @param particleCount     particles, an unnamed one included
 * @param sessionCount      sessions, an unnamed one included
 * @param settings          every choice of the method that was in force
 * @param groups            one finding per group, in the order of first appearance
 * @param contrasts         groups against each other
 * @param caveats           what a reader must know about the whole answer
 * @param cautions          safety notes for the preparation that was stated
 * @param depths            what features measured at several beam energies say of depth
 * @param diffraction       phases that spots and stated diffraction phases do not tell alike
 */
public record Interpretation(Nominal nominal, NominalFractions nominalFractions, long spotCount, int particleCount,
                             int sessionCount, MethodSettings settings, List<GroupFinding> groups,
                             List<Contrast> contrasts, List<Caveat> caveats, List<String> cautions,
                             List<DepthReading> depths, List<DiffractionMismatch> diffraction) {

    /** The same answer with something more to know about the whole of it. */
    public Interpretation with(Caveat caveat) {
        List<Caveat> more = Stream.concat(Stream.of(caveat), caveats.stream()).toList();
        return new Interpretation(nominal, nominalFractions, spotCount, particleCount, sessionCount, settings, groups,
            contrasts, more, cautions, depths, diffraction);
    }

    /** Every phase that a group was compared with, once. */
    public List<Phase> knownPhases() {
        return groups.stream().flatMap(group -> group.phaseReading().stream())
            .flatMap(reading -> reading.phases().stream()).map(PhaseReading.Fit::phase).distinct().toList();
    }
}
