package surfeit.segregation.plan;

import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import surfeit.composition.CompositionException;
import surfeit.composition.Nominal;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.preparation.Handling;
import surfeit.spot.Sample;
import surfeit.xray.BeamAdvice;
import surfeit.xray.BeamQuery;
import surfeit.xray.Material;
import surfeit.xray.ProfileCache;
import surfeit.xray.RecentResults;
import surfeit.xray.Resolution;
import surfeit.xray.SignalDepthQuery;

/**
 * Advises on the beam energy for a sample: its nominal composition, its detector, and the elements its coating, mount and
 * preparation may bring, whose peaks are shown as overlaps. Thread-safe.
 */
public final class BeamPlanner {
    /** Questions whose advice is kept, the latest asked; one is some 20 kB. Judgement. */
    private static final int ADVICE_KEPT = 100;

    private final ProfileCache profiles = new ProfileCache();
    private final RecentResults<BeamQuery, BeamAdvice> known = new RecentResults<>(ADVICE_KEPT);

    /**
     * The advice.
     *
     * @throws PlanException        for energies, a detector or a density no answer can be given for
     * @throws CompositionException for a nominal that is none
     */
    public BeamAdvice advise(BeamGoal goal, Sample sample, Nominal nominal) {
        NominalFractions fractions = nominal.resolve();
        try {
            BeamQuery query = new BeamQuery(material(goal, fractions), goal.question(),
                sample.geometry().takeOffAngleDeg().orElse(SignalDepthQuery.USUAL_TAKE_OFF_DEG),
                sample.geometry().detectorFwhmEv().isPresent()
                    ? new Resolution(sample.geometry().detectorFwhmEv().getAsDouble()) : Resolution.USUAL,
                goal.probeDiameterNm(), goal.beamEnergiesKev(), others(sample));
            return known.get(query, () -> BeamAdvice.of(query, profiles));
        } catch (IllegalArgumentException e) {
            throw new PlanException(e.getMessage());
        }
    }

    private static Material material(BeamGoal goal, NominalFractions nominal) {
        Map<Element, Double> mass = Material.massFractions(nominal.elements(), nominal.middles());
        mass.values().removeIf(fraction -> fraction == 0);
        return goal.densityGPerCm3().isPresent() ? Material.of(mass, goal.densityGPerCm3().getAsDouble())
            : Material.byVolumes(mass);
    }

    private static SortedSet<Element> others(Sample sample) {
        SortedSet<Element> others = new TreeSet<>(sample.excludedElements());
        sample.coating().ifPresent(coating -> others.add(coating.element()));
        Handling.of(sample).substances().forEach(substance -> others.addAll(substance.elements()));
        return others;
    }
}
