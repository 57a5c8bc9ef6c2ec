package surfeit.rival;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import surfeit.spot.Form;
import surfeit.spot.Position;

/**
 * The geometry of a spot: local tilt, a particle thinner than the depth X-rays come from, and a feature that was only
 * measured in one position.
 *
 * <p>Tilt is weighed over the range left by what was stated; a group's spots count by their number.
 */
final class GeometryCause {
    private static final double NM_PER_UM = 1000;
    private static final Question TILT = new Question(Cause.TILT,
        "Measure the same feature where it faces the detector and where it faces away (turn the stage by 180 degrees), "
            + "or on a polished section; compare raw totals.", Sources.ABSORPTION
            + "; a ratio of two hard lines within 1.5 % of a Monte Carlo simulation made for this program");
    private static final Question THIN = new Question(Cause.THIN_PARTICLE,
        "Lower the beam energy until the particle is thick against it, or measure larger particles or a section.",
        Sources.ABSORPTION + "; a flat layer in place of the particle");
    private static final Question POSITION = new Question(Cause.FEATURE_WITH_POSITION,
        "Measure this feature in another position, or another feature in this one.", Sources.ABSORPTION);

    private GeometryCause() {
    }

    static void weigh(Inquiry inquiry, Shift shift) {
        double reach = inquiry.furthest(physics -> tiltReach(inquiry, physics, shift));
        List<Stance> stances = inquiry.evidence().stances();
        boolean open = false;
        boolean told = false;
        for (Stance stance : stances) {
            open |= stance.open();
            told |= stance.position().isPresent() || stance.tilt().isPresent();
        }
        boolean stated = told && !open;
        if (stated || Inquiry.worthwhile(shift, reach)) {
            Draft draft = new Draft("tilt of the local surface", assumes(inquiry, open, stated)).fromPhysics();
            inquiry.weigh(TILT, shift, reach, stated ? draft.keptAnyway().evident(true) : open
                ? draft.needing("position", "tilt_deg") : draft);
        }
        if (Inquiry.worthwhile(shift, reach)) {
            confounded(inquiry, shift, reach);
        }
        thin(inquiry, shift);
    }

    private static double tiltReach(Inquiry inquiry, GroupPhysics physics, Shift shift) {
        double sum = 0;
        double spots = 0;
        for (Stance stance : inquiry.evidence().stances()) {
            sum += stance.spots() * physics.tiltReach(stance, shift);
            spots += stance.spots();
        }
        return spots > 0 ? sum / spots : 0;
    }

    private static String assumes(Inquiry inquiry, boolean open, boolean stated) {
        if (open) {
            return "The spots may have lain anywhere on the particle or rough surface, all on one side: down to a "
                + "take-off of 10 degrees.";
        }
        return stated ? "Position and tilt as stated, a tilt within 5 degrees, a position within 45 degrees of azimuth."
            : inquiry.situation().sample().form() == Form.FILM ? "A film, level within 2 degrees."
            : "A polished surface, level within 2 degrees.";
    }

    /** Every spot of this feature in one position, and no other feature there. */
    private static void confounded(Inquiry inquiry, Shift shift, double reach) {
        Evidence evidence = inquiry.evidence();
        if (!inquiry.situation().labelled() || !evidence.everyPosition() || evidence.positions().size() != 1) {
            return;
        }
        List<Situation.Other> others = inquiry.situation().others().stream().filter(other -> !other.sameFeature())
            .toList();
        if (others.isEmpty()) {
            return;
        }
        Position position = evidence.positions().iterator().next();
        boolean elsewhere = others.stream().map(Situation.Other::positions)
            .allMatch(positions -> !positions.isEmpty() && !positions.contains(position));
        Set<Position> own = evidence.positions();
        boolean apart = inquiry.situation().others().stream().filter(Situation.Other::sameFeature)
            .allMatch(other -> own.containsAll(other.positions()));
        if (elsewhere && apart) {
            inquiry.weigh(POSITION, shift, reach, new Draft("feature and position go together: "
                + inquiry.situation().group() + " was only measured " + where(position) + ", no other feature there",
                "Everything the position does to the numbers is the feature's here.").fromPhysics().evident(true));
        }
    }

    private static String where(Position position) {
        return switch (position) {
            case TOP -> "at the top";
            case SIDE -> "at the side";
            case TOWARDS_DETECTOR, AWAY_FROM_DETECTOR -> position.words();
        };
    }

    private static void thin(Inquiry inquiry, Shift shift) {
        Situation situation = inquiry.situation();
        OptionalDouble diameter = situation.sample().geometry().particleDiameterUm();
        if (situation.sample().form() != Form.PARTICLE || diameter.isEmpty()) {
            return;
        }
        double um = diameter.getAsDouble();
        double reach = inquiry.furthest(
            physics -> physics.density().isPresent() ? physics.thinReach(um * NM_PER_UM, shift) : 0);
        if (Inquiry.worthwhile(shift, reach)) {
            Optional<GroupPhysics> at = inquiry.atStatedEnergy();
            inquiry.weigh(THIN, shift, reach, new Draft("particle thinner than the depth the X-rays come from: "
                + Words.number(um) + " \u00b5m" + at.map(p -> " at " + Words.number(p.beamEnergyKev()) + " keV").orElse(""),
                "The program that made the concentrations took the particle for a thick flat piece.").fromPhysics()
                .evident(true));
        }
    }
}
