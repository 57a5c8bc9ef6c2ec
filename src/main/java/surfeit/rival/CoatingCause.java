package surfeit.rival;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;
import surfeit.preparation.Substance;
import surfeit.spot.Coating;
import surfeit.xray.ThinFilm;

/**
 * The conductive coating: it is made of an element of the alloy, its peak falls on a line, or it absorbs one.
 *
 * <p>Without a stated thickness {@link #USUAL_NM} are taken. What the coating emits is an upper bound ({@link Films}).
 */
final class CoatingCause {
    /** Sputtered and evaporated coatings are 5 to 20 nm thick; the thickest is taken (judgement). */
    static final double USUAL_NM = 20;
    private static final Question QUESTION = new Question(Cause.COATING,
        "Coat with carbon, or leave the coating out (low vacuum, low beam energy); or measure a reference piece coated in the "
            + "same run.", Sources.ABSORPTION);

    private CoatingCause() {
    }

    private record Candidate(double reach, String words) {
    }

    static void weigh(Inquiry inquiry, Shift shift) {
        for (Coating coating : coatings(inquiry)) {
            ThinFilm film = Films.coating(coating.element(), coating.thicknessNm().orElse(USUAL_NM));
            Optional<GroupPhysics> physics = inquiry.furthestAt(one -> best(one, coating.element(), film, shift).reach());
            if (physics.isEmpty()) {
                continue;
            }
            Candidate best = best(physics.get(), coating.element(), film, shift);
            if (Inquiry.worthwhile(shift, best.reach())) {
                Draft draft = new Draft("conductive coating: " + best.words(), Words.number(film.thicknessNm()) + " nm of "
                    + coating.element() + (coating.thicknessNm().isPresent() ? ", as stated."
                    : "; the thickness was not stated, this is a thick one.")).fromPhysics().evident(true);
                inquiry.weigh(QUESTION, shift, best.reach(),
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

    private static Candidate best(GroupPhysics physics, Element element, ThinFilm film, Shift shift) {
        double[] mass = physics.massFractions();
        int own = physics.elements().indexOf(element);
        Candidate best = absorbed(physics, element, film, shift);
        if (own >= 0) {
            double reach = shift.direction() * LogOdds.added(mass, physics.films().added(film), shift.index());
            best = larger(best, new Candidate(reach, element + " is an element of the alloy"));
        }
        double amount = physics.films().coatingAmount(element, film.thicknessNm());
        for (int j = 0; j < mass.length; j++) {
            Optional<Disturbance> disturbance = j == own || !(mass[j] > 0) ? Optional.empty() : physics.disturbance(j, element);
            if (disturbance.isPresent()) {
                double reach = shift.direction() * LogOdds.oneMultiplied(mass, j,
                    1 + disturbance.get().share() * amount / mass[j], shift.index());
                best = larger(best, new Candidate(reach, "overlap of " + disturbance.get().words()));
            }
        }
        return best;
    }

    private static Candidate absorbed(GroupPhysics physics, Element element, ThinFilm film, Shift shift) {
        double[] transmitted = physics.films().transmitted(film);
        double reach = shift.direction() * LogOdds.multiplied(physics.massFractions(), transmitted, shift.index());
        double least = Arrays.stream(transmitted).min().orElse(1);
        for (int j = 0; j < transmitted.length; j++) {
            if (transmitted[j] == least && physics.line(j).isPresent()) {
                return new Candidate(reach, element + " absorbs " + physics.line(j).get());
            }
        }
        return new Candidate(reach, element + " absorbs the lines unequally");
    }

    private static Candidate larger(Candidate a, Candidate b) {
        return b.reach() > a.reach() ? b : a;
    }
}
