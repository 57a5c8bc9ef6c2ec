package surfeit.rival;

import java.util.List;
import java.util.OptionalDouble;
import surfeit.preparation.Substance;
import surfeit.spot.Form;

/**
 * Signal that does not come from the specimen: of the stub, grid, holder or embedding beneath and around it, and of the
 * detector itself.
 *
 * <p>Beneath a particle thinner than the signal's depth the beam meets the mount: its share is that of the alloy's own
 * signal from below the particle, were the alloy that thick. Besides, backscattered electrons excite what lies around:
 * {@link #SCATTERED_MASS} of the mass is taken for it. A silicon detector adds up to half a mass percent of silicon by
 * its own fluorescence (from memory).
 */
final class StrayCause {
    /** Mass fraction of the surroundings' element that scattered electrons may add (judgement). */
    private static final double SCATTERED_MASS = 0.01;
    private static final double DETECTOR_SILICON_MASS = 0.005;
    private static final double NM_PER_UM = 1000;
    private static final double MOST_BELOW = 0.999;
    private static final Question MOUNT = new Question(Cause.MOUNT,
        "Measure a particle away from the mount, a larger one, or on a mount without this element; measure the bare "
            + "mount beside it.", Sources.ABSORPTION + "; scattered electrons: judgement");
    private static final Question DETECTOR = new Question(Cause.DETECTOR,
        "Measure a pure piece of the main element under the same conditions and take off the silicon it shows.",
        "0.1 to 0.5 mass % of apparent silicon, from memory");

    private StrayCause() {
    }

    static void weigh(Inquiry inquiry, Shift shift) {
        if (!shift.up()) {
            return;
        }
        mount(inquiry, shift);
        if (shift.element().symbol().equals("Si")) {
            double reach = added(inquiry, shift, DETECTOR_SILICON_MASS);
            if (Inquiry.worthwhile(shift, reach)) {
                inquiry.weigh(DETECTOR, shift, reach, new Draft("the detector's own silicon",
                    "0.5 mass % of silicon comes from the detector."));
            }
        }
    }

    private static void mount(Inquiry inquiry, Shift shift) {
        List<Substance> mounts = inquiry.handling().ofKind(Substance.Kind.MOUNT).stream()
            .filter(mount -> mount.brings(shift.element())).toList();
        OptionalDouble diameter = inquiry.situation().sample().geometry().particleDiameterUm();
        boolean particle = inquiry.situation().sample().form() == Form.PARTICLE;
        if (mounts.isEmpty()) {
            unnamedMount(inquiry, shift, diameter, particle);
            return;
        }
        double below = particle && diameter.isPresent()
            ? inquiry.furthest(p -> p.shareBelow(shift.index(), diameter.getAsDouble() * NM_PER_UM)) : 0;
        double reach = reachThrough(inquiry, shift, below, SCATTERED_MASS);
        boolean unknownSize = particle && diameter.isEmpty();
        if (unknownSize || Inquiry.worthwhile(shift, reach)) {
            Draft draft = new Draft("signal of the mount: " + mounts.get(0).word(), unknownSize
                ? "1 % of the mass by scattered electrons; how much shines through a thin particle depends on its size."
                : Words.percent(below) + " % of the signal from beneath the particle, 1 % of the mass by scattered "
                    + "electrons.")
                .evident(true);
            if (unknownSize) {
                draft.atMostInPart().needing("particle_diameter_um");
            }
            inquiry.weigh(MOUNT, shift, reach, unknownSize ? draft : draft.fromPhysics());
        }
    }

    /** Whatever a thin particle sits on shines through it. */
    private static void unnamedMount(Inquiry inquiry, Shift shift, OptionalDouble diameter, boolean particle) {
        if (!particle || diameter.isEmpty() || inquiry.situation().sample().mount().isPresent()) {
            return;
        }
        double below = inquiry.furthest(p -> p.shareBelow(shift.index(), diameter.getAsDouble() * NM_PER_UM));
        double reach = reachThrough(inquiry, shift, below, 0);
        if (Inquiry.worthwhile(shift, reach)) {
            inquiry.weigh(MOUNT, shift, reach, new Draft("signal of the mount beneath a thin particle",
                Words.percent(below) + " % of the signal would come from beneath the particle, and the mount is made "
                    + "of " + shift.element() + ".").fromPhysics().atMostInPart().needing("mount"));
        }
    }

    private static double reachThrough(Inquiry inquiry, Shift shift, double below, double scattered) {
        double share = Math.min(below, MOST_BELOW);
        return added(inquiry, shift, share / (1 - share) + scattered);
    }

    /** Reach of so much mass of the element beside each mass of the alloy. */
    private static double added(Inquiry inquiry, Shift shift, double mass) {
        Situation situation = inquiry.situation();
        double[] fractions = AlloyMaterial.massFractions(situation.elements(), situation.nominal());
        double[] amounts = new double[fractions.length];
        amounts[shift.index()] = mass;
        return LogOdds.added(fractions, amounts, shift.index());
    }
}
