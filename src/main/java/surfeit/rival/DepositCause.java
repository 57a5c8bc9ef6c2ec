package surfeit.rival;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import surfeit.element.Element;
import surfeit.preparation.Substance;
import surfeit.spot.Form;
import surfeit.xray.ThinFilm;

/**
 * A compound on or in the surface that holds an element of the alloy: oil, oxide, salt, etch product, polishing medium.
 *
 * <p>Where its other elements (C, O, F ...) were looked for, the scarcest of them bounds it: all of it is taken to belong to
 * the compound, and a light element to be understated by four standard uncertainties of the accuracy class (50 %
 * standardless; light elements are off by 30 to 50 %, from memory). It may explain a shift alone only where every one of
 * them was found, or the lab names the compound. Where none was looked for, a film of usual thickness is taken, and "in
 * part" is the most that is said. Upper bounds, never subtracted.
 */
final class DepositCause {
    private static final Question RESIDUE = new Question(Cause.RESIDUE,
        "Clean and measure again; compare two beam energies (a film fades as the energy rises); report C, O and F; look at a "
            + "fresh section.", Sources.STOICHIOMETRY + "; films: " + Sources.ABSORPTION);
    private static final Question POLISHING = new Question(Cause.POLISHING_MEDIUM,
        "Look for grains of the medium in the image; clean, or polish with a medium without this element, and measure again.",
        Sources.STOICHIOMETRY);
    /** Thickness taken for an oil film and for anything else nobody measured, nm (judgement). */
    private static final double OIL_NM = 50;
    private static final double OTHER_NM = 5;
    private static final double LIGHT_BELOW_ATOMIC_NUMBER = 11;
    private static final double LIGHT_ELEMENT_SIGMAS = 4;

    private DepositCause() {
    }

    /** One compound weighed. */
    private record Candidate(Deposit deposit, double reach, Known known, boolean stated) {
        Rival.CouldExplain able(Shift shift) {
            Rival.CouldExplain able = shift.couldExplain(reach);
            return alone() || able == Rival.CouldExplain.NO ? able : Rival.CouldExplain.IN_PART;
        }

        boolean alone() {
            return known == Known.FOUND || known == Known.NOTHING_TELLS || stated && known == Known.BOUNDED;
        }
    }

    /** What the spectrum says of a compound's other elements. */
    private enum Known {
        /** All were found. */
        FOUND,
        /** Some were looked for, and bound it. */
        BOUNDED,
        /** None was looked for. */
        UNKNOWN,
        /** It has no other element that X-rays show. */
        NOTHING_TELLS
    }

    static void weigh(Inquiry inquiry, Shift shift) {
        Optional<Candidate> residue = Optional.empty();
        Optional<Candidate> polishing = Optional.empty();
        for (Deposit deposit : inquiry.deposits()) {
            String id = deposit.residue().id();
            boolean medium = inquiry.handling().ofKind(Substance.Kind.POLISHING).stream()
                .anyMatch(one -> one.residue().filter(id::equals).isPresent())
                || deposit.residue().kind().equals("polishing medium");
            boolean stated = inquiry.handling().leaves(id);
            if (!medium) {
                residue = better(residue, candidate(inquiry, deposit, stated, shift), shift);
            } else if (stated || inquiry.situation().sample().form() == Form.POLISHED) {
                polishing = better(polishing, candidate(inquiry, deposit, stated, shift), shift);
            }
        }
        residue.ifPresent(best -> say(inquiry, RESIDUE, "residue or film over the surface: ", shift, best));
        polishing.ifPresent(best -> say(inquiry, POLISHING, "polishing medium left on the surface: ", shift, best));
    }

    private static Optional<Candidate> better(Optional<Candidate> best, Candidate other, Shift shift) {
        return other.reach() > 0 && (best.isEmpty() || rank(other, shift) > rank(best.get(), shift)) ? Optional.of(other) : best;
    }

    private static double rank(Candidate candidate, Shift shift) {
        return 10 * candidate.able(shift).ordinal() + (candidate.stated() ? 5 : 0)
            + Math.min(candidate.reach() / shift.needed(), 4);
    }

