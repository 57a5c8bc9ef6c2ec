package surfeit.rival;

import java.util.Optional;
import surfeit.element.Element;
import surfeit.preparation.Substance;
import surfeit.spot.Form;

/**
 * A compound on or in the surface that holds an element of the alloy: oil, oxide, salt, etch product, polishing medium.
 *
 * <p>Where its other elements (C, O, F ...) were looked for, the scarcest of them bounds it: all of it is taken to
 * belong to the compound, and a light element to be understated by four standard uncertainties of the accuracy class
 * (by half standardless, so that twice as much is there; light elements are off by 30 to 50 %, from memory). It may
 * explain a shift alone only where every one of them was found, or the lab names the compound. Where none was looked for,
 * a film of usual thickness is taken, and "in part" is the most that is said. Upper bounds, never subtracted.
 */
final class DepositCause {
    private static final Question RESIDUE = new Question(Cause.RESIDUE,
        "Clean and measure again; compare two beam energies (a film fades as the energy rises); report C, O and F; "
            + "look at a fresh section.", Sources.STOICHIOMETRY + "; films: " + Sources.ABSORPTION);
    private static final Question POLISHING = new Question(Cause.POLISHING_MEDIUM,
        "Look for grains of the medium in the image; clean, or polish with a medium without this element, and measure "
            + "again.", Sources.STOICHIOMETRY);

    private DepositCause() {
    }

    /** One compound weighed for one shift. */
    private record Candidate(Amount amount, double reach) {
        /** By what may be said of it, then named ones first, then by reach. */
        double rank(Shift shift) {
            int able = Math.min(shift.couldExplain(reach).ordinal(), amount.mayStandAlone()
                ? Rival.CouldExplain.YES.ordinal() : Rival.CouldExplain.IN_PART.ordinal());
            return 10 * able + (amount.stated() ? 5 : 0) + Math.min(reach / shift.needed(), 4);
        }
    }

    static void weigh(Inquiry inquiry, Shift shift) {
        Optional<Candidate> residue = Optional.empty();
        Optional<Candidate> polishing = Optional.empty();
        boolean mediumOpen = inquiry.situation().sample().form() == Form.POLISHED
            && inquiry.handling().substances().stream().noneMatch(one -> one.kind() == Substance.Kind.POLISHING);
        for (Amount amount : inquiry.deposits()) {
            if (!amount.medium()) {
                residue = better(residue, new Candidate(amount, reach(inquiry, amount, shift)), shift);
            } else if (amount.stated() || mediumOpen) {
                polishing = better(polishing, new Candidate(amount, reach(inquiry, amount, shift)), shift);
            }
        }
        residue.ifPresent(best -> say(inquiry, RESIDUE, "residue or film over the surface: ", shift, best));
        polishing.ifPresent(best -> say(inquiry, POLISHING, "polishing medium left on the surface: ", shift, best));
    }

    private static Optional<Candidate> better(Optional<Candidate> best, Candidate other, Shift shift) {
        boolean isBetter = other.reach() > 0 && (best.isEmpty() || other.rank(shift) > best.get().rank(shift));
        return isBetter ? Optional.of(other) : best;
    }

    private static double reach(Inquiry inquiry, Amount amount, Shift shift) {
        return switch (amount.known()) {
            case NOTHING_TELLS -> shift.up() && amount.deposit().counts()[shift.index()] > 0
                && (amount.stated() || amount.deposit().gathersUnasked()) ? Double.POSITIVE_INFINITY : 0;
            case UNKNOWN -> inquiry.furthest(physics -> shift.direction() * LogOdds.added(physics.nominal(),
                physics.atoms(physics.films().added(amount.deposit())), shift.index()));
            case FOUND, BOUNDED -> shift.direction()
                * amount.deposit().change(inquiry.situation().nominal(), amount.units(), shift.index());
        };
    }

    private static void say(Inquiry inquiry, Question question, String words, Shift shift, Candidate best) {
        Amount amount = best.amount();
        boolean described = amount.known() == Amount.Known.FOUND || amount.stated();
        if (!Inquiry.worthwhile(shift, best.reach()) && !(described && inquiry.worthTelling(shift, best.reach()))) {
            return;
        }
        Draft draft = new Draft(words + amount.deposit().residue().name(), assumes(inquiry, amount))
            .evident(amount.stated());
        if (!amount.mayStandAlone()) {
            draft.atMostInPart();
        }
        if (amount.known() == Amount.Known.UNKNOWN) {
            draft.fromPhysics().needing(amount.deposit().markers().keySet().stream()
                .map(element -> "elements." + element).toArray(String[]::new));
        }
        inquiry.weigh(question, shift, best.reach(), described ? draft.keptAnyway() : draft);
    }

    private static String assumes(Inquiry inquiry, Amount amount) {
        String symbols = amount.deposit().symbols();
        return switch (amount.known()) {
            case FOUND -> "All " + symbols + " found belongs to it (" + found(inquiry, amount)
                + " atoms per 100 of the alloy), light elements understated as far as the accuracy class allows: an "
                + "upper bound.";
            case BOUNDED -> "As much of it as the spectrum leaves room for in " + symbols + ": an upper bound.";
            case UNKNOWN -> "Not reported: " + symbols + "; a film of "
                + Words.number(amount.deposit().usualThicknessNm()) + " nm is taken (judgement).";
            case NOTHING_TELLS -> "Nothing else in the spectrum gives it away; the beam itself builds up carbon.";
        };
    }

    /** How much of each marker was found, {@code C 3.1, O 2.4}. */
    private static String found(Inquiry inquiry, Amount amount) {
        StringBuilder found = new StringBuilder();
        for (Element element : amount.deposit().markers().keySet()) {
            found.append(found.length() == 0 ? "" : ", ").append(element).append(' ')
                .append(Words.percent(inquiry.evidence().beside().get(element).perClosedAtom()));
        }
        return found.toString();
    }
}
