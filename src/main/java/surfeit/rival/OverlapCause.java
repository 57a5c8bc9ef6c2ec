package surfeit.rival;

import java.util.Map;
import java.util.Optional;
import surfeit.element.Element;

/**
 * A peak of another element on an element's line, not parted by the fit.
 *
 * <p>The alloy's own elements and those found beside are weighed at their amounts; the fit knows them, so that only
 * pairs within half a detector width may explain a shift alone. An element the lab's mount, media or tools bring but
 * the spectrum was not searched for counts with {@link #UNSEARCHED_MASS} of the mass; so does one that often comes in
 * unasked, but then only "in part". Where two elements are each read from a line on the other's, the fit may give
 * counts of one to the other.
 */
final class OverlapCause {
    /** Mass fraction taken for an element nobody looked for (judgement). */
    static final double UNSEARCHED_MASS = 0.01;
    private static final Question QUESTION = new Question(Cause.LINE_OVERLAP,
        "Look at the spectrum: shape and place of the peak against a pure piece, other lines of the disturbing "
            + "element; read the element from another line, or with a wavelength-dispersive spectrometer.",
        Sources.LINES);

    private OverlapCause() {
    }

    private record Candidate(double reach, Disturbance disturbance, Kind kind) {
    }

    private enum Kind {
        LISTED("Both elements are in the spectrum's list, and the fit parts their peaks not at all."),
        HANDLING("The lab names what brings this element, but the spectrum was not searched for it; 1 % of the mass is "
            + "taken."),
        POSSIBLE("Nobody looked for this element; 1 % of the mass is taken."),
        GIVEN_AWAY("The fit gives counts of one line to the other, as far as they overlap.");

        private final String assumes;

        Kind(String assumes) {
            this.assumes = assumes;
        }
    }

    static void weigh(Inquiry inquiry, Shift shift) {
        inquiry.furthest(physics -> best(inquiry, physics, shift), Candidate::reach)
            .filter(best -> Inquiry.worthwhile(shift, best.reach()))
            .ifPresent(best -> inquiry.weigh(QUESTION, shift, best.reach(), draft(best)));
    }

    private static Draft draft(Candidate best) {
        Disturbance disturbance = best.disturbance();
        Draft draft = new Draft("line overlap: " + disturbance.words(), best.kind().assumes).fromPhysics()
            .evident(best.kind() != Kind.POSSIBLE);
        if (best.kind() == Kind.POSSIBLE || !disturbance.hardToFit()) {
            draft.atMostInPart();
        }
        if (best.kind() == Kind.POSSIBLE || best.kind() == Kind.HANDLING) {
            draft.needing("elements." + disturbance.by());
        }
        return draft;
    }

    private static Optional<Candidate> best(Inquiry inquiry, GroupPhysics physics, Shift shift) {
        Candidates candidates = new Candidates(shift);
        for (int j = 0; j < physics.elements().size(); j++) {
            for (Disturbance own : physics.ownDisturbances(j)) {
                candidates.multiplied(physics, j, 1 + own.share(), own, Kind.LISTED);
                int by = physics.elements().indexOf(own.by());
                if (own.hardToFit() && mutual(physics, by, physics.elements().get(j))) {
                    candidates.multiplied(physics, j, 1 - own.blur(), own, Kind.GIVEN_AWAY);
                }
            }
            outside(inquiry, physics, j, candidates);
        }
        return candidates.best;
    }

    private static boolean mutual(GroupPhysics physics, int line, Element by) {
        return physics.ownDisturbances(line).stream().anyMatch(one -> one.by().equals(by) && one.hardToFit());
    }

    private static void outside(Inquiry inquiry, GroupPhysics physics, int j, Candidates candidates) {
        Evidence evidence = inquiry.evidence();
        double own = physics.nominal()[j] * physics.elements().get(j).atomicWeight();
        if (!(own > 0)) {
            return;
        }
        for (Map.Entry<Element, Evidence.Found> found : evidence.beside().entrySet()) {
            double mass = found.getValue().most() * found.getKey().atomicWeight();
            candidates.added(physics, j, found.getKey(), mass / own, Kind.LISTED);
        }
        double unsearched = UNSEARCHED_MASS / physics.massFractions()[j];
        for (Element element : inquiry.handled()) {
            if (!physics.elements().contains(element) && !evidence.beside().containsKey(element)) {
                candidates.added(physics, j, element, unsearched, Kind.HANDLING);
            }
        }
        for (Disturbance uninvited : physics.uninvited(j)) {
            if (!inquiry.handled().contains(uninvited.by()) && !evidence.beside().containsKey(uninvited.by())) {
                candidates.multiplied(physics, j, 1 + uninvited.share() * unsearched, uninvited, Kind.POSSIBLE);
            }
        }
    }

    /** The candidate that explains most; of equal ones the first, and those the spectrum lists come first. */
    private static final class Candidates {
        private final Shift shift;
        private Optional<Candidate> best = Optional.empty();

        Candidates(Shift shift) {
            this.shift = shift;
        }

        void added(GroupPhysics physics, int j, Element by, double massRatio, Kind kind) {
            boolean matters = massRatio > 0 && (shift.index() == j) == shift.up();
            if (matters) {
                physics.disturbance(j, by).ifPresent(found -> multiplied(physics, j, 1 + found.share() * massRatio,
                    found, kind));
            }
        }

        void multiplied(GroupPhysics physics, int j, double multiplier, Disturbance by, Kind kind) {
            double reach = shift.direction() * LogOdds.oneMultiplied(physics.nominal(), j, multiplier, shift.index());
            Candidate candidate = new Candidate(reach, by, kind);
            if (reach > 0 && (best.isEmpty() || rank(candidate) > rank(best.get()))) {
                best = Optional.of(candidate);
            }
        }

        /** By what may be said of it, then by reach. */
        private double rank(Candidate candidate) {
            boolean alone = candidate.kind() != Kind.POSSIBLE && candidate.disturbance().hardToFit();
            int able = Math.min(shift.couldExplain(candidate.reach()).ordinal(),
                alone ? Rival.CouldExplain.YES.ordinal() : Rival.CouldExplain.IN_PART.ordinal());
            return 10 * able + (candidate.kind() == Kind.POSSIBLE ? 0 : 5)
                + Math.min(candidate.reach() / shift.needed(), 4);
        }
    }
}
