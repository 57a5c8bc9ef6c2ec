package surfeit.rival;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import surfeit.element.Element;
import surfeit.spot.Sample;
import surfeit.xray.BeamEnergy;
import surfeit.xray.ProfileCache;
import surfeit.xray.RecentResults;
import surfeit.xray.SignalDepthQuery;

/**
 * Weighs every other cause that could have made a group's numbers.
 *
 * <p>Each cause is asked how far it could move the log odds of an element of the nominal alloy in the direction seen,
 * and is called "yes" where that suffices alone ({@link Shift}). The physics of an alloy at a beam energy is worked out
 * once and kept, bounded, so that the same alloy, beam and geometry cost only arithmetic. Thread-safe.
 */
public final class Rivals {
    /** Beam energies that may have been used where none is stated, keV (common practice, no source). */
    private static final double[] USUAL_ENERGIES_KEV = {5, 10, 15, 20, 30};
    private static final double LEAST_FWHM_EV = 100;
    private static final double MOST_FWHM_EV = 300;
    private static final double USUAL_FWHM_EV = 130;
    /** Alloys at a beam energy whose physics is kept; some 10 kB each. */
    private static final int ALLOYS_KEPT = 128;

    private final ProfileCache profiles = new ProfileCache();
    private final RecentResults<AlloyInputs, GroupPhysics> physics = new RecentResults<>(ALLOYS_KEPT);
    private final RecentResults<List<Element>, List<Deposit>> deposits = new RecentResults<>(ALLOYS_KEPT);

    /** The causes weighed for a group, strongest first; none where it has no shift to explain. */
    public List<Rival> of(Situation situation) {
        if (situation.shifts().isEmpty()) {
            return List.of();
        }
        Inquiry inquiry = new Inquiry(situation, physics(situation),
            deposits.get(situation.elements(), () -> Deposit.on(situation.elements())));
        for (Shift shift : situation.shifts()) {
            OverlapCause.weigh(inquiry, shift);
            ExcitationCause.weigh(inquiry, shift);
            GeometryCause.weigh(inquiry, shift);
            DepositCause.weigh(inquiry, shift);
            CoatingCause.weigh(inquiry, shift);
            PatchCause.weigh(inquiry, shift);
            StrayCause.weigh(inquiry, shift);
            RecordCause.weigh(inquiry, shift);
        }
        Shift leading = situation.leading();
        UnitsCause.weigh(inquiry, leading);
        TotalCause.weigh(inquiry, leading);
        RecordCause.weighGroup(inquiry, leading);
        return inquiry.strongestFirst();
    }

    private List<GroupPhysics> physics(Situation situation) {
        OptionalDouble stated = situation.beamEnergyKev();
        if (stated.isEmpty()) {
            return DoubleStream.of(USUAL_ENERGIES_KEV).mapToObj(kev -> at(situation, kev)).toList();
        }
        double kev = stated.getAsDouble();
        return kev >= BeamEnergy.LOWEST_KEV && kev <= BeamEnergy.HIGHEST_KEV ? List.of(at(situation, kev)) : List.of();
    }

    private GroupPhysics at(Situation situation, double beamEnergyKev) {
        Sample.Geometry geometry = situation.sample().geometry();
        AlloyInputs inputs = new AlloyInputs(situation.elements(), situation.nominal(), beamEnergyKev,
            geometry.takeOffAngleDeg().orElse(SignalDepthQuery.USUAL_TAKE_OFF_DEG),
            Math.max(LEAST_FWHM_EV, Math.min(MOST_FWHM_EV, geometry.detectorFwhmEv().orElse(USUAL_FWHM_EV))),
            situation.evidence().lines());
        return physics.get(inputs, () -> new GroupPhysics(inputs, profiles));
    }

    /** How much physics is held. */
    public int alloysHeld() {
        return physics.size();
    }
}