    private static Candidate candidate(Inquiry inquiry, Deposit deposit, boolean stated, Shift shift) {
        if (deposit.markers().isEmpty()) {
            boolean gathers = stated || deposit.residue().kind().equals("oil") || deposit.residue().kind().equals("carbon");
            double reach = gathers && shift.up() && deposit.counts()[shift.index()] > 0 ? Double.POSITIVE_INFINITY : 0;
            return new Candidate(deposit, reach, Known.NOTHING_TELLS, stated);
        }
        double units = Double.POSITIVE_INFINITY;
        boolean allFound = true;
        for (Map.Entry<Element, Integer> marker : deposit.markers().entrySet()) {
            Optional<Evidence.Found> found = Optional.ofNullable(inquiry.evidence().beside().get(marker.getKey()));
            allFound &= found.filter(one -> one.perClosedAtom() > 0).isPresent();
            if (found.filter(one -> one.most() > 0).isPresent()) {
                units = Math.min(units, found.get().most() * understatement(inquiry, marker.getKey()) / marker.getValue());
            }
        }
        if (Double.isInfinite(units)) {
            double reach = inquiry.furthest(physics -> filmReach(physics, deposit, shift));
            return new Candidate(deposit, reach, Known.UNKNOWN, stated);
        }
        double reach = shift.direction() * deposit.change(inquiry.situation().nominal(), units, shift.index());
        return new Candidate(deposit, reach, allFound ? Known.FOUND : Known.BOUNDED, stated);
    }

    private static double understatement(Inquiry inquiry, Element element) {
        return element.atomicNumber() < LIGHT_BELOW_ATOMIC_NUMBER
            ? 1 + LIGHT_ELEMENT_SIGMAS * inquiry.situation().sample().accuracyClass().relativeUncertainty() : 1;
    }

    private static double filmReach(GroupPhysics physics, Deposit deposit, Shift shift) {
        double thickness = deposit.residue().kind().equals("oil") ? OIL_NM : OTHER_NM;
        double[] added = physics.films().added(new ThinFilm(deposit.residue().material(), thickness));
        return shift.direction() * LogOdds.added(physics.massFractions(), added, shift.index());
    }

    private static void say(Inquiry inquiry, Question question, String words, Shift shift, Candidate best) {
        boolean described = best.known() == Known.FOUND || best.stated();
        if (!described && !Inquiry.worthwhile(shift, best.reach())) {
            return;
        }
        String markers = best.deposit().markers().keySet().stream().sorted().map(Element::symbol)
            .collect(Collectors.joining(", "));
        Draft draft = new Draft(words + best.deposit().residue().name(), assumes(inquiry, best, markers)).evident(best.stated());
        if (!best.alone()) {
            draft.atMostInPart();
        }
        if (best.known() == Known.UNKNOWN) {
            List<String> fields = best.deposit().markers().keySet().stream().sorted().map(e -> "elements." + e).toList();
            draft.fromPhysics().needing(fields.toArray(String[]::new));
        } else if (described) {
            draft.keptAnyway();
        }
        inquiry.weigh(question, shift, best.reach(), draft);
    }

    private static String assumes(Inquiry inquiry, Candidate best, String markers) {
        return switch (best.known()) {
            case FOUND -> "All " + markers + " found belongs to it (" + amounts(inquiry, best) + " atoms per 100 of the alloy), "
                + "light elements understated as far as the accuracy class allows: an upper bound.";
            case BOUNDED -> "As much of it as the spectrum leaves room for in " + markers + ": an upper bound.";
            case UNKNOWN -> "None of " + markers + " was reported; a film of "
                + Words.number(best.deposit().residue().kind().equals("oil") ? OIL_NM : OTHER_NM) + " nm is taken (judgement).";
            case NOTHING_TELLS -> "Nothing else in the spectrum gives it away; the beam itself builds up carbon.";
        };
    }

    private static String amounts(Inquiry inquiry, Candidate best) {
        return best.deposit().markers().keySet().stream().sorted().map(element -> element + " "
            + Words.percent(inquiry.evidence().beside().get(element).perClosedAtom())).collect(Collectors.joining(", "));
    }
}
