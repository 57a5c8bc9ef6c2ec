package surfeit.rival;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;
import surfeit.preparation.Substance;
import surfeit.spot.Coating;
import surfeit.xray.Line;

/**
 * The conductive coating: it is made of an element of the alloy, its peak falls on a line, or it absorbs one.
 *
 * <p>Without a stated thickness {@link #USUAL_NM} are taken. What the coating emits is an upper bound ({@link Films}).
 */
final class CoatingCause {
    /** Sputtered and evaporated coatings are 5 to 20 nm thick; the thickest is taken (judgement). */
    static final double USUAL_NM = 20;
    private static final Question QUESTION = new Question(Cause.COATING,
        "Coat with carbon, or leave the coating out (low vacuum, low beam energy); or measure a reference piece coated "
            + "in the same run.", Sources.ABSORPTION);

    private CoatingCause() {
    }

    private record Candidate(double reach, Element coating, Optional<Disturbance> disturbance,
                             Optional<Line> absorbed) {
        String words() {
            return disturbance.map(one -> "overlap of " + one.words())
                .or(() -> absorbed.map(line -> coating + " absorbs " + line))
                .orElse(coating + " is an element of the alloy");
        }
    }

    static void weigh(Inquiry inquiry, Shift shift) {
        for (Coating coating : coatings(inquiry)) {
            double thickness = coating.thicknessNm().orElse(USUAL_NM);
            Optional<Candidate> best = inquiry.furthest(
                physics -> Optional.of(best(physics, coating.element(), thickness, shift)), Candidate::reach)
                .filter(one -> Inquiry.worthwhile(shift, one.reach()));
            if (best.isPresent()) {
                Draft draft = new Draft("conductive coating: " + best.get().words(), Words.number(thickness) + " nm of "
                    + coating.element() + (coating.thicknessNm().isPresent() ? ", as stated."
                    : "; the thickness was not stated, this is a thick one.")).fromPhysics().evident(true);
                inquiry.weigh(QUESTION, shift, best.get().reach(),
                    coating.thicknessNm().isPresent() ? draft : draft.needing("coating.thickness_nm"));
            }
        }
    }

    private static List<Coating> coatings(Inquiry inquiry) {
        Optional<Coating> stated = inquiry.situation().sample().coating();
        if (stated.isPresent()) {
            return List.of(stated.get());
        }
        List<Coating> coatings = new ArrayList<>();
        for (Substance substance : inquiry.handling().ofKind(Substance.Kind.COATING)) {
            substance.elements().forEach(element -> coatings.add(new Coating(element, OptionalDouble.empty())));
        }
        return coatings;
    }

    private static Candidate best(GroupPhysics physics, Element element, double thicknessNm, Shift shift) {
        double[] mass = physics.massFractions();
        int own = physics.elements().indexOf(element);
        Films.Coat coat = physics.films().coat(element, thicknessNm);
        Candidate best = absorbed(physics, element, coat, shift);
        if (own >= 0) {
            double reach = shift.direction()
                * LogOdds.added(physics.nominal(), physics.atoms(coat.added()), shift.index());
            best = larger(best, new Candidate(reach, element, Optional.empty(), Optional.empty()));
        }
        for (int j = 0; j < mass.length; j++) {
            Optional<Disturbance> disturbance =
                j == own || !(mass[j] > 0) ? Optional.empty() : physics.disturbance(j, element);
            if (disturbance.isPresent()) {
                double reach = shift.direction() * LogOdds.oneMultiplied(physics.nominal(), j,
                    1 + disturbance.get().share() * coat.amount() / mass[j], shift.index());
                best = larger(best, new Candidate(reach, element, disturbance, Optional.empty()));
            }
        }
        return best;
    }

    private static Candidate absorbed(GroupPhysics physics, Element element, Films.Coat coat, Shift shift) {
        double[] transmitted = coat.transmitted();
        int least = 0;
        for (int j = 1; j < transmitted.length; j++) {
            least = transmitted[j] < transmitted[least] ? j : least;
        }
        double reach = shift.direction() * LogOdds.multiplied(physics.nominal(), transmitted, shift.index());
        return new Candidate(reach, element, Optional.empty(), physics.line(least));
    }

    private static Candidate larger(Candidate a, Candidate b) {
        return b.reach() > a.reach() ? b : a;
    }
}
