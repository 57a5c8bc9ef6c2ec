package surfeit.rival;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import surfeit.element.Element;
import surfeit.preparation.Handling;

/** One group's causes being weighed: what they may ask for, and what was found so far. Not thread-safe. */
final class Inquiry {
    private final Situation situation;
    private final List<GroupPhysics> physics;
    private final List<Amount> deposits;
    private final Set<Element> handled;
    private final double[] meanMass;
    private final Shift leading;
    private final List<Weighed> found = new ArrayList<>();

    /** A rival, whether anything shows it was there, and the share of the needed shift it reaches, for sorting. */
    private record Weighed(Rival rival, boolean evident, double strength) {
    }

    /**
     * @param physics one entry at the stated beam energy; several over the usual range where none was stated; none
     *                where the models do not hold
     */
    Inquiry(Situation situation, List<GroupPhysics> physics, List<Deposit> deposits) {
        this.situation = situation;
        this.physics = physics;
        this.leading = situation.leading();
        this.deposits = Amount.of(deposits, situation);
        this.meanMass = AlloyMaterial.massFractions(situation.elements(), AlloyMaterial.positive(situation.mean()));
        this.handled = situation.handling().elements();
    }

    Situation situation() {
        return situation;
    }

    Evidence evidence() {
        return situation.evidence();
    }

    Handling handling() {
        return situation.handling();
    }

    /** Compounds that may lie on the surface, with how much of each there can be. */
    List<Amount> deposits() {
        return deposits;
    }

    /** Elements that anything named in the preparation brings. */
    Set<Element> handled() {
        return handled;
    }

    /** The group's mean as mass fractions, negative parts as zero. */
    double[] meanMass() {
        return meanMass;
    }

    /** What is the same for every element of the group is told of the leading shift only. */
    boolean isLeading(Shift shift) {
        return shift == leading;
    }

    /** Whether a cause of this reach is worth putting into words, be it for the leading shift only. */
    boolean worthTelling(Shift shift, double reach) {
        return worthwhile(shift, reach) || shift == leading;
    }

    /** The physics where it is one, at the stated beam energy. */
    Optional<GroupPhysics> atStatedEnergy() {
        return physics.size() == 1 ? Optional.of(physics.get(0)) : Optional.empty();
    }

    /** The largest reach over the beam energies that may have been used; 0 without physics. */
    double furthest(ToDoubleFunction<GroupPhysics> reach) {
        double furthest = 0;
        for (GroupPhysics one : physics) {
            furthest = Math.max(furthest, reach.applyAsDouble(one));
        }
        return furthest;
    }

    /** The candidate that reaches furthest over the beam energies that may have been used; empty without one. */
    <T> Optional<T> furthest(Function<GroupPhysics, Optional<T>> candidate, ToDoubleFunction<T> reach) {
        Optional<T> best = Optional.empty();
        for (GroupPhysics one : physics) {
            Optional<T> own = candidate.apply(one);
            boolean further = own.isPresent()
                && (best.isEmpty() || reach.applyAsDouble(own.get()) > reach.applyAsDouble(best.get()));
            best = further ? own : best;
        }
        return best;
    }

    /** Whether a cause of this reach is worth putting into words. */
    static boolean worthwhile(Shift shift, double reach) {
        return shift.couldExplain(reach) != Rival.CouldExplain.NO;
    }

    /** Records a cause by its reach; one that explains nothing is dropped unless the draft keeps it. */
    void weigh(Question question, Shift shift, double reach, Draft draft) {
        Rival.CouldExplain able = shift.couldExplain(reach);
        boolean open = draft.fromPhysics && physics.size() > 1;
        Rival.CouldExplain most = open ? Rival.CouldExplain.IN_PART : draft.most;
        Rival.CouldExplain said = able.compareTo(most) > 0 ? most : able;
        if (said == Rival.CouldExplain.NO && !(draft.keptAnyway && shift == leading)) {
            return;
        }
        List<String> needs = draft.needs;
        if (open) {
            needs = new ArrayList<>(needs);
            needs.add("beam_energy_kev");
        }
        Optional<Element> element = draft.ofGroup ? Optional.empty() : Optional.of(shift.element());
        found.add(new Weighed(new Rival(question.code(), draft.words, element, said, shift.factor(reach), draft.assumes,
            question.howToRuleOut(), needs, question.source()), draft.evident, reach / shift.needed()));
    }

    /** Records a cause whose reach cannot be computed. */
    void name(Question question, Rival.CouldExplain said, Draft draft) {
        Optional<Element> element = draft.ofGroup ? Optional.empty() : draft.element;
        found.add(new Weighed(new Rival(question.code(), draft.words, element, said, OptionalDouble.empty(),
            draft.assumes, question.howToRuleOut(), draft.needs, question.source()), draft.evident, 0));
    }

    /** What was found: by what it explains, then what is evident before what is only possible, then by its reach. */
    List<Rival> strongestFirst() {
        found.sort(Comparator.comparing((Weighed weighed) -> weighed.rival().couldExplain()).reversed()
            .thenComparing(Comparator.comparing(Weighed::evident).reversed())
            .thenComparing(Comparator.comparingDouble(Weighed::strength).reversed())
            .thenComparing(weighed -> weighed.rival().code()));
        List<Rival> rivals = new ArrayList<>(found.size());
        for (Weighed weighed : found) {
            rivals.add(weighed.rival());
        }
        return List.copyOf(rivals);
    }
}
